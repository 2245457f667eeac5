import { log10, pow } from '#engine/arithmetic/elementary.ts'
import { runStage } from '#engine/conduction/stage.ts'
import type { Contact } from '#engine/conduction/surroundings.ts'
import { heatByColourK } from '#engine/metallurgy/temper-oxide.ts'
import { advanceParameter } from '#engine/metallurgy/tempering-parameter.ts'
import { airContact } from '#engine/surface-heat/air.ts'
import { fireContact, fireSourceK } from '#engine/surface-heat/fire.ts'
import type { Oven } from '#engine/surface-heat/gear.ts'
import { ovenContact } from '#engine/surface-heat/oven.ts'
import type { Bench } from './bench.ts'
import { typicalAcrossM } from './body.ts'
import { edgeNodes } from './colours.ts'
import { fireNamed } from './heating.ts'
import { HAND_WARM_K, ROOM_K } from './node-state.ts'
import type { ProcessStep } from './process.ts'
import { noteOxide } from './quenching.ts'

type TemperStep = Extract<ProcessStep, { do: 'temper' }>

/** The middle counts as up when its slowest place is this near the oven [K]. */
const UP_WITHIN_K = 5
const LONGEST_WARM_UP_S = 8 * 3600
/** Wet rag or water held against the end that must stay hard [W/(m2 K)]: from memory, order of magnitude. */
const WET_FILM = 800

/** In the oven until the middle is up, held, cooled in air; or one end drawn in a flame with the rest kept wet. */
export function temper(bench: Bench, step: TemperStep, index: number): void {
  const { state, body, job } = bench
  const startS = bench.nowS
  const delayS = startS - bench.quenchedAtS
  const startK = Math.max(...state.temperatureK)
  const oven = job.shop.ovens.find((each) => each.name === step.in)
  // Rubbed bright before the first of them, so that its colours can be seen.
  if (!drawnBefore(bench)) state.oxideS.fill(0)
  const acrossM = typicalAcrossM(body, step.part?.fromM ?? 0, step.part?.toM ?? body.lengthM)
  const round =
    oven !== undefined && step.part === undefined ? ovenRound(bench, oven, step, acrossM) : flameRound(bench, step, acrossM, oven)
  const cooledS = coolBetween(bench, round)
  const perRoundS = round.warmUpS + step.holdS + cooledS
  addRounds(bench, round, step.times)
  bench.writer.repeats(step.times, perRoundS)
  bench.nowS = startS + step.times * perRoundS
  bench.records.push({
    kind: 'temper',
    step: index,
    startS,
    endS: bench.nowS,
    ...(oven === undefined ? { fire: fireNamed(bench, step.in) } : { oven }),
    ...(step.part === undefined ? {} : { part: step.part }),
    setK: step.atK,
    trueK: round.trueK,
    holdS: step.holdS,
    times: step.times,
    middleUpS: round.warmUpS,
    delayS,
    startK,
    shownK: shownAtWorkingEnd(bench),
  })
}

/** Tempering parameters that one round alone gives [n, K], and the heat each node saw in it. */
interface Round {
  readonly trueK: number
  warmUpS: number
  readonly parameter18K: Float64Array
  readonly parameter20K: Float64Array
  readonly peakK: Float64Array
  /** Film of oxide that this round grows, as `oxideGrownS` counts it [s]. */
  readonly oxideS: Float64Array
  lastS: number
  before: Float64Array
}

function newRound(bench: Bench, trueK: number): Round {
  const n = bench.state.temperatureK.length
  const zeros = () => new Float64Array(n)
  return {
    trueK,
    warmUpS: 0,
    parameter18K: zeros(),
    parameter20K: zeros(),
    peakK: zeros(),
    oxideS: zeros(),
    lastS: 0,
    before: bench.state.temperatureK.slice(),
  }
}

/** Adds one solver step to a round. */
function note(bench: Bench, round: Round, timeS: number, temperatureK: Float64Array): void {
  const stepS = timeS - round.lastS
  if (stepS > 0) {
    noteOxide(bench, round.oxideS, round.before, temperatureK, stepS)
    for (let i = 0; i < temperatureK.length; i++) {
      const meanK = 0.5 * (round.before[i]! + temperatureK[i]!)
      if (temperatureK[i]! > round.peakK[i]!) round.peakK[i] = temperatureK[i]!
      if (meanK < 373) continue
      round.parameter18K[i] = advanceParameter(round.parameter18K[i]!, 18, meanK, stepS)
      round.parameter20K[i] = advanceParameter(round.parameter20K[i]!, 20, meanK, stepS)
    }
  }
  round.before.set(temperatureK)
  round.lastS = timeS
}

function ovenRound(bench: Bench, oven: Oven, step: TemperStep, acrossM: number): Round {
  const trueK = Math.min(step.atK, oven.maxK) + oven.readsLowK
  const round = newRound(bench, trueK)
  const steady = ovenContact({ ...oven, swingK: 0 }, trueK, { acrossM, holdS: step.holdS })
  round.warmUpS = stage(
    bench,
    round,
    steady,
    LONGEST_WARM_UP_S,
    bench.care.ovenStepS,
    (temperatureK) => lowest(temperatureK) >= trueK - UP_WITHIN_K,
  )
  const { swings, ovenStepS } = bench.care
  const swinging = swings ? ovenContact(oven, trueK, { acrossM, holdS: step.holdS }) : steady
  stage(bench, round, swinging, step.holdS, !swings ? ovenStepS : oven.swingK > 0 ? 90 : 300, () => false)
  return round
}

/** One end in a flame (or the whole piece, without `part`), the rest wet. */
function flameRound(bench: Bench, step: TemperStep, acrossM: number, oven: Oven | undefined): Round {
  const { body } = bench
  const fire = oven === undefined ? fireNamed(bench, step.in) : { name: oven.name, kind: 'muffle' as const }
  const round = newRound(bench, step.atK)
  const part = step.part ?? { fromM: 0, toM: body.lengthM }
  const wet: Contact = { fluid: [[0, ROOM_K]], film: [[ROOM_K, WET_FILM]], emissivity: 0 }
  const rest = step.part === undefined ? airContact(ROOM_K, { acrossM }) : wet
  const reachedAt = (temperatureK: Float64Array): boolean => {
    for (let i = 0; i < temperatureK.length; i++) {
      const x = body.mesh.xM[i]!
      if (x >= part.fromM && x <= part.toM && temperatureK[i]! >= step.atK) return true
    }
    return false
  }
  const source = fireContact(fire, fireSourceK(fire, step.atK), { acrossM })
  round.warmUpS = stage(bench, round, source, LONGEST_WARM_UP_S, (timeS) => Math.max(30, 0.02 * timeS), reachedAt, part, rest)
  stage(bench, round, fireContact(fire, step.atK, { acrossM }), step.holdS, 60, () => false, part, rest)
  return round
}

/** Runs one stage of a round from the temperatures that stand; returns how long it took [s]. */
function stage(
  bench: Bench,
  round: Round,
  covered: Contact,
  endS: number,
  maxStepS: number | ((timeS: number) => number),
  until: (temperatureK: Float64Array) => boolean,
  part?: { readonly fromM: number; readonly toM: number },
  rest: Contact = covered,
): number {
  const { body, state } = bench
  if (endS <= 0) return 0
  const startS = bench.nowS
  round.lastS = 0
  const outcome = runStage({
    mesh: body.mesh,
    materials: bench.tables.tempered,
    materialOfNode: new Uint8Array(state.temperatureK.length),
    temperatureK: state.temperatureK,
    surroundings: { covered, rest, fromM: part?.fromM ?? 0, level: [[0, part?.toM ?? Number.POSITIVE_INFINITY]] },
    endS,
    maxStepS,
    // A flame outruns the piece and is stopped by what shows: it is followed closely at every grade.
    toleranceK: Math.min(bench.care.ovenToleranceK, covered === rest ? Number.POSITIVE_INFINITY : 0.5),
    ...bench.care.stepping,
    observe: (timeS, temperatureK) => {
      note(bench, round, timeS, temperatureK)
      bench.writer.add(startS + timeS, temperatureK)
      return until(temperatureK)
    },
  })
  state.temperatureK.set(outcome.temperatureK)
  bench.nowS = startS + outcome.endedS
  return outcome.endedS
}

/** Out of the oven, to where it can be held in the hand. */
function coolBetween(bench: Bench, round: Round): number {
  const acrossM = typicalAcrossM(bench.body, 0, bench.body.lengthM)
  return stage(
    bench,
    round,
    airContact(ROOM_K, { acrossM }),
    4 * 3600,
    bench.care.airStepS,
    (temperatureK) => Math.max(...temperatureK) < HAND_WARM_K,
  )
}

/** Adds `times` like rounds to what the nodes have already seen: equivalent times add at the heat of the round. */
function addRounds(bench: Bench, round: Round, times: number): void {
  const { state } = bench
  state.rounds = [...state.rounds, { times, parameter20K: round.parameter20K, peakK: round.peakK }]
  for (let i = 0; i < round.peakK.length; i++) {
    const atK = round.peakK[i]!
    state.oxideS[i] = state.oxideS[i]! + times * round.oxideS[i]!
    state.temperPeakK[i] = Math.max(state.temperPeakK[i]!, atK)
    state.parameter18K[i] = addedParameter(state.parameter18K[i]!, round.parameter18K[i]!, 18, atK, times)
    state.parameter20K[i] = addedParameter(state.parameter20K[i]!, round.parameter20K[i]!, 20, atK, times)
  }
}

function addedParameter(beforeK: number, roundK: number, constant: number, atK: number, times: number): number {
  if (roundK <= 0) return beforeK
  const hours = (parameterK: number): number => (parameterK > 0 ? pow(10, parameterK / atK - constant) : 0)
  return atK * (constant + log10(hours(beforeK) + times * hours(roundK)))
}

/** Whether colours were run, or another temper done, since the last hardening heat. */
function drawnBefore({ records }: Bench): boolean {
  const heated = records.findLastIndex(({ kind }) => kind === 'heat')
  return records.findLastIndex(({ kind }) => kind === 'temper' || kind === 'run-colours') > heated
}

/** What the table of colours makes of the film on the working end, bright before the temper [K]. */
function shownAtWorkingEnd({ body, state }: Bench): number {
  const edge = edgeNodes(body)
  return heatByColourK(edge.reduce((sum, i) => sum + state.oxideS[i]!, 0) / edge.length)
}

function lowest(values: Float64Array): number {
  let best = values[0]!
  for (let i = 1; i < values.length; i++) if (values[i]! < best) best = values[i]!
  return best
}
