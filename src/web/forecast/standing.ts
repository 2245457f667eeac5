import type { Outlook } from '#web/work/desk.ts'

/**
 * How far the answer in sight can be trusted: `full` is the answer to the piece as it stands; `coarse` follows the hand without its band;
 * `old` belongs to an earlier state, and nothing newer is on its way.
 */
export type Standing = 'none' | 'full' | 'coarse' | 'old'

export function standingOf({ answered, stale, problems, failed }: Outlook): Standing {
  if (answered.value === undefined) return 'none'
  if (!stale.value && problems.value.length === 0) return 'full'
  return problems.value.length > 0 || failed.value !== undefined ? 'old' : 'coarse'
}

export const STANDING_WORD: { readonly [Of in Standing]: string } = {
  none: '',
  full: '',
  coarse: 'coarse',
  old: 'as it was before',
}
