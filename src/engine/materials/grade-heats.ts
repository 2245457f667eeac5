import type { Grade, Limit } from './catalogue.ts'
import { type Composition, type CompositionRange, compositionOf, ELEMENTS, type Element, type Steel } from './steel.ts'
import { SOURCES } from './tables/sources.ts'
import { CURVE_ROWS } from './tables/temper-curves.ts'

/** Usual share of an element in a heat: best estimate and the band of nine heats in ten [weight per cent]. */
interface Share {
  readonly best: number
  readonly low: number
  readonly high: number
}

/** How the analysis of an element was arrived at; shown beside the figure. */
export interface ShareBasis {
  readonly basis: 'published' | 'memory'
  readonly source: string
}

/**
 * Mills aim at the middle and standards hold nearly all heats: taken as 98 in 100, so that nine in ten lie in the middle 70 % of the
 * range (normal spread). Common practice, no source.
 */
const INNER_PART = 0.7

/**
 * What commercial bar holds of elements that nobody ordered: it comes in with the scrap. Sizes after printed analyses of bar
 * (W-type heats in Roberts, Krauss & Kennedy, Tool Steels, 5th ed., Table 7-3: Cr 0.05..0.21, Ni 0.02..0.20; a rail clip measured at
 * Cu 0.24, Cr 0.07, Mo 0.02, Ni 0.07), upper ends after the incidental elements that SAE J404 tolerates (Cu 0.35, Ni 0.25, Cr 0.20,
 * Mo 0.06; from memory). Left out, the hardenability of a plain carbon steel would be understated by a fifth.
 */
const INCIDENTAL: { readonly [Key in Element]?: Share } = {
  Cr: { best: 0.09, low: 0.03, high: 0.18 },
  Ni: { best: 0.08, low: 0.02, high: 0.18 },
  Mo: { best: 0.02, low: 0, high: 0.05 },
  Cu: { best: 0.15, low: 0.03, high: 0.28 },
  P: { best: 0.015, low: 0.006, high: 0.025 },
  S: { best: 0.018, low: 0.005, high: 0.03 },
}

/** Silicon where a standard gives only an upper limit: it is added to kill the steel. Common practice, no source. */
const KILLED_SILICON: Share = { best: 0.25, low: 0.17, high: 0.35 }

/** Best estimates that the middle of very wide limits would miss. */
const USUAL: readonly { readonly grade: string; readonly element: Element; readonly share: Share; readonly from: ShareBasis }[] =
  [
    {
      grade: 'W1',
      element: 'C',
      share: { best: 1.0, low: 0.9, high: 1.15 },
      from: {
        basis: 'memory',
        source: 'bar sold as W1 is mostly 0.95..1.10 % C; the standard allows 0.70..1.50 in ordered steps',
      },
    },
    {
      grade: 'W2',
      element: 'C',
      share: { best: 1.0, low: 0.9, high: 1.1 },
      from: { basis: 'published', source: 'Ryerson tool steel sheet for W2-1.00 C-V; the standard allows 0.85..1.50' },
    },
    {
      grade: 'O1',
      element: 'Mn',
      share: { best: 1.25, low: 1.08, high: 1.36 },
      from: {
        basis: 'published',
        source: 'typical analysis on the Crucible data sheet Ketos (AISI O1), inside the limits of ASTM A681',
      },
    },
  ]

/**
 * Steel of a grade as it is likely to be: for each element a maker's typical analysis where a sheet prints one inside the limits, else the
 * middle of the limits; an element with only an upper limit at its usual share in commercial bar (at most three fifths of the limit, two fifths
 * where no usual share is known: common practice, no source), and one with no limit at all at its incidental share.
 * `range` holds nine heats in ten. `grainSize` is the ASTM E112 number at the usual hardening heat, 7 unless given.
 */
export function steelOf(grade: Grade, options: { readonly grainSize?: number } = {}): Steel {
  const shares = ELEMENTS.flatMap((element) => {
    const share = shareOf(grade, element)
    return share === undefined ? [] : [[element, share] as const]
  })
  return {
    name: grade.id,
    gradeId: grade.id,
    composition: compositionOf(Object.fromEntries(shares.map(([element, { best }]) => [element, best]))) satisfies Composition,
    range: Object.fromEntries(shares.map(([element, { low, high }]) => [element, [low, high]])) satisfies CompositionRange,
    grainSize: options.grainSize ?? 7,
  }
}

/** Where the best estimate of `element` in `grade` comes from, in words. */
export function shareBasisOf(grade: Grade, element: Element): ShareBasis {
  const usual = USUAL.find((entry) => entry.grade === grade.id && entry.element === element)
  if (usual !== undefined) return usual.from
  const limit = grade.limits[element]
  const typical = limit === undefined ? undefined : typicalOf(grade, element, limit)
  if (typical !== undefined) return { basis: 'published', source: `typical analysis, ${typical.source}` }
  if (limit?.low !== undefined && limit.high !== undefined)
    return { basis: grade.provenance === 'memory' ? 'memory' : 'published', source: `middle of the limits, ${grade.source}` }
  if (limit === undefined)
    return { basis: 'memory', source: 'usual in commercial bar (incidental elements, SAE J404), not named by the standard' }
  return { basis: 'memory', source: `usual share; the limits give only one end (${grade.source})` }
}

function shareOf(grade: Grade, element: Element): Share | undefined {
  const usual = USUAL.find((entry) => entry.grade === grade.id && entry.element === element)
  if (usual !== undefined) return usual.share
  const limit = grade.limits[element]
  // Wrought iron was never made from scrap: it holds next to nothing beside slag.
  const incidental = grade.system === 'historic' ? undefined : INCIDENTAL[element]
  if (limit === undefined) return incidental
  const { low, high } = limit
  const typical = typicalOf(grade, element, limit)?.value
  if (low !== undefined && high !== undefined) {
    const middle = (low + high) / 2
    const half = (INNER_PART * (high - low)) / 2
    const best = typical ?? middle
    return { best, low: Math.max(low, Math.min(best, middle) - half), high: Math.min(high, Math.max(best, middle) + half) }
  }
  if (high === undefined) return low === undefined ? incidental : { best: low * 1.1, low, high: low * 1.3 }
  const killed = element === 'Si' && high >= 0.3 && grade.system !== 'historic'
  const usualShare = killed ? KILLED_SILICON : (incidental ?? { best: 0.4 * high, low: 0.1 * high, high: 0.8 * high })
  const best = typical ?? Math.min(usualShare.best, 0.6 * high)
  return { best, low: Math.min(usualShare.low, 0.5 * best), high: Math.min(high, Math.max(usualShare.high, 1.2 * best)) }
}

/** The element's figure in a maker's typical analysis ("C 0.40 Cr 5.2 Mo 1.3"), when it is one figure and inside the limits. */
function typicalOf(grade: Grade, element: Element, limit: Limit): { value: number; source: string } | undefined {
  for (const row of CURVE_ROWS) {
    if (row.grade !== grade.id || row.provenance !== 'tabulated') continue
    const match = new RegExp(`(?:^| )${element} (\\d+(?:\\.\\d+)?)(?= |$)`).exec(row.typical)
    const value = match === null ? Number.NaN : Number(match[1])
    if (value >= (limit.low ?? 0) && value <= (limit.high ?? 100)) return { value, source: SOURCES[row.source] }
  }
  return undefined
}
