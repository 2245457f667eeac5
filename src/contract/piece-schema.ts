import * as z from 'zod/mini'
import { aimSchema, endSizeSchema, lengthOrNoneSchema, lengthSchema, nameSchema, sectionSizeSchema } from './quantity-schemas.ts'

const hollow = z.strictObject({
  across: lengthSchema,
  depth: lengthSchema,
})

/** One length of the piece; a section is either the same all along (`across`) or goes evenly `from` one size `to` another. */
export const sectionSchema = z.strictObject({
  shape: z.enum(['round', 'square', 'hexagon', 'octagon', 'flat']),
  across: z.optional(sectionSizeSchema),
  from: z.optional(endSizeSchema),
  to: z.optional(endSizeSchema),
  length: lengthSchema,
  fillet: z.optional(lengthOrNoneSchema),
  dish: z.optional(hollow),
  bore: z.optional(hollow),
  tip: z.optional(z.strictObject({ radius: lengthSchema })),
})
export type TypedSection = z.output<typeof sectionSchema>

export const zoneSchema = z.strictObject({
  name: z.optional(nameSchema('the name of the zone')),
  from: lengthOrNoneSchema,
  to: lengthSchema,
  aim: aimSchema,
})
export type TypedZone = z.output<typeof zoneSchema>

export const probeSchema = z.strictObject({
  name: z.optional(nameSchema('the name of the point')),
  x: lengthOrNoneSchema,
  r: z.optional(lengthOrNoneSchema),
})
export type TypedProbe = z.output<typeof probeSchema>
