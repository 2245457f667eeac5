import { LENGTHS, lengthText, parseLength, type System, type TypedLength } from './length.ts'
import { type MeasureOptions, unitAtStart } from './measure.ts'
import { numberAtStart } from './number-text.ts'
import { type Reading, read, refused } from './reading.ts'
import { tidied } from './typed-text.ts'

/** One figure for a round or a bar measured over its flats; two for a flat, thickness first as typed. */
export interface TypedSectionSize {
  readonly typed: string
  readonly acrossM: number
  readonly widthM?: number
}

const EXAMPLE = '22 mm, 7/8 in, 5 x 12 mm or 1/4 x 1 in'

/** `22 mm`, `7/8 in`, `5 x 12 mm`, `1/4 x 1 in`, `1/4" x 1"`; a unit that stands only at the end holds for both. With `zero`, the first may be 0: a point or an edge. */
export function parseSectionSize(input: unknown, options: MeasureOptions = {}): Reading<TypedSectionSize> {
  const text = tidied(input, EXAMPLE)
  if (!text.ok) return text
  const parts = text.value.split(/ ?(?:x|\bby\b|\*) ?/u)
  const [first = '', second] = parts
  if (second === undefined) {
    const across = parseLength(input, options)
    return across.ok ? read({ typed: across.value.typed, acrossM: across.value.lengthM }) : across
  }
  if (parts.length > 2) return refused(input, 'more than two sizes', `write thickness x width, as ${EXAMPLE}`)
  const width = parseLength(second)
  if (!width.ok) return refused(input, 'the second size has no unit that I can read', `write it as ${EXAMPLE}`)
  const across = firstSize(first, second, options)
  if (!across.ok) return refused(input, 'the first size cannot be read', `write it as ${EXAMPLE}`)
  return read({ typed: String(input), acrossM: across.value.lengthM, widthM: width.value.lengthM })
}

/** A first size without its unit takes the unit of the second, when that has one and only one. */
function firstSize(first: string, second: string, options: MeasureOptions): Reading<TypedLength> {
  const number = numberAtStart(first)
  if (number.found !== 'number' || number.length !== first.length) return parseLength(first, options)
  const other = numberAtStart(second)
  const behind = other.found === 'number' ? second.slice(other.length).trimStart() : ''
  const unit = unitAtStart(behind, LENGTHS)
  return unit?.length === behind.length ? parseLength(`${first} ${behind}`, options) : parseLength(first, options)
}

/** For typing again: `22 mm`, `5 x 12 mm`. */
export function sectionSizeText(size: { readonly acrossM: number; readonly widthM?: number }, system: System): string {
  const across = lengthText(size.acrossM, system)
  if (size.widthM === undefined) return across
  return `${across.slice(0, across.lastIndexOf(' '))} x ${lengthText(size.widthM, system)}`
}
