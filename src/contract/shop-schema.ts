import * as z from 'zod'
import { BATH_KINDS, FIRE_KINDS } from '#engine/surface-heat/gear.ts'
import { lengthSchema, nameSchema, readingErrorSchema, swingSchema, temperatureSchema, volumeSchema } from './quantity-schemas.ts'

export const fireSchema = z.strictObject({
  name: nameSchema('the name of the fire'),
  kind: z.enum(FIRE_KINDS).optional(),
})
export type TypedFire = z.output<typeof fireSchema>

export const bathSchema = z.strictObject({
  name: nameSchema('the name of the bath'),
  kind: z.enum(BATH_KINDS).optional(),
  volume: volumeSchema.optional(),
  depth: lengthSchema.optional(),
  temperature: temperatureSchema.optional(),
  /** Flash point from the oil's sheet. */
  flash: temperatureSchema.optional(),
})
export type TypedBath = z.output<typeof bathSchema>

export const ovenSchema = z.strictObject({
  name: nameSchema('the name of the oven'),
  max: temperatureSchema,
  reads: readingErrorSchema.optional(),
  swing: swingSchema.optional(),
})
export type TypedOven = z.output<typeof ovenSchema>

export const shopSchema = z
  .strictObject({
    fires: z.array(fireSchema).max(50).optional(),
    baths: z.array(bathSchema).max(50).optional(),
    ovens: z.array(ovenSchema).max(50).optional(),
  })
  .meta({ description: 'the gear of the shop; a list left out is assumed, an empty list means none' })
