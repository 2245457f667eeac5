import { exp, ln } from '#engine/arithmetic/elementary.ts'
import type { Composition, Element, Steel } from '#engine/materials/steel.ts'
import { limitsBroken } from '#engine/provenance/correlation.ts'
import type { Estimate } from '#engine/provenance/estimate.ts'
import { dissolvedComposition, usualHardeningK } from './dissolved-composition.ts'
import { dividingFactor, jominyByIdealDiameter } from './hardenability.ts'
import { a255IdealDiameter, effectiveDiameterM, idealDiameterM } from './ideal-diameter.ts'
import { justJominy } from './just-jominy.ts'
import { fullMartensiteHrc } from './martensite-hardness.ts'

const INCH_M = 0.0254
const SIXTEENTH_M = 0.0015875

/** Half bands (nine in ten) of what composition does not explain: A255 itself on ln(ideal diameter), one grain number, and the curve's shape [HRC]. */
const METHOD_LN = 0.1
const GRAIN_LN = ln(1.083)
const SHAPE_HRC = 2.5
/** Half of the carbon row beyond 0.70 C: +/-30 % on the diameter. */
const RICH_LN = 0.3

/** What the usual hardening heat of a steel has in solution [wt%]. */
export function usualAustenite(composition: Composition): Composition {
  return dissolvedComposition(composition, usualHardeningK(composition))
}

/** Half band of ln(ideal diameter): each element over its range, the grain and the method, as independent. */
function halfLnDiameter(steel: Steel): number {
  const bulk = steel.composition
  let sum = METHOD_LN * METHOD_LN + GRAIN_LN * GRAIN_LN + (bulk.C > 0.7 ? RICH_LN * RICH_LN : 0)
  for (const [element, range] of Object.entries(steel.range) as [Element, readonly [number, number]][]) {
    const at = (wtPct: number): number => idealDiameterM({ ...bulk, [element]: wtPct }, steel.grainSize)
    const half = 0.5 * ln(Math.max(1e-6, at(range[1])) / Math.max(1e-6, at(range[0])))
    sum += half * half
  }
  return Math.sqrt(sum)
}

/**
 * Ideal diameter of a steel [m] with the band of nine heats in ten: the calculation of ASTM A255 on the analysis (on what the usual heat
 * dissolves above 0.90 % C). Where carbide is left undissolved the band reaches down to what it takes (`effectiveDiameterM`).
 */
export function idealDiameterEstimate(steel: Steel): Estimate {
  const bulk = steel.composition
  const austenite = usualAustenite(bulk)
  const value = idealDiameterM(bulk.C > 0.9 ? austenite : bulk, steel.grainSize)
  const half = halfLnDiameter(steel)
  const least = Math.min(value, effectiveDiameterM(bulk, austenite, steel.grainSize))
  return { value, low: least * exp(-half), high: value * exp(half), basis: 'model', source: a255IdealDiameter.source }
}

/**
 * Hardness at `distanceM` from the quenched end [HRC] for a steel hardened from its usual heat, with the band of nine heats in ten:
 * spread of carbon and of ideal diameter over the composition range, the method, and half of what Just's regression differs by.
 */
export function jominyEstimate(steel: Steel, distanceM: number): Estimate {
  const austenite = usualAustenite(steel.composition)
  const diameterM = effectiveDiameterM(steel.composition, austenite, steel.grainSize)
  const value = jominyByIdealDiameter(austenite.C, diameterM, distanceM)
  const half = halfLnDiameter(steel)
  const carbon = steel.range.C ?? [steel.composition.C, steel.composition.C]
  const factor = dividingFactor(diameterM / INCH_M, distanceM / SIXTEENTH_M)
  const byCarbon = (wtPct: number): number =>
    (fullMartensiteHrc(Math.min(austenite.C + wtPct - steel.composition.C, wtPct)) - fullMartensiteHrc(austenite.C)) / factor
  const byDiameter = (sign: number): number => jominyByIdealDiameter(austenite.C, diameterM * exp(sign * half), distanceM) - value
  const input = { ...austenite, distanceMm: 1000 * distanceM, grainSize: steel.grainSize }
  const second = limitsBroken(justJominy, input).length === 0 ? 0.5 * (justJominy.evaluate(input) - value) : 0
  // No place on the bar is harder than full martensite of the richest heat, and its own scatter.
  const hardestHrc = fullMartensiteHrc(carbon[1]) + SHAPE_HRC
  const edge = (carbonHrc: number, diameterHrc: number, secondHrc: number): number =>
    Math.sqrt(carbonHrc * carbonHrc + diameterHrc * diameterHrc + secondHrc * secondHrc + SHAPE_HRC * SHAPE_HRC)
  return {
    value,
    low: value - edge(byCarbon(carbon[0]), byDiameter(-1), Math.min(0, second)),
    high: Math.min(value + edge(byCarbon(carbon[1]), byDiameter(1), Math.max(0, second)), Math.max(value, hardestHrc)),
    basis: 'model',
    source: 'ASTM A255-10; band by composition range and E. Just 1969',
  }
}
