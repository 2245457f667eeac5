#!/usr/bin/env node
import { CommanderError } from 'commander'
import type { Action } from './actions.ts'
import { FAILED, faultReport, INPUT_AT_FAULT } from './faults.ts'
import { program } from './program.ts'
import { programVersion } from './surroundings.ts'
import { shownOn, terminalOf } from './terminal.ts'

const terminal = terminalOf(process.stdout, process.env)

// A reader that has seen enough (head, less) closes the pipe: that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : FAILED))

process.exitCode = await run(process.argv)

async function run(argv: readonly string[]): Promise<number> {
  let asked: Action | undefined
  try {
    const root = program(programVersion(), (action) => {
      asked = action
    })
    for (const command of [root, ...root.commands]) command.exitOverride()
    root.parse(argv)
    if (asked === undefined) return 0
    // The engine is loaded only for those who ask it something: help and slips answer at once.
    const { answer } = await import('./commands.ts')
    const action = asked
    const print = (text: string) => {
      process.stdout.write(`${'json' in action && action.json === true ? text : shownOn(terminal, text)}\n`)
    }
    await answer(action, { terminal, print, errors: process.stderr, today: new Date().toISOString().slice(0, 10) })
    return 0
  } catch (error) {
    // Commander has said what is wrong already.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : INPUT_AT_FAULT
    const { lines, code } = faultReport(
      error,
      asked !== undefined && 'job' in asked ? asked.job : undefined,
      process.env.QW_DEBUG === '1',
    )
    for (const line of lines) process.stderr.write(`${shownOn(terminal, line)}\n`)
    return code
  }
}
