import type { Job } from '#engine/simulation/job.ts'
import type { Fire } from '#engine/surface-heat/gear.ts'
import type { SteelPractice } from './steel-practice.ts'
import type { TemperGear } from './temper-ladder.ts'

/** Coolest temper that makes hardened steel safe [K]: common practice, no source. */
const LEAST_TEMPER_K = 423.15
/** Tempering ends this far under Ac1 [K]. */
const UNDER_AC1_K = 30

/** Mean heat that a swing is worth: 15 K either way tempers like 4 K more (additivity in the tempering parameter). */
function swingWorthK(swingK: number): number {
  return (4 * swingK * swingK) / (15 * 15)
}

/** Ovens, and muffles above what the ovens reach, since a muffle is not easily held so low. */
export function temperGear(job: Job, { facts }: SteelPractice): readonly TemperGear[] {
  const hottestK = facts.critical.ac1K - UNDER_AC1_K
  const ovens = job.shop.ovens.map(({ name, maxK, readsLowK, swingK }): TemperGear => {
    const offsetK = readsLowK + swingWorthK(swingK)
    return { name, leastK: LEAST_TEMPER_K - offsetK, mostK: Math.min(maxK, hottestK - offsetK), offsetK, order: swingK }
  })
  const reachedK = Math.max(LEAST_TEMPER_K, ...ovens.map(({ mostK, offsetK }) => mostK + offsetK))
  const muffles = job.shop.fires
    .filter(({ kind }) => kind === 'muffle')
    .map(({ name }): TemperGear => ({ name, leastK: reachedK, mostK: hottestK, offsetK: 0, order: 100 }))
  return [...ovens, ...muffles]
}

/** What one end is drawn in, with the rest kept wet. */
export function drawingFlame(job: Job): Fire | undefined {
  const order = ['torch', 'coal', 'charcoal', 'gas']
  return [...job.shop.fires]
    .filter(({ kind }) => order.includes(kind))
    .sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))[0]
}
