import * as z from 'zod'
import { ELEMENTS } from '#engine/materials/steel.ts'

const share = z.number().meta({ description: 'per cent by weight' }).optional()

/** Weight per cent by element; what an analysis may hold is judged by `analysisProblems`. */
export const analysisSchema = z
  .strictObject(
    Object.fromEntries(ELEMENTS.map((element) => [element, share])) as { [Key in (typeof ELEMENTS)[number]]: typeof share },
  )
  .meta({ description: 'weight per cent by element', examples: [{ C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 }] })
