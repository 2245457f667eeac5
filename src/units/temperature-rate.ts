import type { System } from './length.ts'
import { nearestNumber, numberAtStart, shortDecimal } from './number-text.ts'
import { type Reading, read, refused } from './reading.ts'
import { tidied } from './typed-text.ts'

export interface TypedRate {
  readonly typed: string
  readonly rateKPerS: number
}

const EXAMPLE = '15 °C/h or 25 °F per hour'
const RATE =
  /^(?:° ?|deg(?:rees)? ?)?(c|f|k)(?:elsius|ahrenheit|elvin)? ?(?:\/|per|an|a|each) ?(s|sec|second|min|minute|h|hr|hour)$/u
const DEGREE_K: { readonly [letter: string]: number } = { c: 1, k: 1, f: 5 / 9 }

/** How fast a temperature falls or rises, without sign: `15 C/h`, `20 °C per hour`, `50 °F/h`, `2 K/min`. */
export function parseRate(input: unknown): Reading<TypedRate> {
  const text = tidied(input, EXAMPLE)
  if (!text.ok) return text
  const number = numberAtStart(text.value)
  if (number.found === 'doubtful') return refused(input, number.why, `${number.mend}, as ${EXAMPLE}`)
  if (number.found === 'nothing') return refused(input, 'no figure at its start', `write it as ${EXAMPLE}`)
  const parts = RATE.exec(text.value.slice(number.length).trim())
  if (parts === null) return refused(input, 'not degrees by time', `write it as ${EXAMPLE}`)
  if (number.value.equals(0)) return refused(input, 'a rate of nothing never gets there', `write it as ${EXAMPLE}`)
  const timeS = parts[2]?.startsWith('s') ? 1 : parts[2]?.startsWith('m') ? 60 : 3600
  return read({
    typed: String(input),
    rateKPerS: (nearestNumber(number.value) * (DEGREE_K[parts[1] ?? ''] ?? Number.NaN)) / timeS,
  })
}

/** For typing again, by the hour: `15 °C/h`, `27 °F/h`. */
export function rateText(rateKPerS: number, system: System): string {
  return system === 'metric' ? `${shortDecimal(rateKPerS * 3600)} °C/h` : `${shortDecimal((rateKPerS * 3600 * 9) / 5)} °F/h`
}
