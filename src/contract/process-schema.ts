import * as z from 'zod/mini'
import { AGITATIONS, ATMOSPHERES } from '#engine/surface-heat/gear.ts'
import {
  durationOrNoneSchema,
  durationSchema,
  lengthOrNoneSchema,
  lengthSchema,
  nameSchema,
  noted,
  temperatureSchema,
  yesNoSchema,
} from './quantity-schemas.ts'
import { cooling, coolingPlace, lengthUnder, stopAt } from './step-quantities.ts'

const fire = z.optional(nameSchema('the name of a fire or an oven of the shop'))
const bath = z.optional(nameSchema('the name of a bath of the shop, still air or moving air'))
const times = z.optional(
  noted(z.int().check(z.minimum(1), z.maximum(20)), { description: 'how often, a whole number; 1 when left out' }),
)
const part = noted(z.strictObject({ from: lengthOrNoneSchema, to: lengthSchema }), {
  description: 'only this length, measured from the working end',
})

const hotStep = {
  in: fire,
  to: temperatureSchema,
  hold: z.optional(durationOrNoneSchema),
  atmosphere: z.optional(
    noted(z.enum(ATMOSPHERES), {
      description: 'what is about the piece, where that is not how the fire burns: packed in a closed pipe or foil',
    }),
  ),
}

export const stepSchema = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('normalise'), ...hotStep, times, cool: z.optional(coolingPlace) }),
  z.strictObject({ do: z.literal('anneal'), ...hotStep, cool: z.optional(cooling) }),
  z.strictObject({ do: z.literal('stress-relieve'), ...hotStep }),
  z.strictObject({ do: z.literal('heat'), ...hotStep, even: z.optional(yesNoSchema), part: z.optional(part) }),
  z.strictObject({ do: z.literal('carry'), for: durationSchema }),
  z.strictObject({
    do: z.literal('quench'),
    in: bath,
    depth: z.optional(lengthUnder),
    for: z.optional(durationSchema),
    agitation: z.optional(z.enum(AGITATIONS)),
  }),
  z.strictObject({
    do: z.literal('temper'),
    in: z.optional(nameSchema('the name of an oven or a fire of the shop')),
    at: temperatureSchema,
    hold: z.optional(durationOrNoneSchema),
    times,
    part: z.optional(part),
  }),
  z.strictObject({
    do: z.literal('warm-bath'),
    in: bath,
    with: z.strictObject({ across: lengthSchema, length: lengthSchema, at: temperatureSchema }),
  }),
  z.strictObject({ do: z.literal('run-colours'), stop: stopAt, in: bath, depth: z.optional(lengthUnder) }),
])
export type TypedStep = z.output<typeof stepSchema>
