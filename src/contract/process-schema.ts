import * as z from 'zod'
import { AGITATIONS } from '#engine/surface-heat/gear.ts'
import {
  durationOrNoneSchema,
  durationSchema,
  lengthOrNoneSchema,
  lengthSchema,
  nameSchema,
  rateSchema,
  temperatureSchema,
  yesNoSchema,
} from './quantity-schemas.ts'
import { lengthUnder, stopAt } from './step-quantities.ts'

const fire = nameSchema('the name of a fire or an oven of the shop').optional()
const bath = nameSchema('the name of a bath of the shop, still air or moving air').optional()
const times = z.int().min(1).max(20).meta({ description: 'how often, a whole number; 1 when left out' }).optional()
const part = z
  .strictObject({ from: lengthOrNoneSchema, to: lengthSchema })
  .meta({ description: 'only this length, measured from the working end' })

const hotStep = { in: fire, to: temperatureSchema, hold: durationOrNoneSchema.optional() }

export const stepSchema = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('normalise'), ...hotStep, times }),
  z.strictObject({ do: z.literal('anneal'), ...hotStep, cool: rateSchema.optional() }),
  z.strictObject({ do: z.literal('stress-relieve'), ...hotStep }),
  z.strictObject({ do: z.literal('heat'), ...hotStep, even: yesNoSchema.optional(), part: part.optional() }),
  z.strictObject({ do: z.literal('carry'), for: durationSchema }),
  z.strictObject({
    do: z.literal('quench'),
    in: bath,
    depth: lengthUnder.optional(),
    for: durationSchema.optional(),
    agitation: z.enum(AGITATIONS).optional(),
  }),
  z.strictObject({
    do: z.literal('temper'),
    in: nameSchema('the name of an oven or a fire of the shop').optional(),
    at: temperatureSchema,
    hold: durationOrNoneSchema.optional(),
    times,
    part: part.optional(),
  }),
  z.strictObject({
    do: z.literal('warm-bath'),
    in: bath,
    with: z.strictObject({ across: lengthSchema, length: lengthSchema, at: temperatureSchema }),
  }),
  z.strictObject({ do: z.literal('run-colours'), stop: stopAt, in: bath, depth: lengthUnder.optional() }),
])
export type TypedStep = z.output<typeof stepSchema>
