import { parseLength } from '#units/length.ts'

/** The two sizes of a flat: its thickness, and its width; everything else has the first only. */
export type SizePart = 'across' | 'width'

const BETWEEN = /\s*(?:[x×*✕✖]|\bby\b)\s*/iu
/** What follows the figure: letters, or the marks for feet and inches. */
const UNIT = /[a-z"'″′”’.]+\s*$/iu

/** One part of a size as typed, with its unit: of `5 x 12 mm` the thickness is `5 mm`, the width `12 mm`. */
export function sizePart(typed: string, part: SizePart): string | undefined {
  const [first = '', second] = typed.split(BETWEEN)
  if (part === 'width') return second
  if (second === undefined || UNIT.test(first)) return first
  return `${first} ${UNIT.exec(second)?.[0] ?? ''}`.trim()
}

/** The size with one of its parts typed anew; the other stays as it was typed. One unit behind both is enough. What is not one length replaces all. */
export function withSizePart(typed: string, part: SizePart, value: string): string {
  if (!parseLength(value, { zero: true }).ok) return value
  const width = sizePart(typed, 'width')
  const across = sizePart(typed, 'across') ?? ''
  if (part === 'across' && width === undefined) return value
  const [first, second] = part === 'across' ? [value, width ?? ''] : [across, value]
  const [unit, other] = [UNIT.exec(first)?.[0].trim(), UNIT.exec(second)?.[0].trim()]
  return unit !== undefined && unit === other ? `${first.replace(UNIT, '').trim()} x ${second}` : `${first} x ${second}`
}
