import * as z from 'zod/mini'
import { analysisSchema } from './analysis-schema.ts'
import { evidenceSchema } from './evidence-schema.ts'
import { nameSchema, noted } from './quantity-schemas.ts'

export const grainSizeSchema = noted(z.number().check(z.minimum(0), z.maximum(14)), {
  description: 'ASTM E112 number of the austenite grain, 7 when left out',
})

/** A grade by any of its names, an analysis, or the evidence on an unknown bar: one of the three. */
export const steelSchema = z.strictObject({
  grade: z.optional(nameSchema('a grade or a trade name')),
  analysis: z.optional(analysisSchema),
  unknown: z.optional(evidenceSchema),
  grainSize: z.optional(grainSizeSchema),
})
export type TypedSteel = z.output<typeof steelSchema>
