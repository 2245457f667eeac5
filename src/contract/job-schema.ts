import * as z from 'zod/mini'
import { probeSchema, sectionSchema, zoneSchema } from './piece-schema.ts'
import { stepSchema } from './process-schema.ts'
import { nameSchema, noted, yesNoSchema } from './quantity-schemas.ts'
import { shopSchema } from './shop-schema.ts'
import { grainSizeSchema, steelSchema } from './steel-schema.ts'

/**
 * The shape of a job file: the piece, the bar, the shop and what will be done. `parseJob` reads it part by part,
 * so that a fault in one part hides none in another; this whole is what the published JSON Schema describes.
 */
export const jobSchema = noted(
  z.strictObject({
    piece: z.optional(nameSchema('the name of the piece')),
    steel: noted(steelSchema, { description: 'one of grade, analysis and unknown' }),
    grainSize: z.optional(grainSizeSchema),
    profile: noted(z.array(sectionSchema).check(z.minLength(1), z.maxLength(40)), {
      description: 'sections from the working end (x = 0) to the other end',
    }),
    struck: z.optional(
      noted(yesNoSchema, {
        description: 'worked with a hammer on the end away from the working end; told from the name when left out',
      }),
    ),
    zones: z.optional(noted(z.array(zoneSchema).check(z.maxLength(40)), { description: 'lengths with a hardness to aim at' })),
    probes: z.optional(noted(z.array(probeSchema).check(z.maxLength(200)), { description: 'points to report; r from the axis' })),
    shop: z.optional(
      z.union([shopSchema, noted(z.string().check(z.maxLength(500)), { description: 'the name of a file that holds the shop' })]),
    ),
    process: z.optional(
      noted(z.array(stepSchema).check(z.maxLength(60)), {
        description: 'what will be done, in its order; a plan needs none',
      }),
    ),
  }),
  { title: 'Job', description: 'Every quantity is written with its unit, as 22 mm, 7/8 in, 232 °C, 450 °F, 12 min.' },
)
