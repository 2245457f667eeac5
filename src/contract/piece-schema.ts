import * as z from 'zod'
import { aimSchema, endSizeSchema, lengthOrNoneSchema, lengthSchema, nameSchema, sectionSizeSchema } from './quantity-schemas.ts'

const hollow = z.strictObject({
  across: lengthSchema,
  depth: lengthSchema,
})

/** One length of the piece; a section is either the same all along (`across`) or goes evenly `from` one size `to` another. */
export const sectionSchema = z.strictObject({
  shape: z.enum(['round', 'square', 'hexagon', 'octagon', 'flat']),
  across: sectionSizeSchema.optional(),
  from: endSizeSchema.optional(),
  to: endSizeSchema.optional(),
  length: lengthSchema,
  fillet: lengthOrNoneSchema.optional(),
  dish: hollow.optional(),
  bore: hollow.optional(),
  tip: z.strictObject({ radius: lengthSchema }).optional(),
})
export type TypedSection = z.output<typeof sectionSchema>

export const zoneSchema = z.strictObject({
  name: nameSchema('the name of the zone').optional(),
  from: lengthOrNoneSchema,
  to: lengthSchema,
  aim: aimSchema,
})
export type TypedZone = z.output<typeof zoneSchema>

export const probeSchema = z.strictObject({
  name: nameSchema('the name of the point').optional(),
  x: lengthOrNoneSchema,
  r: lengthOrNoneSchema.optional(),
})
export type TypedProbe = z.output<typeof probeSchema>
