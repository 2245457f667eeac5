import { type Reading, read, refused } from './reading.ts'

/** No quantity is longer than this; what is longer is something else pasted in by mistake. */
const LONGEST_TEXT = 120

const FRACTION_SIGNS: { readonly [sign: string]: string } = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

/**
 * A quantity's text in one plain form: lower case, single spaces, and one sign for each meaning
 * (`"` for double prime, `x` for times, `°` for the ordinal sign, `1/2` for a written half, `-` for any minus or dash).
 * A number that stands alone has no unit and is refused, shown with each of `units`.
 */
export function tidied(input: unknown, example: string, units: readonly string[] = []): Reading<string> {
  if (typeof input === 'number' || typeof input === 'bigint')
    return refused(
      input,
      'a number by itself, with no unit',
      `write it with its unit, as ${withUnits(String(input), units, example)}`,
    )
  if (typeof input !== 'string') return refused(input, 'not a quantity', `write a figure with its unit, as ${example}`)
  if (input.length > LONGEST_TEXT) return refused(input, 'too long for a quantity', `write a figure with its unit, as ${example}`)
  const text = input
    // A written fraction straight after a whole number stands apart from it: 1½ is one and a half.
    .replace(
      /(\d?)\s*([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/gu,
      (_, whole: string, sign: string) => `${whole === '' ? ' ' : `${whole} `}${FRACTION_SIGNS[sign]} `,
    )
    .replace(/[⁄∕]/gu, '/')
    .replace(/[″”“]|''|′′|’’/gu, '"')
    .replace(/[′’‘]/gu, "'")
    .replace(/[×✕✖]/gu, ' x ')
    .replace(/[º˚]/gu, '°')
    .replace(/℃/gu, '°c')
    .replace(/℉/gu, '°f')
    .replace(/[−–—‐‑]/gu, '-')
    .replace(/\+\/-|\+-/gu, '±')
    .replace(/²/gu, '2')
    .replace(/³/gu, '3')
    .replace(/…/gu, '..')
    .replace(/≤/gu, '<=')
    .replace(/≥/gu, '>=')
    .toLowerCase()
    .replace(/\s+/gu, ' ')
    .trim()
  if (text === '') return refused(input, 'a figure belongs here', `write it with its unit, as ${example}`)
  return read(text)
}

/** `22 mm or 22 in`: a bare number as it may have been meant. */
export function withUnits(number: string, units: readonly string[], example: string): string {
  return units.length === 0 || !/^[\d./ -]{1,12}$/u.test(number) ? example : units.map((unit) => `${number} ${unit}`).join(' or ')
}
