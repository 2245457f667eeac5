import * as z from 'zod'
import { analysisSchema } from './analysis-schema.ts'
import { evidenceSchema } from './evidence-schema.ts'
import { nameSchema } from './quantity-schemas.ts'

export const grainSizeSchema = z
  .number()
  .min(0)
  .max(14)
  .meta({ description: 'ASTM E112 number of the austenite grain, 7 when left out' })

/** A grade by any of its names, an analysis, or the evidence on an unknown bar: one of the three. */
export const steelSchema = z.strictObject({
  grade: nameSchema('a grade or a trade name').optional(),
  analysis: analysisSchema.optional(),
  unknown: evidenceSchema.optional(),
  grainSize: grainSizeSchema.optional(),
})
export type TypedSteel = z.output<typeof steelSchema>
