import * as z from 'zod/mini'
import { ELEMENTS } from '#engine/materials/steel.ts'
import { noted } from './quantity-schemas.ts'

const share = z.optional(noted(z.number(), { description: 'per cent by weight' }))

/** Weight per cent by element; what an analysis may hold is judged by `analysisProblems`. */
export const analysisSchema = noted(
  z.strictObject(
    Object.fromEntries(ELEMENTS.map((element) => [element, share])) as { [Key in (typeof ELEMENTS)[number]]: typeof share },
  ),
  { description: 'weight per cent by element', examples: [{ C: 0.4, Mn: 0.85, Si: 0.25, Cr: 0.95, Mo: 0.2 }] },
)
