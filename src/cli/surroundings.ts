import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Terminal } from './terminal.ts'

/** What a command needs of the machine it runs on. */
export interface Surroundings {
  readonly terminal: Terminal
  /** Standard output. */
  readonly print: (text: string) => void
  readonly errors: NodeJS.WriteStream
  /** Today, as 2025-03-14. */
  readonly today: string
  /** Settles when whoever started the program has had enough of it: Ctrl-C, or an end asked for by the system. */
  readonly stopped: () => Promise<void>
}

/** Version of the program, from the package that this file is part of, in source and built. */
export function programVersion(): string {
  const about: unknown = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'))
  return typeof about === 'object' && about !== null && 'version' in about ? String(about.version) : 'unknown'
}

/** A file of the examples that come with the program. */
export function examplePath(name: string): string {
  return fileURLToPath(new URL(`../../examples/${name}`, import.meta.url))
}
