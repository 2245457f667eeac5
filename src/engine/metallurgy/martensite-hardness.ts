import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Correlation } from '#engine/provenance/correlation.ts'

interface CarbonInput {
  readonly carbonWtPct: number
}

function quintic(a: readonly [number, number, number, number, number, number], x: number): number {
  return a[0] + x * (a[1] + x * (a[2] + x * (a[3] + x * (a[4] + x * a[5]))))
}

const INITIAL = [35.395, 6.99, 312.33, -821.744, 1015.479, -538.346] as const
const HALF = [22.974, 6.214, 356.364, -1091.488, 1464.88, -750.441] as const

/** Hardness of the quenched end (full martensite) by carbon in the austenite [HRC]. */
export const a255InitialHardness: Correlation<CarbonInput> = {
  id: 'a255-initial-hardness',
  source: 'ASTM A255-10, initial hardness against carbon',
  output: 'hardness of full martensite [HRC]',
  validFor: { carbonWtPct: [0.1, 0.7] },
  checks: [
    { input: { carbonWtPct: 0.2 }, expected: 44.2, within: 0.1, from: 'A255 table, 0.20 C' },
    { input: { carbonWtPct: 0.4 }, expected: 56.1, within: 0.1, from: 'A255 table, 0.40 C' },
    { input: { carbonWtPct: 0.6 }, expected: 64.3, within: 0.1, from: 'A255 table, 0.60 C' },
  ],
  evaluate: ({ carbonWtPct }) => quintic(INITIAL, carbonWtPct),
}

/** Hardness of a structure half martensite by carbon in the austenite [HRC]. */
export const a255HalfMartensite: Correlation<CarbonInput> = {
  id: 'a255-half-martensite',
  source: 'ASTM A255-10, hardness of 50 % martensite against carbon',
  output: 'hardness of 50 % martensite [HRC]',
  validFor: { carbonWtPct: [0.1, 0.7] },
  checks: [
    { input: { carbonWtPct: 0.2 }, expected: 31.8, within: 0.1, from: 'A255 table, 0.20 C' },
    { input: { carbonWtPct: 0.4 }, expected: 42.4, within: 0.1, from: 'A255 table, 0.40 C' },
    { input: { carbonWtPct: 0.6 }, expected: 50.7, within: 0.1, from: 'A255 table, 0.60 C' },
  ],
  evaluate: ({ carbonWtPct }) => quintic(HALF, carbonWtPct),
}

/**
 * Full martensite above the range of A255, retained austenite not counted: Burns, Moore & Archer, Trans. ASM 26 (1938) 1;
 * Jatczak, Metall. Trans. 4 (1973) 2267 (memory, +/-1 HRC); Hollomon & Jaffe 1945 measured 66.5 at 0.74 C, 67 at 0.89, 66.5 at 0.98.
 */
const RICH: Rows = [
  [0.6, 64.3],
  [0.65, 65.0],
  [0.7, 65.5],
  [0.8, 66.1],
  [0.9, 66.5],
  [1.0, 66.6],
  [1.2, 66.6],
]
const JOIN_FROM = 0.54
const JOIN_TO = 0.66
const POOREST = 0.1

const initialHrc = (carbonWtPct: number): number => a255InitialHardness.evaluate({ carbonWtPct })
const halfHrc = (carbonWtPct: number): number => a255HalfMartensite.evaluate({ carbonWtPct })

/**
 * Hardness of full martensite [HRC] by carbon in solution [wt%]: the A255 polynomial, passing smoothly between 0.54 and 0.66 C
 * into the high-carbon table. Below 0.10 C the A255 slope at 0.10 goes on. Never falls with carbon.
 */
export function fullMartensiteHrc(carbonWtPct: number): number {
  if (carbonWtPct < POOREST) return initialHrc(POOREST) + 52 * (Math.max(0, carbonWtPct) - POOREST)
  if (carbonWtPct <= JOIN_FROM) return initialHrc(carbonWtPct)
  const rich = interpolate(RICH, carbonWtPct)
  if (carbonWtPct >= JOIN_TO) return rich
  const u = (carbonWtPct - JOIN_FROM) / (JOIN_TO - JOIN_FROM)
  const share = u * u * (3 - 2 * u)
  const lower = initialHrc(carbonWtPct)
  const upper = carbonWtPct < 0.6 ? lower : rich
  return lower + share * (upper - lower)
}

/** Hardness of half martensite [HRC]: A255 up to 0.66 C, then 12 HRC under full martensite as it is there. */
function halfMartensiteHrc(carbonWtPct: number): number {
  const carbon = Math.max(POOREST, carbonWtPct)
  if (carbon <= JOIN_TO) return halfHrc(carbon) - (carbonWtPct < POOREST ? 52 * (POOREST - Math.max(0, carbonWtPct)) : 0)
  return fullMartensiteHrc(carbon) - (fullMartensiteHrc(JOIN_TO) - halfHrc(JOIN_TO))
}

/**
 * Share of the way from the hardness of half martensite to that of full martensite, by martensite fraction: mean over carbon of
 * Hodge & Orehoski, Trans. AIME 167 (1946) 627 (memory, +/-1 HRC), whose curves of nine carbon contents fall together within 0.05.
 */
const WAY: Rows = [
  [0, -0.55],
  [0.5, 0],
  [0.8, 0.35],
  [0.9, 0.56],
  [0.95, 0.73],
  [0.999, 1],
]
const WAY_BACK: Rows = WAY.map(([fraction, way]) => [way, fraction])

/**
 * Hardness [HRC] of a structure with `fraction` martensite (0..1), the rest bainite or fine pearlite, by carbon in solution.
 * Published for 0.5..0.999; below 0.5 the trend of 50..80 % goes on and stands for bainite, not for soft ferrite.
 */
export function partialMartensiteHrc(carbonWtPct: number, fraction: number): number {
  const half = halfMartensiteHrc(carbonWtPct)
  return half + interpolate(WAY, fraction) * (fullMartensiteHrc(carbonWtPct) - half)
}

/** Martensite fraction (0..0.999) that gives `hrc` at `carbonWtPct`; the inverse of `partialMartensiteHrc`. */
export function martensiteFractionFor(carbonWtPct: number, hrc: number): number {
  const half = halfMartensiteHrc(carbonWtPct)
  return interpolate(WAY_BACK, (hrc - half) / (fullMartensiteHrc(carbonWtPct) - half))
}
