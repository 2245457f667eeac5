import type { Bath } from '#engine/surface-heat/gear.ts'
import type { Rounding } from './rounding.ts'
import type { Layout } from './zones.ts'

/** How much of the piece is heated and how much goes under; absent lengths are the whole. */
export interface HardLength {
  readonly heatToM?: number
  readonly depthM?: number
  readonly kind: 'whole' | 'dipped' | 'dipped deep' | 'end heated'
  /** More work or more that can go wrong than the plainest way. */
  readonly fuss: number
}

/** Liquid over the top end and a gap under the bottom one, as the finding on shallow baths wants them [m]. */
const COVER_AND_GAP_M = 0.05
const GAP_M = 0.025
/** Nothing ends nearer to a change of section than this [m]: common practice, no source. */
const CLEAR_M = 0.008
/** Conductivity of hot steel [W/(m K)] and the film of a fire with its radiation [W/(m2 K)] (orders of magnitude, from memory). */
const HOT_STEEL_W_PER_M_K = 27
const FIRE_FILM_W_PER_M2_K = 250
/** Lengths of decay of a fin until the cold shank is felt by less than 15 K. */
const FIN_LENGTHS = 3.5

/** How far past the hard zone a fire must reach, so that the cold shank does not draw the end of that zone down [m]. */
function heatPastM(acrossM: number): number {
  return FIN_LENGTHS * Math.sqrt((HOT_STEEL_W_PER_M_K * acrossM) / (4 * FIRE_FILM_W_PER_M2_K))
}

/** Whether all of a piece goes under in a bath with the room that it wants. */
export function takesWhole(bath: Bath, lengthM: number): boolean {
  return bath.depthM === undefined || bath.depthM >= lengthM + COVER_AND_GAP_M
}

/**
 * Part dips and part heats for a piece that is hard at the working end and softer beyond: dipped just past the hard zone, dipped deeper, or
 * only that end heated. Every line is clear of shoulders and within the bath's depth.
 */
export function partLengths(layout: Layout, bath: Bath, inAir: boolean, rounding: Rounding): HardLength[] {
  const { hardToM, softFromM, acrossM, lengthM } = layout
  if (softFromM === undefined || hardToM <= 0 || hardToM >= lengthM) return []
  const deepestM = bath.depthM === undefined || inAir ? Number.POSITIVE_INFINITY : bath.depthM - GAP_M
  const gapM = softFromM - hardToM
  const pastM = Math.min(0.02, Math.max(0.008, 0.4 * acrossM), 0.5 * gapM)
  const farM = Math.min(Math.max(0.025, 1.2 * acrossM), 0.6 * gapM)
  const line = (m: number, mostM: number): number | undefined => clearLine(layout, m, mostM, rounding)
  const ways: HardLength[] = []
  if (!inAir) {
    const dip = line(hardToM + pastM, deepestM)
    const deep = line(hardToM + Math.max(farM, pastM), deepestM)
    if (dip !== undefined) ways.push({ kind: 'dipped', depthM: dip, fuss: 1 })
    if (deep !== undefined && deep - (dip ?? 0) > 0.011) ways.push({ kind: 'dipped deep', depthM: deep, fuss: 1 })
  }
  const heatTo = line(hardToM + heatPastM(acrossM), Number.POSITIVE_INFINITY)
  if (heatTo !== undefined) {
    const whole = inAir || takesWhole(bath, lengthM)
    const under = whole ? undefined : line(Math.min(heatTo, deepestM), deepestM)
    if (whole) ways.push({ kind: 'end heated', heatToM: heatTo, fuss: 1 })
    else if (under !== undefined) ways.push({ kind: 'end heated', heatToM: heatTo, depthM: under, fuss: 2 })
  }
  return ways
}

/** The rounded line nearest to `wantedM` that lies between hard and soft, no deeper than `mostM` and clear of shoulders. */
function clearLine(
  { hardToM, softFromM, shouldersM, lengthM }: Layout,
  wantedM: number,
  mostM: number,
  rounding: Rounding,
): number | undefined {
  const lowM = hardToM + 0.004
  const highM = Math.min(softFromM ?? lengthM, mostM, lengthM - 0.01)
  const clear: number[] = []
  for (let k = Math.floor(lowM / rounding.lengthStepM); k <= Math.ceil(highM / rounding.lengthStepM); k++) {
    const m = rounding.lengthM(k * rounding.lengthStepM)
    if (m < lowM - 1e-9 || m > highM + 1e-9) continue
    if (shouldersM.every((shoulder) => Math.abs(shoulder - m) >= CLEAR_M)) clear.push(m)
  }
  return clear.sort((a, b) => Math.abs(a - wantedM) - Math.abs(b - wantedM) || a - b)[0]
}
