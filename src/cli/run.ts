import { CommanderError } from 'commander'
import type { Action } from './actions.ts'
import { faultReport, INPUT_AT_FAULT } from './faults.ts'
import { program } from './program.ts'
import { programVersion } from './surroundings.ts'
import { shownOn, type Terminal } from './terminal.ts'

/** Where a run reads its settings and writes to; the process itself, or a test. */
export interface Outside {
  readonly terminal: Terminal
  readonly write: (text: string) => void
  readonly writeError: (text: string) => void
  /** For the bar that shows progress. */
  readonly errors: NodeJS.WriteStream
  readonly today: string
  /** Says where in the program a fault of its own arose. */
  readonly debug: boolean
  /** Settles when the program is to end. */
  readonly stopped: () => Promise<void>
}

/** Does what the words after the program's name ask; gives the exit code: 0 answered, 1 the program failed, 2 the input is at fault. */
export async function run(
  words: readonly string[],
  { terminal, write, writeError, errors, today, debug, stopped }: Outside,
): Promise<number> {
  let asked: Action | undefined
  try {
    const root = program(programVersion(), (action) => {
      asked = action
    })
    for (const command of [root, ...root.commands])
      command.exitOverride().configureOutput({ writeOut: write, writeErr: writeError })
    root.parse(words, { from: 'user' })
    if (asked === undefined) return 0
    // The engine is loaded only for those who ask it something: help and slips answer at once.
    const { answer } = await import('./commands.ts')
    const action = asked
    const inJson = 'json' in action && action.json === true
    const print = (text: string) => write(`${inJson ? text : shownOn(terminal, text)}\n`)
    await answer(action, { terminal, print, errors, today, stopped })
    return 0
  } catch (error) {
    // Commander has said what is wrong already.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : INPUT_AT_FAULT
    const file = asked !== undefined && 'job' in asked ? asked.job : undefined
    const { lines, code } = faultReport(error, file, debug)
    for (const line of lines) writeError(`${shownOn(terminal, line)}\n`)
    return code
  }
}
