import * as z from 'zod/mini'
import { BATH_KINDS } from '#engine/surface-heat/gear.ts'
import { analysisSchema } from './analysis-schema.ts'
import { durationSchema, hardnessSchema, nameSchema, noted, sectionSizeSchema, temperatureSchema } from './quantity-schemas.ts'

const words = z.string().check(z.maxLength(200))
const fileTest = noted(
  words.check(
    z.regex(/^\s*(?:skates|bites|grips|slides)\b.*$/iu, { error: 'write what the file does, as skates at 60 or bites at 55' }),
  ),
  { description: 'what a file of known hardness does', examples: ['skates at 60', 'bites at 55'] },
)
const found = { hardness: z.optional(hardnessSchema), file: z.optional(fileTest) }
const most = z.maxLength(50)

/** What is known of a bar without papers: where it came from, what the bench tests showed. */
export const evidenceSchema = z.strictObject({
  source: z.optional(nameSchema('what the bar was before')),
  spark: z.optional(
    noted(z.record(z.string().check(z.maxLength(40)), z.union([words, z.number(), z.boolean()])), {
      description: 'what the grinding sparks look like, one word or number for each feature',
    }),
  ),
  magnet: z.optional(noted(z.union([words, z.boolean()]), { description: 'whether a magnet holds to it' })),
  fileAsFound: z.optional(noted(words, { description: 'what a file does on it before any heat' })),
  coupons: z.optional(
    noted(
      z
        .array(
          z.strictObject({
            section: sectionSizeSchema,
            from: temperatureSchema,
            in: z.enum(BATH_KINDS),
            ...found,
          }),
        )
        .check(most),
      { description: 'slips of the bar, quenched' },
    ),
  ),
  tempered: z.optional(
    noted(z.array(z.strictObject({ at: temperatureSchema, hold: durationSchema, ...found })).check(most), {
      description: 'slips of the bar, quenched and tempered',
    }),
  ),
  density: z.optional(noted(words, { description: 'weight by volume with its unit', examples: ['7.82 g/cm3'] })),
  analysis: z.optional(analysisSchema),
})
