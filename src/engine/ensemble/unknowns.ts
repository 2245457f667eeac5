import type { RandomStream } from '#engine/arithmetic/random.ts'
import { type Composition, ELEMENTS, type Steel } from '#engine/materials/steel.ts'
import type { Job } from '#engine/simulation/job.ts'
import { FIRE_NATURES } from '#engine/surface-heat/fire.ts'
import type { BathKind, FireKind } from '#engine/surface-heat/gear.ts'

/** One possible truth about the bar, the shop and the models. Standard normal where no unit is given. */
export interface Member {
  readonly composition: Composition
  readonly lnFilm: number
  readonly heatOffsetK: number
  readonly ovenOffsetK: number
  readonly hardening: number
  readonly tempering: number
}

export const NOMINAL_OFFSETS = { lnFilm: 0, heatOffsetK: 0, ovenOffsetK: 0, hardening: 0, tempering: 0 } as const

/** Spread of the film coefficient between one bath of a kind and the next, one sigma of its logarithm (+/-30 % for nine in ten, memory). */
const FILM_SIGMA: { readonly [Kind in BathKind]: number } = {
  'still air': 0.12,
  'moving air': 0.25,
  'fast oil': 0.18,
  'medium oil': 0.18,
  'slow oil': 0.18,
  'vegetable oil': 0.18,
  water: 0.2,
  brine: 0.15,
}

/** What is left of an oven's error once its known error is allowed for, one sigma [K]: from memory, domestic ovens. */
const OVEN_SIGMA_K = 5

const LIMIT_SIGMAS = 1.645

export function drawMember(job: Job, random: RandomStream): Member {
  const heatSigmaK = heatSigmaOf(job)
  const filmSigma = FILM_SIGMA[hardeningBathKind(job)]
  // Drawn in a fixed order, so that a longer ensemble begins with the shorter one.
  const composition = drawComposition(job.steel, random)
  return {
    composition,
    lnFilm: filmSigma * random.normal(),
    heatOffsetK: heatSigmaK * random.normal(),
    ovenOffsetK: OVEN_SIGMA_K * random.normal(),
    hardening: random.normal(),
    tempering: random.normal(),
  }
}

/** Outer limits of each unknown but the analysis: nine in ten lie within. */
export type Limits = { readonly [Unknown in keyof typeof NOMINAL_OFFSETS]: number }

export function limitsOf(job: Job): Limits {
  return {
    lnFilm: LIMIT_SIGMAS * FILM_SIGMA[hardeningBathKind(job)],
    heatOffsetK: LIMIT_SIGMAS * heatSigmaOf(job),
    ovenOffsetK: LIMIT_SIGMAS * OVEN_SIGMA_K,
    hardening: LIMIT_SIGMAS,
    tempering: LIMIT_SIGMAS,
  }
}

/**
 * The bar with the carbon, or all the other elements together, at an outer limit of nine heats in ten; undefined where the bar has no
 * range there. The others act alike on hardening, so that each goes to the limit over the root of their number.
 */
export function outerComposition({ composition, range }: Steel, part: 'carbon' | 'others', way: -1 | 1): Composition | undefined {
  const moved = ELEMENTS.filter((element) => range[element] !== undefined && (element === 'C') === (part === 'carbon'))
  if (moved.length === 0) return undefined
  const outer = moved.map((element): readonly [string, number] => {
    const [low, high] = range[element]!
    const best = composition[element]
    const reach = Math.max(0, way < 0 ? best - low : high - best)
    return [element, Math.max(0, best + (way * reach) / Math.sqrt(moved.length))]
  })
  return { ...composition, ...Object.fromEntries(outer) }
}

/** Each element by itself, normal about the best estimate, with nine heats in ten inside the range. */
function drawComposition(steel: Steel, random: RandomStream): Composition {
  const entries = ELEMENTS.map((element): readonly [string, number] => {
    const best = steel.composition[element]
    const range = steel.range[element]
    if (range === undefined) return [element, best]
    const z = random.normal()
    const reach = z < 0 ? best - range[0] : range[1] - best
    return [element, Math.max(0, best + (z * Math.max(0, reach)) / LIMIT_SIGMAS)]
  })
  return Object.fromEntries(entries) as Composition
}

/** One side against the other where the heat is not even, one sigma [K]: such a piece shows two colours, some 40 K apart (common practice, no source). */
const UNEVEN_SIGMA_K = 20

/** How far the last hardening heat may be from what was meant at a place, one sigma [K]: by eye, and by side where it is not turned. */
export function heatSigmaOf(job: Job): number {
  const judgedK = FIRE_NATURES[hardeningFireKind(job)].judgedWithinK
  const heat = job.process.findLast((step) => step.do === 'heat')
  return heat?.do === 'heat' && !heat.even ? Math.sqrt(judgedK * judgedK + UNEVEN_SIGMA_K * UNEVEN_SIGMA_K) : judgedK
}

function hardeningFireKind(job: Job): FireKind {
  const heats = job.process.filter((step) => step.do === 'heat')
  const name = heats[heats.length - 1]?.in
  return job.shop.fires.find((fire) => fire.name === name)?.kind ?? 'muffle'
}

/** The liquid, or air, of the last quench. */
export function hardeningBathKind(job: Job): BathKind {
  const quenches = job.process.filter((step) => step.do === 'quench')
  const name = quenches[quenches.length - 1]?.in
  return job.shop.baths.find((bath) => bath.name === name)?.kind ?? (name === 'moving air' ? 'moving air' : 'still air')
}
