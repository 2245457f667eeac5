import * as z from 'zod'
import { BATH_KINDS } from '#engine/surface-heat/gear.ts'
import { analysisSchema } from './analysis-schema.ts'
import { durationSchema, hardnessSchema, nameSchema, sectionSizeSchema, temperatureSchema } from './quantity-schemas.ts'

const words = z.string().max(200)
const fileTest = words
  .regex(/^\s*(?:skates|bites|grips|slides)\b.*$/iu, { error: 'write what the file does, as skates at 60 or bites at 55' })
  .meta({ description: 'what a file of known hardness does', examples: ['skates at 60', 'bites at 55'] })
const found = { hardness: hardnessSchema.optional(), file: fileTest.optional() }

/** What is known of a bar without papers: where it came from, what the bench tests showed. */
export const evidenceSchema = z.strictObject({
  source: nameSchema('what the bar was before').optional(),
  spark: z
    .record(z.string().max(40), z.union([words, z.number(), z.boolean()]))
    .meta({ description: 'what the grinding sparks look like, one word or number for each feature' })
    .optional(),
  magnet: z.union([words, z.boolean()]).meta({ description: 'whether a magnet holds to it' }).optional(),
  fileAsFound: words.meta({ description: 'what a file does on it before any heat' }).optional(),
  coupons: z
    .array(
      z.strictObject({
        section: sectionSizeSchema,
        from: temperatureSchema,
        in: z.enum(BATH_KINDS),
        ...found,
      }),
    )
    .max(50)
    .meta({ description: 'slips of the bar, quenched' })
    .optional(),
  tempered: z
    .array(z.strictObject({ at: temperatureSchema, hold: durationSchema, ...found }))
    .max(50)
    .meta({ description: 'slips of the bar, quenched and tempered' })
    .optional(),
  density: words.meta({ description: 'weight by volume with its unit', examples: ['7.82 g/cm3'] }).optional(),
  analysis: analysisSchema.optional(),
})
