import * as z from 'zod/mini'
import { parseVolume } from '#units/amount.ts'
import { parseDuration } from '#units/duration.ts'
import { parseHardness, parseHardnessRange } from '#units/hardness.ts'
import { parseLength } from '#units/length.ts'
import { type Reading, shown } from '#units/reading.ts'
import { parseSectionSize } from '#units/section-size.ts'
import { parseReadingError, parseSwing, parseTemperature } from '#units/temperature.ts'

/** A text that `parse` reads; a number without a unit gets the message that `parse` has for it. */
export function quantity<Value>(
  parse: (input: unknown) => Reading<Value>,
  description: string,
  examples: readonly string[],
  pattern?: string,
) {
  return z.pipe(
    noted(z.string({ error: ({ input }) => unread(parse, input, description, examples) }), {
      description,
      examples: [...examples],
      ...(pattern === undefined ? {} : { pattern }),
    }),
    z.transform((text, context) => valueOrIssue(parse(text), text, context)),
  )
}

/** The same schema with something said of it, for messages and for the JSON Schema; the one that is given stays as it is. */
export function noted<Schema extends z.ZodMiniType>(
  schema: Schema,
  says: z.core.GlobalMeta & { readonly pattern?: string },
): Schema {
  const copy = schema.clone() as Schema
  z.globalRegistry.add(copy, says)
  return copy
}

function unread(
  parse: (input: unknown) => Reading<unknown>,
  input: unknown,
  description: string,
  examples: readonly string[],
): string {
  if (input === undefined) return `missing: ${description}, as ${examples[0]}`
  const reading = parse(input)
  return reading.ok ? `${shown(input)}: write it as ${examples[0]}` : reading.says
}

function valueOrIssue<Value>(reading: Reading<Value>, input: unknown, context: z.core.ParsePayload): Value {
  if (reading.ok) return reading.value
  context.issues.push({ code: 'custom', message: reading.says, input })
  return z.NEVER
}

const FIGURE = '[0-9.,½⅓⅔¼¾⅛⅜⅝⅞]'
const some = (units: string): string => `${FIGURE}.*(${units})`

const LENGTH_UNITS = `mm|cm|m|in|inch|inches|ft|thou|["'″′”’]`
export const lengthSchema = quantity(
  parseLength,
  'a length with its unit',
  ['22 mm', '7/8 in', '1-3/16"', '2.2 cm'],
  some(LENGTH_UNITS),
)
export const lengthOrNoneSchema = quantity(
  (input) => parseLength(input, { zero: true }),
  'a length with its unit, or 0 mm',
  ['0 mm', '40 mm', '1-1/2 in'],
  some(LENGTH_UNITS),
)
const SIZE_SAYS = 'the size across the flats (diameter of a round), or thickness x width of a flat, with its unit'
export const sectionSizeSchema = quantity(
  (input) => parseSectionSize(input),
  SIZE_SAYS,
  ['22 mm', '5 x 12 mm', '1/4 x 1 in'],
  some(LENGTH_UNITS),
)
/** An end of a taper may run out to a point (`0 mm`) or an edge (`0 x 12 mm`). */
export const endSizeSchema = quantity(
  (input) => parseSectionSize(input, { zero: true }),
  SIZE_SAYS,
  ['22 mm', '5 x 12 mm', '1/4 x 1 in', '0 x 12 mm'],
  some(LENGTH_UNITS),
)
export const temperatureSchema = quantity(
  parseTemperature,
  'a temperature with its unit',
  ['232 °C', '450 °F', '232 C'],
  `${FIGURE}.*([CFKcfk]|elsius|ahrenheit|elvin|℃|℉)`,
)
const READS = ['8 °C low', '15 °F high', 'true']
const READS_SAYS = 'how far it reads off the truth, and which way'
/** `true` stands for a dial that reads true; YAML makes a truth value of the bare word. */
export const readingErrorSchema = z.pipe(
  noted(z.union([z.string(), z.literal(true)], { error: ({ input }) => unread(parseReadingError, input, READS_SAYS, READS) }), {
    description: READS_SAYS,
    examples: READS,
  }),
  z.transform((typed, context) => valueOrIssue(parseReadingError(typed), typed, context)),
)
export const swingSchema = quantity(parseSwing, 'how far it swings either way, with its unit', ['15 °C', '±25 °F'])
export const durationSchema = quantity(
  parseDuration,
  'a time with its unit',
  ['12 min', '1 h 20 min', '3.5 s'],
  `${FIGURE}.*(s|sec|secs|seconds?|min|mins|minutes?|h|hr|hrs|hours?|days?)`,
)
export const durationOrNoneSchema = quantity((input) => parseDuration(input, { zero: true }), 'a time with its unit, or 0 min', [
  '10 min',
  '1 h',
  '0 min',
])
export const volumeSchema = quantity(parseVolume, 'a volume with its unit (gal is the US gallon)', ['12 L', '5 gal', '5 imp gal'])
export const hardnessSchema = quantity(parseHardness, 'one hardness reading with its scale', ['58 HRC', '560 HV'])
export const aimSchema = quantity(parseHardnessRange, 'the hardness wished for, with its scale', [
  '54..57 HRC',
  'at most 40 HRC',
  'at least 52 HRC',
])

/** Yes or no: YAML leaves these words as words. */
export const yesNoSchema = z.pipe(
  z.union([z.boolean(), z.enum(['yes', 'no'])], { error: ({ input }) => `${shown(input)}: yes or no belongs here` }),
  z.transform((answer: boolean | 'yes' | 'no') => answer === true || answer === 'yes'),
)

/** A free name; a number is taken as its digits. */
export function nameSchema(description: string) {
  return z.pipe(
    noted(
      z.union([z.string(), z.number()], {
        error: ({ input }) => `${input === undefined ? 'missing' : shown(input)}: ${description} belongs here`,
      }),
      { description },
    ),
    z.transform((name: string | number, context) => {
      const text = String(name).replace(/\s+/gu, ' ').trim()
      if (text !== '' && text.length <= 100) return text
      context.issues.push({
        code: 'custom',
        message:
          text === '' ? `nothing written: ${description} belongs here` : `${shown(text)}: too long; write at most 100 letters`,
        input: name,
      })
      return z.NEVER
    }),
  )
}
