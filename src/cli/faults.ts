import { InputProblems } from '#contract/problems.ts'
import { clean } from './terminal.ts'

/** Answered, findings included. */
export const ANSWERED = 0
/** The program failed; the fault is ours. */
export const FAILED = 1
/** The input is at fault and says where. */
export const INPUT_AT_FAULT = 2

/** A fault in what was typed on the command line or in a file that it names. */
export class InputFault extends Error {
  override readonly name = 'InputFault'
}

/** Lines for standard error and the exit code. `file` is where the input came from. */
export function faultReport(
  error: unknown,
  file: string | undefined,
  debug: boolean,
): { readonly lines: readonly string[]; readonly code: number } {
  if (error instanceof InputProblems) {
    const before = file === undefined ? '' : `${file}: `
    return {
      lines: error.problems.map(({ field, says }) => clean(`${before}${field === '' ? '' : `${field}: `}${says}`)),
      code: INPUT_AT_FAULT,
    }
  }
  if (error instanceof InputFault) return { lines: [clean(error.message)], code: INPUT_AT_FAULT }
  const says = error instanceof Error ? error.message : String(error)
  const ours = [clean(`quenchwright failed: ${says} (the fault is the program's; set QW_DEBUG=1 to see where)`)]
  return { lines: debug && error instanceof Error && error.stack !== undefined ? [...ours, error.stack] : ours, code: FAILED }
}
