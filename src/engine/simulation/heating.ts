import { runStage } from '#engine/conduction/stage.ts'
import { airContact } from '#engine/surface-heat/air.ts'
import { fireContact, fireSourceK } from '#engine/surface-heat/fire.ts'
import type { Fire } from '#engine/surface-heat/gear.ts'
import { type Bench, mustHarden } from './bench.ts'
import { massBetweenKg, typicalAcrossM } from './body.ts'
import { heatedFrom, refinementOf } from './heated-from.ts'
import { keptHardness } from './kept-hardness.ts'
import { ROOM_K } from './node-state.ts'
import type { ProcessStep } from './process.ts'
import type { Cooled, HeatRecord } from './records.ts'
import { type CoolingWay, coolFrom } from './shut-in.ts'

type HeatStep = Extract<ProcessStep, { do: 'heat' | 'normalise' | 'anneal' | 'stress-relieve' }>

/** A fire that has not brought the outside up by then never will [s]. */
const LONGEST_HEAT_S = 4 * 3600
/** The middle counts as up when its slowest place is this near the heat [K]. */
const UP_WITHIN_K = 15
/** The smith backs off when the hottest place runs this far ahead [K]. */
const RUNS_AHEAD_K = 5
/** Time counts as soak within this of a node's own heat [K]. */
const SOAK_WITHIN_K = 15

/**
 * A trip through the fire: the smith feeds the piece the full fire until the hottest place shows the heat, then holds it there.
 * A hardening heat writes what each node reached; normalising and annealing end with the piece cold again.
 */
export function heat(bench: Bench, step: HeatStep, index: number): void {
  const { body, state, job } = bench
  const burning = fireNamed(bench, step.in)
  const fire: Fire = step.atmosphere === undefined ? burning : { ...burning, atmosphere: step.atmosphere }
  const part = step.do === 'heat' ? step.part : undefined
  const fromM = part?.fromM ?? 0
  const toM = part?.toM ?? Number.POSITIVE_INFINITY
  const { toK } = step
  const acrossM = typicalAcrossM(body, fromM, Math.min(toM, body.lengthM))
  const watched = mustHarden(body, job, { fromM, toM })
  const startS = bench.nowS
  const materials = bench.tables.heating
  const materialOfNode = new Uint8Array(state.temperatureK.length)
  const rest = airContact(ROOM_K, { acrossM })
  const { care } = bench
  const toleranceK = (step.do === 'heat' ? 2 : 5) * care.toleranceK
  const common = { mesh: body.mesh, materials, materialOfNode, toleranceK, ...care.stepping }
  const kept = step.do === 'heat' ? keptHardness(bench) : undefined
  if (step.do === 'heat') {
    state.peakK.fill(ROOM_K)
    state.soakS.fill(0)
    state.coolingS.fill(Number.POSITIVE_INFINITY)
    state.dwellS.fill(0)
    state.lowestK.fill(Number.POSITIVE_INFINITY)
    state.parameter18K.fill(0)
    state.parameter20K.fill(0)
    state.temperPeakK.fill(0)
    state.oxideS.fill(0)
    state.rounds = []
    bench.expectedCoolingS = undefined
  }

  // Up: the full fire, until the hottest place shows the heat; short steps near the end, or a thin tip shoots past it.
  let outsideUpS: number | null = null
  let widestGapK = 0
  const sourceK = fireSourceK(fire, toK)
  const fastestKPerS = heatingRate(bench, sourceK - toK)
  // A piece warms ever more slowly: in a share of its time so far it rises by no more than that share of the way. A fire that
  // hardly gets there is not followed for hours in steps of a second.
  const shareOf = (riseK: number): number => riseK / (toK - ROOM_K)
  const easesFromS = startS + care.easesAfterS
  for (const { belowK, riseK } of care.approach) {
    const untilK = toK - belowK
    const fromS = bench.nowS
    let reached = highest(state.temperatureK) >= untilK
    if (!reached) {
      const rising = runStage({
        ...common,
        temperatureK: state.temperatureK,
        surroundings: { covered: fireContact(fire, sourceK, { acrossM }), rest, fromM, level: [[0, toM]] },
        endS: LONGEST_HEAT_S,
        maxStepS: (timeS) => Math.max(0.2, riseK / fastestKPerS, shareOf(riseK) * (fromS + timeS - easesFromS)),
        observe: (timeS, temperatureK) => {
          bench.writer.add(fromS + timeS, temperatureK)
          notePeaks(bench, temperatureK, toK, 0)
          kept?.note(fromS + timeS, temperatureK)
          const { coldest, hottest } = reach(temperatureK, watched)
          widestGapK = Math.max(widestGapK, hottest - coldest)
          reached = highest(temperatureK) >= untilK
          return reached
        },
      })
      state.temperatureK.set(rising.temperatureK)
      bench.nowS = fromS + rising.endedS
    }
    outsideUpS = reached ? bench.nowS - startS : null
    if (!reached) break
  }

  // Held: the smith keeps the hottest place at the heat while the middle comes up. A long cold end draws heat off, so the fire
  // stands a little hotter than the steel; it is looked at a few times in the hold.
  let middleUpS: number | null = null
  const holdStartS = bench.nowS
  let aboveK = 0
  let heldS = 0
  const lookS = step.holdS / (step.do === 'heat' ? care.looks : care.roughLooks)
  while (heldS < step.holdS * 0.9999) {
    let lastS = 0
    let tooHot = false
    const held = runStage({
      ...common,
      temperatureK: state.temperatureK,
      surroundings: { covered: fireContact(fire, toK + aboveK, { acrossM }), rest, fromM, level: [[0, toM]] },
      endS: Math.min(lookS, step.holdS - heldS),
      maxStepS: Math.max(5, lookS / 2),
      observe: (timeS, temperatureK) => {
        bench.writer.add(holdStartS + heldS + timeS, temperatureK)
        notePeaks(bench, temperatureK, toK, timeS - lastS)
        kept?.note(holdStartS + heldS + timeS, temperatureK)
        lastS = timeS
        if (middleUpS === null && reach(temperatureK, watched).coldest >= toK - UP_WITHIN_K) middleUpS = heldS + timeS
        tooHot = timeS > 0.1 * lookS && highest(temperatureK) > toK + RUNS_AHEAD_K
        return tooHot
      },
    })
    state.temperatureK.set(held.temperatureK)
    heldS += held.endedS
    aboveK = tooHot ? 0.5 * aboveK : Math.max(0, Math.min(sourceK - toK, aboveK + 0.5 * (toK - highest(state.temperatureK))))
  }
  if (step.holdS === 0 && reach(state.temperatureK, watched).coldest >= toK - UP_WITHIN_K) middleUpS = 0
  bench.nowS = holdStartS + step.holdS
  const { coldest, hottest } = reach(state.temperatureK, watched)

  const round = bench.nowS - startS
  const cooled = step.do === 'heat' ? undefined : finishColdCycle(bench, step, round)
  if (step.do === 'heat')
    bench.met.splice(0, bench.met.length, { as: 'fire', temperatureK: state.temperatureK.slice(), peakK: state.peakK.slice() })
  bench.records.push({
    kind: step.do,
    step: index,
    startS,
    endS: bench.nowS,
    fire,
    toK: step.toK,
    holdS: step.holdS,
    even: step.do === 'heat' ? step.even : true,
    ...(part === undefined ? {} : { part }),
    outsideUpS,
    middleUpS,
    coldestK: coldest,
    hottestK: Math.max(hottest, highest(state.peakK)),
    widestGapK,
    massKg: massBetweenKg(body, fromM, Math.min(toM, body.lengthM)),
    ...(cooled === undefined ? {} : { cooled }),
    ...foundAndBought(bench, step, index),
  })
  kept?.restore()
}

/** What the last hardening heat finds of carbides and grain, and what a normalise or an anneal buys. */
function foundAndBought({ job }: Bench, { do: kind }: HeatStep, index: number): Pick<HeatRecord, 'from' | 'refinement'> {
  if (kind === 'heat') {
    const isLast = !job.process.some((later, at) => at > index && later.do === 'heat')
    return isLast ? { from: heatedFrom(job) } : {}
  }
  const refinement = refinementOf(job, index)
  return refinement === undefined ? {} : { refinement }
}

/** After normalising, annealing or relieving: cooled to the room, with the clock run on for every round. */
function finishColdCycle(bench: Bench, step: Exclude<HeatStep, { do: 'heat' }>, roundS: number): Cooled {
  const { state } = bench
  const coolStartS = bench.nowS
  const { cooledS, cooled } = coolFrom(bench, wayOf(step))
  const times = step.do === 'normalise' ? step.times : 1
  bench.nowS = coolStartS + cooledS + (times - 1) * (roundS + cooledS)
  bench.writer.repeats(times, roundS + cooledS)
  if (step.do === 'normalise') state.normalised += step.times
  if (step.do === 'anneal') state.annealed = true
  return cooled
}

function wayOf(step: Exclude<HeatStep, { do: 'heat' }>): CoolingWay {
  if (step.do === 'anneal' && step.coolKPerS !== undefined) return { in: 'furnace', kPerS: step.coolKPerS }
  return { in: step.do === 'stress-relieve' ? 'still air' : (step.coolIn ?? (step.do === 'anneal' ? 'furnace' : 'still air')) }
}

/** Keeps the hottest that each node has been, and how long it stood near that or near the heat meant, whichever is less. */
function notePeaks(bench: Bench, temperatureK: Float64Array, toK: number, stepS: number): void {
  const { peakK, soakS } = bench.state
  for (let i = 0; i < temperatureK.length; i++) {
    const now = temperatureK[i]!
    const before = Math.min(peakK[i]!, toK)
    if (now > peakK[i]!) peakK[i] = now
    const top = Math.min(peakK[i]!, toK)
    if (top > before + SOAK_WITHIN_K) soakS[i] = 0
    if (now >= top - SOAK_WITHIN_K) soakS[i] = soakS[i]! + stepS
  }
}

/** How fast the thinnest place warms when the fire is `aboveK` hotter than it [K/s]: a film of 300 W/(m2 K) about a round of its radius. */
function heatingRate({ body }: Bench, aboveK: number): number {
  const thinnestM = Math.max(0.0005, Math.min(...body.localRadiusM.filter((r) => r > 0)))
  return (2 * 300 * Math.max(aboveK, 10)) / (7800 * 700 * thinnestM)
}

function highest(values: Float64Array): number {
  let best = values[0]!
  for (let i = 1; i < values.length; i++) if (values[i]! > best) best = values[i]!
  return best
}

function reach(temperatureK: Float64Array, nodes: readonly number[]): { coldest: number; hottest: number } {
  let coldest = Number.POSITIVE_INFINITY
  let hottest = Number.NEGATIVE_INFINITY
  for (const node of nodes) {
    const t = temperatureK[node]!
    if (t < coldest) coldest = t
    if (t > hottest) hottest = t
  }
  return { coldest, hottest }
}

/** The fire of that name; an oven by that name serves as an electric muffle. */
export function fireNamed(bench: Bench, name: string): Fire {
  const fire = bench.job.shop.fires.find((each) => each.name === name)
  if (fire !== undefined) return fire
  if (bench.job.shop.ovens.some((oven) => oven.name === name)) return { name, kind: 'muffle' }
  throw new Error(`heat: the shop has no fire or oven called "${name}"`)
}
