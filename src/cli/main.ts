#!/usr/bin/env node
import { FAILED } from './faults.ts'
import { run } from './run.ts'
import { terminalOf } from './terminal.ts'

// A reader that has seen enough (head, less) closes the pipe: that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : FAILED))

process.exitCode = await run(process.argv.slice(2), {
  terminal: terminalOf(process.stdout, process.env),
  write: (text) => process.stdout.write(text),
  writeError: (text) => process.stderr.write(text),
  errors: process.stderr,
  today: new Date().toISOString().slice(0, 10),
  debug: process.env.QW_DEBUG === '1',
  stopped,
})

/** Ctrl-C, an end asked for by the system, or the end of whoever started it by `npm start`: npm's shell does not pass its own end on. */
function stopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve())
    if (process.env.npm_lifecycle_event === undefined) return
    const starter = process.ppid
    setInterval(() => {
      if (process.ppid !== starter) resolve()
    }, 1000).unref()
  })
}
