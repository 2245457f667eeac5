/** What became of something typed: its value, or in words what was read and what would do. Nothing here throws. */
export type Reading<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly says: string }

export function read<Value>(value: Value): Reading<Value> {
  return { ok: true, value }
}

/** A refusal: what was read, why it will not do, and what would. */
export function refused(input: unknown, why: string, mend: string): Reading<never> {
  return { ok: false, says: `${shown(input)}: ${why}; ${mend}` }
}

const LONGEST_SHOWN = 60

/** Input as a message quotes it: one line, shortened, never thrown at. */
export function shown(input: unknown): string {
  if (typeof input === 'string') {
    const line = [...input].map((letter) => (isControl(letter) ? ' ' : letter)).join('')
    if (line.trim() === '') return 'nothing written'
    return line.length > LONGEST_SHOWN ? `"${line.slice(0, LONGEST_SHOWN)}..." (${input.length} letters)` : `"${line}"`
  }
  if (input === null || input === undefined) return 'nothing written'
  if (Array.isArray(input)) return `a list of ${input.length}`
  if (typeof input === 'object') return 'a group of fields'
  if (typeof input === 'number') return `the number ${input}`
  if (typeof input === 'boolean') return input ? 'yes' : 'no'
  return `a ${typeof input}`
}

function isControl(letter: string): boolean {
  const code = letter.codePointAt(0) ?? 0
  return code < 32 || (code >= 127 && code < 160) || (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069)
}
