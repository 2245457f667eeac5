import * as z from 'zod'
import { probeSchema, sectionSchema, zoneSchema } from './piece-schema.ts'
import { stepSchema } from './process-schema.ts'
import { nameSchema, yesNoSchema } from './quantity-schemas.ts'
import { shopSchema } from './shop-schema.ts'
import { grainSizeSchema, steelSchema } from './steel-schema.ts'

/**
 * The shape of a job file: the piece, the bar, the shop and what will be done. `parseJob` reads it part by part,
 * so that a fault in one part hides none in another; this whole is what the published JSON Schema describes.
 */
export const jobSchema = z
  .strictObject({
    piece: nameSchema('the name of the piece').optional(),
    steel: steelSchema.meta({ description: 'one of grade, analysis and unknown' }),
    grainSize: grainSizeSchema.optional(),
    profile: z
      .array(sectionSchema)
      .min(1)
      .max(40)
      .meta({ description: 'sections from the working end (x = 0) to the other end' }),
    struck: yesNoSchema
      .meta({ description: 'worked with a hammer on the end away from the working end; told from the name when left out' })
      .optional(),
    zones: z.array(zoneSchema).max(40).meta({ description: 'lengths with a hardness to aim at' }).optional(),
    probes: z.array(probeSchema).max(200).meta({ description: 'points to report; r from the axis' }).optional(),
    shop: z.union([shopSchema, z.string().max(500).meta({ description: 'the name of a file that holds the shop' })]).optional(),
    process: z.array(stepSchema).max(60).meta({ description: 'what will be done, in its order; a plan needs none' }).optional(),
  })
  .meta({ title: 'Job', description: 'Every quantity is written with its unit, as 22 mm, 7/8 in, 232 °C, 450 °F, 12 min.' })
