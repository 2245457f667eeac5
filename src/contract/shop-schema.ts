import * as z from 'zod/mini'
import { ATMOSPHERES, BATH_KINDS, FIRE_KINDS } from '#engine/surface-heat/gear.ts'
import { HARDNESS_SCALES } from '#units/hardness.ts'
import {
  hardnessSchema,
  lengthSchema,
  nameSchema,
  noted,
  readingErrorSchema,
  swingSchema,
  temperatureSchema,
  volumeSchema,
} from './quantity-schemas.ts'

export const fireSchema = z.strictObject({
  name: nameSchema('the name of the fire'),
  kind: z.optional(z.enum(FIRE_KINDS)),
  /** What it does to the skin. */
  atmosphere: z.optional(
    noted(z.enum(ATMOSPHERES), { description: 'how it burns: oxidising, neutral, rich, or packed in a closed pipe' }),
  ),
})
export type TypedFire = z.output<typeof fireSchema>

export const bathSchema = z.strictObject({
  name: nameSchema('the name of the bath'),
  kind: z.optional(z.enum(BATH_KINDS)),
  volume: z.optional(volumeSchema),
  depth: z.optional(lengthSchema),
  temperature: z.optional(temperatureSchema),
  /** Flash point from the oil's sheet. */
  flash: z.optional(temperatureSchema),
})
export type TypedBath = z.output<typeof bathSchema>

export const ovenSchema = z.strictObject({
  name: nameSchema('the name of the oven'),
  max: temperatureSchema,
  reads: z.optional(readingErrorSchema),
  swing: z.optional(swingSchema),
})
export type TypedOven = z.output<typeof ovenSchema>

/** What proves a piece. `shows` is what it read on a block of known hardness. */
export const testerSchema = z.strictObject({
  name: nameSchema('the name of the tester'),
  scale: z.enum(HARDNESS_SCALES),
  block: z.optional(hardnessSchema),
  shows: z.optional(hardnessSchema),
})
export type TypedTester = z.output<typeof testerSchema>

export const fileSchema = z.strictObject({
  name: nameSchema('the name of the file'),
  hardness: hardnessSchema,
})
export type TypedFile = z.output<typeof fileSchema>

const most = z.maxLength(50)

export const shopSchema = noted(
  z.strictObject({
    fires: z.optional(z.array(fireSchema).check(most)),
    baths: z.optional(z.array(bathSchema).check(most)),
    ovens: z.optional(z.array(ovenSchema).check(most)),
    testers: z.optional(z.array(testerSchema).check(most)),
    files: z.optional(noted(z.array(fileSchema).check(most), { description: 'files of known hardness' })),
  }),
  { description: 'the gear of the shop; a list left out is assumed, an empty list means none' },
)
