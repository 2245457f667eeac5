import * as z from 'zod'
import { BATH_KINDS, FIRE_KINDS } from '#engine/surface-heat/gear.ts'
import { HARDNESS_SCALES } from '#units/hardness.ts'
import {
  hardnessSchema,
  lengthSchema,
  nameSchema,
  readingErrorSchema,
  swingSchema,
  temperatureSchema,
  volumeSchema,
} from './quantity-schemas.ts'

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

/** What proves a piece. `shows` is what it read on a block of known hardness. */
export const testerSchema = z.strictObject({
  name: nameSchema('the name of the tester'),
  scale: z.enum(HARDNESS_SCALES),
  block: hardnessSchema.optional(),
  shows: hardnessSchema.optional(),
})
export type TypedTester = z.output<typeof testerSchema>

export const fileSchema = z.strictObject({
  name: nameSchema('the name of the file'),
  hardness: hardnessSchema,
})
export type TypedFile = z.output<typeof fileSchema>

export const shopSchema = z
  .strictObject({
    fires: z.array(fireSchema).max(50).optional(),
    baths: z.array(bathSchema).max(50).optional(),
    ovens: z.array(ovenSchema).max(50).optional(),
    testers: z.array(testerSchema).max(50).optional(),
    files: z.array(fileSchema).max(50).meta({ description: 'files of known hardness' }).optional(),
  })
  .meta({ description: 'the gear of the shop; a list left out is assumed, an empty list means none' })
