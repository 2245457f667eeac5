import { pow } from '#engine/arithmetic/elementary.ts'
import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Agitation, Bath } from './gear.ts'
import { type LiquidKind, PROBE_FILMS, probeFilm } from './probe-films.ts'

const ZERO_DEGC_K = 273.15

/**
 * Motion of the bath against the still one: middle of Grossmann's severities for oil (still 0.27, mild 0.33, moderate 0.38, good to
 * strong 0.55 per inch) and water (0.95, 1.05, 1.25, 1.6); M.A. Grossmann, ASM Metals Handbook (memory).
 */
const OIL_MOTION: { readonly [Key in Agitation]: number } = { still: 0.73, mild: 0.87, moderate: 1, strong: 1.45 }
const WATER_MOTION: { readonly [Key in Agitation]: number } = { still: 0.76, mild: 0.84, moderate: 1, strong: 1.3 }
const BRINE_MOTION: { readonly [Key in Agitation]: number } = { still: 0.92, mild: 0.96, moderate: 1, strong: 1.3 }

/** Oil against its warmth [degC]: thick when cold, its best at 60..90, failing above 100 (memory: 40 to 80 degC +5..20 %, cold -20..30 %). */
const OIL_WARMTH: Rows = [
  [10, 0.74],
  [20, 0.83],
  [40, 0.95],
  [60, 1],
  [80, 1.06],
  [100, 1.06],
  [150, 0.85],
]

/**
 * Steel rounds against the probe, in a bath of moderate motion: the section at which the level is that of the probe's table [m], and the
 * power by which it falls with size. A thick piece keeps its blanket longer, heats the layer of liquid along its face and rewets late: laminar
 * film boiling alone falls with the -1/4th power (Bromley 1950). Fitted across steels on the rounds of Bethlehem Steel, Modern Steels and
 * Their Properties, 12.7 to 101.6 mm (docs/validation.md), beside the equivalent rounds of the SAE J1268 charts; held beyond those sizes.
 */
const SECTION = {
  oil: { atM: 0.0191, power: 0.45 },
  water: { atM: 0.016, power: 0.3 },
} as const
const THINNEST_M = 0.01
const THICKEST_M = 0.12

/** Film of a liquid on steel by the temperature of the surface [K, W/(m2 K)]. */
export function liquidFilm(kind: LiquidKind, bath: Bath, agitation: Agitation, acrossM: number, factor: number): Rows {
  const level = factor * warmthFactor(kind, bath.temperatureK) * motionFactor(kind, agitation) * sectionFactor(kind, acrossM)
  return probeFilm(kind, bath.temperatureK).map(([surfaceK, h]) => [surfaceK, h * level] as const)
}

function isOil(kind: LiquidKind): boolean {
  return kind !== 'water' && kind !== 'brine'
}

function motionFactor(kind: LiquidKind, agitation: Agitation): number {
  return (isOil(kind) ? OIL_MOTION : kind === 'water' ? WATER_MOTION : BRINE_MOTION)[agitation]
}

/** Water has tables at three temperatures; oils have one, and this rule. */
function warmthFactor(kind: LiquidKind, bathK: number): number {
  if (!isOil(kind)) return 1
  const tableK = PROBE_FILMS[kind][0]!.bathK
  return interpolate(OIL_WARMTH, bathK - ZERO_DEGC_K) / interpolate(OIL_WARMTH, tableK - ZERO_DEGC_K)
}

function sectionFactor(kind: LiquidKind, acrossM: number): number {
  const { atM, power } = isOil(kind) ? SECTION.oil : SECTION.water
  return pow(Math.min(THICKEST_M, Math.max(THINNEST_M, acrossM)) / atM, -power)
}
