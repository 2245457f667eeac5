import { effect } from '@preact/signals'
import type { Outlook } from '#web/work/desk.ts'

/** Long enough for the first full answer on a slow phone; where no piece is open, nothing is answered. */
const LATEST_MS = 8000

/** Settles when the first full answer is there, or after a while without: what a page fetches besides must not hold it up. */
export function firstAnswer({ answered }: Pick<Outlook, 'answered'>, latestMs = LATEST_MS): Promise<void> {
  return new Promise((resolve) => {
    const end = setTimeout(resolve, latestMs)
    effect(() => {
      if (answered.value?.fineness !== 'normal') return
      clearTimeout(end)
      resolve()
    })
  })
}
