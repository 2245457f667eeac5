import { nearestNumber, numberAtStart, shortDecimal } from './number-text.ts'
import { type Reading, read, refused } from './reading.ts'
import { tidied, withUnits } from './typed-text.ts'

export const HARDNESS_SCALES = ['HRC', 'HV', 'HBW', 'HRB'] as const
export type HardnessScale = (typeof HARDNESS_SCALES)[number]

/** One reading on one scale. */
export interface TypedHardness {
  readonly typed: string
  readonly scale: HardnessScale
  readonly value: number
}

/** A wish: a missing bound is open. `single` when one figure was typed and both bounds are that figure. */
export interface TypedHardnessRange {
  readonly typed: string
  readonly scale: HardnessScale
  readonly low?: number
  readonly high?: number
  readonly single: boolean
}

const EXAMPLE = '54..57 HRC, at most 40 HRC, at least 52 HRC or 52 HRC'

const SCALE_WORDS: readonly (readonly [RegExp, HardnessScale])[] = [
  [/\b(?:hrc|rc|rockwell c)\b|(?<=\d)(?:hrc|rc)\b/u, 'HRC'],
  [/\b(?:hrb|rb|rockwell b)\b|(?<=\d)(?:hrb|rb)\b/u, 'HRB'],
  [/\b(?:hbw|hbs|hb|bhn|brinell)\b|(?<=\d)(?:hbw|hb|bhn)\b/u, 'HBW'],
  [/\b(?:hv ?\d{0,2}(?= |$)|vpn|dph|vickers)|(?<=\d)hv\b/u, 'HV'],
]
/** What a tester can show on each scale. */
const SPAN: { readonly [Scale in HardnessScale]: readonly [number, number] } = {
  HRC: [0, 70],
  HV: [1, 1500],
  HBW: [1, 700],
  HRB: [0, 120],
}

/** `52 HRC`, `560 HV`, `302 HB`, `95 HRB`, `HRC 52`. Brinell by either ball is read as HBW. */
export function parseHardness(input: unknown): Reading<TypedHardness> {
  const range = parseHardnessRange(input)
  if (!range.ok) return range
  const { typed, scale, low, single } = range.value
  if (!single || low === undefined) return refused(input, 'not one figure', 'write one reading, as 52 HRC')
  return read({ typed, scale, value: low })
}

/** `54..57 HRC`, `52-55 HRC`, `52 to 55 HRC`, `at most 40 HRC`, `at least 52 HRC`, `52 HRC`; also in HV, HB (HBW) and HRB. */
export function parseHardnessRange(input: unknown): Reading<TypedHardnessRange> {
  if (typeof input === 'number')
    return refused(
      input,
      'a number by itself, with no scale',
      `write the scale, as ${withUnits(String(input), ['HRC'], EXAMPLE)}`,
    )
  const text = tidied(input, EXAMPLE)
  if (!text.ok) return text
  const scale = scaleOf(text.value)
  if (scale === undefined)
    return refused(input, 'no scale that I know', `write HRC, HV, HB or HRB, as ${withUnits(text.value, ['HRC'], EXAMPLE)}`)
  const bounds = boundsOf(scale.rest)
  if (!bounds.ok) return refused(input, bounds.says, `write it as ${EXAMPLE}`)
  const { low, high } = bounds.value
  for (const bound of [low, high])
    if (bound !== undefined && (bound < SPAN[scale.name][0] || bound > SPAN[scale.name][1]))
      return refused(
        input,
        `${shortDecimal(bound)} is outside the ${scale.name} scale`,
        `write ${SPAN[scale.name][0]} to ${SPAN[scale.name][1]} ${scale.name}`,
      )
  if (low !== undefined && high !== undefined && low > high)
    return refused(input, 'the lower figure is the greater', `write ${shortDecimal(high)}..${shortDecimal(low)} ${scale.name}`)
  return read({
    typed: String(input),
    scale: scale.name,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    single: bounds.value.single,
  })
}

function scaleOf(text: string): { readonly name: HardnessScale; readonly rest: string } | undefined {
  const found = SCALE_WORDS.flatMap(([pattern, name]) => {
    const match = pattern.exec(text)
    return match === null ? [] : [{ name, rest: text.replaceAll(new RegExp(pattern, 'gu'), ' ').replace(/ +/gu, ' ').trim() }]
  })
  return found.length === 1 ? found[0] : undefined
}

interface Bounds {
  readonly low?: number
  readonly high?: number
  readonly single: boolean
}

const AT_MOST =
  /^(?:at most|no more than|not more than|max\.?|maximum|up to|<=|below|under|less than|<)\s*(.+)$|^(.+?)\s*(?:max\.?|maximum|or less|or softer)$/u
const AT_LEAST =
  /^(?:at least|no less than|not less than|min\.?|minimum|>=|above|over|more than|>)\s*(.+)$|^(.+?)\s*(?:min\.?|minimum|or more|or harder)$/u
const BETWEEN = /^(?:between |from )?([\d.,/]+?) ?(?:\.{2,3}|-|to|and) ?([\d.,/]+)$/u
const ABOUT = /^([\d.,]+) ?± ?([\d.,]+)$/u

function boundsOf(text: string): Reading<Bounds> {
  const most = AT_MOST.exec(text)
  if (most !== null) return one(most[1] ?? most[2] ?? '', (high) => ({ high, single: false }))
  const least = AT_LEAST.exec(text)
  if (least !== null) return one(least[1] ?? least[2] ?? '', (low) => ({ low, single: false }))
  const between = BETWEEN.exec(text)
  if (between !== null) return two(between[1] ?? '', between[2] ?? '', (low, high) => ({ low, high, single: false }))
  const about = ABOUT.exec(text)
  if (about !== null)
    return two(about[1] ?? '', about[2] ?? '', (middle, off) => ({ low: middle - off, high: middle + off, single: false }))
  return one(text, (value) => ({ low: value, high: value, single: true }))
}

function one(text: string, give: (value: number) => Bounds): Reading<Bounds> {
  const value = wholeNumber(text)
  return value.ok ? read(give(value.value)) : value
}

function two(first: string, second: string, give: (first: number, second: number) => Bounds): Reading<Bounds> {
  const a = wholeNumber(first)
  if (!a.ok) return a
  const b = wholeNumber(second)
  return b.ok ? read(give(a.value, b.value)) : b
}

/** A number that is all of the text. */
function wholeNumber(text: string): Reading<number> {
  const number = numberAtStart(text)
  if (number.found === 'doubtful') return { ok: false, says: number.why }
  if (number.found === 'nothing' || number.length !== text.length)
    return { ok: false, says: text === '' ? 'no figure in it' : `"${text.slice(0, 20)}" is no figure` }
  return read(nearestNumber(number.value))
}

/** A wish as typed in a job file: `54..57 HRC`, `at most 40 HRC`, `at least 52 HRC`. */
export function hardnessRangeText(aim: { readonly low?: number; readonly high?: number }, scale: HardnessScale = 'HRC'): string {
  if (aim.low === undefined) return aim.high === undefined ? `any ${scale}` : `at most ${shortDecimal(aim.high)} ${scale}`
  if (aim.high === undefined) return `at least ${shortDecimal(aim.low)} ${scale}`
  return aim.low === aim.high
    ? `${shortDecimal(aim.low)} ${scale}`
    : `${shortDecimal(aim.low)}..${shortDecimal(aim.high)} ${scale}`
}
