import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import { refined, STANDARD_NUMBER } from '#engine/metallurgy/grain-growth.ts'
import { DISSOLVING_S, type PriorStructure, structureAsDelivered } from '#engine/metallurgy/prior-structure.ts'
import type { Job } from './job.ts'

/** What the last hardening heat finds: how the carbides lie, and the grain that the piece brings along. */
export interface HeatedFrom {
  readonly prior: PriorStructure
  /** ASTM E112 number before this heat lets it grow. */
  readonly grainNumber: number
  /**
   * The same as far as hardenability is counted by it. Grain finer than the steel's own, which normalising may leave, would take some
   * per cent off the depth; but how much finer it is rests on a law of our own, and the rounds that the depth is held to were normalised
   * too. It is told and not counted.
   */
  readonly countedNumber: number
  /** No step of the process says how the bar comes: it is taken as it is usually sold. */
  readonly assumed: boolean
}

/** What a step before the hardening buys. */
export interface Refinement {
  readonly prior: PriorStructure
  readonly grainNumber: number
  /** After each trip. */
  readonly afterEach: readonly number[]
  readonly after: PriorStructure
  /** How long the carbides then take to dissolve in the next heat, before and after [s], at the usual heat of plain steel. */
  readonly dissolvingS: readonly [before: number, after: number]
}

interface Walked {
  readonly from: HeatedFrom
  readonly refinements: ReadonlyMap<number, Refinement>
}

/** A heat this far under Ac3 still turns it over [K]: the formula is no better. */
const UNDER_AC3_K = 15
/** Poorer than this, furnace cooling leaves ferrite and coarse pearlite, which dissolves like bar as rolled [wt%]. */
const GLOBULES_FROM_WT_PCT = 0.6

const walks = new WeakMap<Pick<Job, 'steel' | 'process'>, Walked>()

/** What the last hardening heat of the job finds; without one, what the piece is at the end. */
export function heatedFrom(job: Pick<Job, 'steel' | 'process'>): HeatedFrom {
  return walk(job).from
}

/** What normalising step `index` (or an anneal) buys; undefined for other steps and for a heat that does not turn the steel over. */
export function refinementOf(job: Pick<Job, 'steel' | 'process'>, index: number): Refinement | undefined {
  return walk(job).refinements.get(index)
}

/** Follows carbides and grain through the process. A quench of a part counts for the whole, which is right where the next heat matters. */
function walk(job: Pick<Job, 'steel' | 'process'>): Walked {
  const known = walks.get(job)
  if (known !== undefined) return known
  const { steel, process } = job
  const { composition } = steel
  const critical = criticalTemperatures(composition, steel.gradeId === undefined ? {} : { gradeId: steel.gradeId })
  const turnsAtK = Math.max(critical.ac1K.value + 15, composition.C > 0.75 ? 0 : critical.ac3K.value - UNDER_AC3_K)
  const countedMost = Math.max(steel.grainSize, STANDARD_NUMBER)
  const found = (prior: PriorStructure, grainNumber: number, assumed: boolean): HeatedFrom => {
    return { prior, grainNumber, countedNumber: Math.min(grainNumber, countedMost), assumed }
  }
  let now = found(structureAsDelivered(steel), steel.grainSize, true)
  let from = now
  const refinements = new Map<number, Refinement>()
  const turned = (index: number, toK: number, holdS: number, times: number, after: PriorStructure): void => {
    const afterEach = refined(composition, now.grainNumber, toK, holdS, times)
    refinements.set(index, {
      prior: now.prior,
      grainNumber: now.grainNumber,
      afterEach,
      after,
      dissolvingS: [DISSOLVING_S[now.prior], DISSOLVING_S[after]],
    })
    now = found(after, afterEach[afterEach.length - 1] ?? now.grainNumber, false)
  }
  const annealed: PriorStructure = composition.C >= GLOBULES_FROM_WT_PCT ? 'spheroidised' : 'rolled'
  process.forEach((step, index) => {
    if (step.do === 'normalise' && step.toK >= turnsAtK) turned(index, step.toK, step.holdS, step.times, 'fine')
    else if (step.do === 'anneal' && step.toK >= turnsAtK) turned(index, step.toK, step.holdS, 1, annealed)
    else if (step.do === 'anneal' && composition.C >= GLOBULES_FROM_WT_PCT)
      now = { ...now, prior: 'spheroidised', assumed: false }
    else if (step.do === 'heat') {
      from = now
      if (step.toK >= turnsAtK) {
        const [grainNumber = now.grainNumber] = refined(composition, now.grainNumber, step.toK, step.holdS, 1)
        now = found('fine', grainNumber, false)
      }
    } else if (step.do === 'quench' && !now.assumed) now = { ...now, prior: 'martensite' }
  })
  const walked = { from: process.some((step) => step.do === 'heat') ? from : now, refinements }
  walks.set(job, walked)
  return walked
}
