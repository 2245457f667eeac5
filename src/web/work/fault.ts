import type { Problem } from '#contract/problems.ts'

/** The input is at fault: the reply of the engine's thread where there is no answer. */
export interface Fault {
  readonly kind: 'problems'
  readonly problems: readonly Problem[]
}

export function isFault(reply: unknown): reply is Fault {
  return typeof reply === 'object' && reply !== null && (reply as Fault).kind === 'problems'
}
