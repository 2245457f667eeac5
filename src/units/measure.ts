import Fraction from 'fraction.js'
import { numberAtStart } from './number-text.ts'
import { type Reading, read, refused } from './reading.ts'
import { tidied, withUnits } from './typed-text.ts'

/** A unit by the words it is typed with, and how many of the SI unit it is. Greatest unit first in a `Measure`. */
export interface Unit {
  readonly words: readonly string[]
  readonly inSi: Fraction
}

/** One kind of quantity that is a sum of counts of units: `1 lb 4 oz`, `1 h 20 min`, `1' 6"`. */
export interface Measure {
  readonly name: string
  /** As a message shows how to write it. */
  readonly example: string
  /** Units that a bare number is most often meant in. */
  readonly usual: readonly string[]
  readonly units: readonly Unit[]
}

export interface MeasureOptions {
  /** Nothing at all is taken too; else it must be more. */
  readonly zero?: boolean
}

export function unit(words: string, inSi: string): Unit {
  return { words: words.split(','), inSi: new Fraction(inSi) }
}

/** A figure typed in a measure, exact in the SI unit. */
export function readMeasure(input: unknown, measure: Measure, options: MeasureOptions = {}): Reading<Fraction> {
  const text = tidied(input, measure.example, measure.usual)
  if (!text.ok) return text
  const sum = sumOf(text.value, measure, input)
  if (!sum.ok) return sum
  if (sum.value.equals(0) && options.zero !== true)
    return refused(input, `a ${measure.name} of nothing`, `write one greater than nothing, as ${measure.example}`)
  return sum
}

function sumOf(text: string, measure: Measure, input: unknown): Reading<Fraction> {
  let rest = text.replace(/^\+ ?/u, '')
  if (/^- ?[\d.]/u.test(rest))
    return refused(input, `a ${measure.name} is never less than nothing`, `write it without the minus, as ${measure.example}`)
  let sum = new Fraction(0)
  let last = -1
  while (rest !== '') {
    const number = numberAtStart(rest)
    if (number.found === 'doubtful') return refused(input, number.why, `${number.mend}, as ${measure.example}`)
    if (number.found === 'nothing')
      return refused(input, `no figure at "${clip(rest)}"`, `write a figure and its unit, as ${measure.example}`)
    rest = rest.slice(number.length).trimStart()
    if (rest === '') {
      const why = `${last < 0 ? 'a number' : 'the last number stands'} by itself, with no unit`
      return refused(
        input,
        why,
        `write its unit, as ${last < 0 ? withUnits(text, measure.usual, measure.example) : measure.example}`,
      )
    }
    const found = unitAtStart(rest, measure)
    if (found === undefined)
      return refused(input, `"${clip(rest)}" is no unit of ${measure.name}`, `write ${unitNames(measure)}, as ${measure.example}`)
    if (found.index <= last)
      return refused(input, 'the units go from great to small, each once', `write it as ${measure.example}`)
    last = found.index
    sum = sum.add(number.value.mul(found.unit.inSi))
    rest = rest.slice(found.length).replace(/^[ ,]*(?:and )?/u, '')
  }
  return read(sum)
}

interface UnitFound {
  readonly unit: Unit
  readonly index: number
  readonly length: number
}

/** The unit whose longest word begins `text` and does not run on into another letter. */
export function unitAtStart(text: string, { units }: Measure): UnitFound | undefined {
  let best: UnitFound | undefined
  for (const [index, each] of units.entries())
    for (const word of each.words) {
      if (!text.startsWith(word) || (best !== undefined && best.length >= word.length)) continue
      if (/[a-z]$/u.test(word) && /^[a-z]/u.test(text.slice(word.length))) continue
      const stop = text.startsWith('.', word.length) && !/^\.\d/u.test(text.slice(word.length)) ? 1 : 0
      best = { unit: each, index, length: word.length + stop }
    }
  return best
}

function unitNames({ units }: Measure): string {
  const names = units.map(({ words }) => words[0] ?? '')
  return names.length === 1 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} or ${names[names.length - 1]}`
}

function clip(text: string): string {
  return text.length > 20 ? `${text.slice(0, 20)}...` : text
}
