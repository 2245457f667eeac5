import type { Bath, BathKind } from '#engine/surface-heat/gear.ts'

/** How warm a bath of each kind works well [K]. */
export interface BathLimits {
  readonly coldK: number
  readonly hotK: number
  /** Where it works best [K]. */
  readonly bestK: readonly [from: number, to: number]
  /** Greatest rise in one quench [K]. */
  readonly riseK: number
  readonly why: { readonly cold: string; readonly hot: string }
}

const OIL_WHY = { cold: 'cold oil is thick and slow', hot: 'hot oil thins, smokes and comes near its flash point' }
const WATER_WHY = {
  cold: 'ice-cold water cracks what cool water only hardens',
  hot: 'warm water keeps its blanket of steam: soft spots',
}

/**
 * Working temperatures: oils 40..70 degC by their sheets, fast oils from 20 (typical ranges, from memory); smiths warm oil to
 * 50..60 degC (120..140 degF, common practice). Water about 20..38 degC (70..100 degF), Machinery's Handbook; the blanket of still
 * water holds on some 40 K lower for each 10 K of warmth (from memory). A limit stands outside the range of the sheets,
 * where the loss is felt: oil at 10..20 degC cools a quarter slower than warm oil (from memory).
 *
 * Rise: one US gallon of oil to the pound of steel warms by about 38 K (D.S. MacKenzie, Thermal Processing, quoting Derby 1921);
 * water that starts cool may rise by half of that before it is out of its range.
 */
export const BATH_LIMITS: { readonly [Kind in BathKind]?: BathLimits } = {
  'fast oil': { coldK: celsius(10), hotK: celsius(80), bestK: [celsius(20), celsius(70)], riseK: 40, why: OIL_WHY },
  'medium oil': { coldK: celsius(18), hotK: celsius(80), bestK: [celsius(40), celsius(70)], riseK: 40, why: OIL_WHY },
  'slow oil': { coldK: celsius(18), hotK: celsius(90), bestK: [celsius(40), celsius(70)], riseK: 40, why: OIL_WHY },
  'vegetable oil': { coldK: celsius(15), hotK: celsius(90), bestK: [celsius(50), celsius(70)], riseK: 40, why: OIL_WHY },
  water: { coldK: celsius(8), hotK: celsius(40), bestK: [celsius(20), celsius(38)], riseK: 20, why: WATER_WHY },
  brine: { coldK: celsius(8), hotK: celsius(45), bestK: [celsius(15), celsius(40)], riseK: 20, why: WATER_WHY },
}

/** Typical flash points [K] where the smith gives none: the least of the range of supplier sheets (mineral oils from memory); vegetable oils by the Institute of Shortening and Edible Oils. */
const FLASH_K: { readonly [Kind in BathKind]?: number } = {
  'fast oil': celsius(145),
  'medium oil': celsius(175),
  'slow oil': celsius(180),
  'vegetable oil': celsius(317),
}

/** Least smoke point of fresh cooking oils in that table (coconut 196, canola 236 degC) [K]; mineral oils haze about 60 K under their flash point (from memory). */
const VEGETABLE_SMOKE_K = celsius(196)
const MINERAL_SMOKE_UNDER_FLASH_K = 60

/** Distance from the flash point at which an alarm or cut-out is wanted: Washington State WAC 296-835-13005, 50 degF. */
export const FLASH_MARGIN_K = 27.8

export function flashK(bath: Bath): number | undefined {
  return bath.flashK ?? FLASH_K[bath.kind]
}

export function smokeK(bath: Bath): number | undefined {
  if (bath.kind === 'vegetable oil') return VEGETABLE_SMOKE_K
  const flash = flashK(bath)
  return flash === undefined ? undefined : flash - MINERAL_SMOKE_UNDER_FLASH_K
}

function celsius(degrees: number): number {
  return degrees + 273.15
}
