import { readFileSync } from 'node:fs'
import { join } from 'node:path'

const EXAMPLES = join(import.meta.dirname, '..', '..', '..', 'examples')

/** A file of the example workshop. */
export function exampleText(name: string): string {
  return readFileSync(join(EXAMPLES, name), 'utf8')
}
