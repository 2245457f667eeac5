import { runStage } from '#engine/conduction/stage.ts'
import type { Surroundings } from '#engine/conduction/surroundings.ts'
import type { ThermalMaterial } from '#engine/conduction/thermal-material.ts'
import { DwellClock } from '#engine/kinetics/dwell-clock.ts'
import { CoolingClock } from '#engine/metallurgy/cooling-clock.ts'
import { hotterForColourK, oxideGrownS } from '#engine/metallurgy/temper-oxide.ts'
import { advanceParameter } from '#engine/metallurgy/tempering-parameter.ts'
import { airContact } from '#engine/surface-heat/air.ts'
import { bathAfterBar, bathContact } from '#engine/surface-heat/bath.ts'
import type { Bath } from '#engine/surface-heat/gear.ts'
import { type Bench, mustHarden } from './bench.ts'
import { allUnderM, massBetweenKg, STEEL_DENSITY_KG_PER_M3, trueToMesh, typicalAcrossM } from './body.ts'
import { HAND_WARM_K, ROOM_K } from './node-state.ts'
import type { ProcessStep } from './process.ts'
import { SHARES } from './steel-tables.ts'

/** The piece goes under hand over hand [m/s]: common practice, no source. */
const ENTRY_M_PER_S = 0.3
const BLACK_K = 770

export function carry(bench: Bench, step: Extract<ProcessStep, { do: 'carry' }>, index: number): void {
  const { body, state, job } = bench
  const startS = bench.nowS
  const surroundings = allIn(airContact(ROOM_K, { acrossM: typicalAcrossM(body, 0, body.lengthM), moving: true }))
  const dwell = dwellClock(bench, 'air')
  const walked = runStage({
    mesh: body.mesh,
    ...coolingMaterials(bench, undefined),
    temperatureK: state.temperatureK,
    surroundings,
    endS: step.forS,
    toleranceK: bench.care.toleranceK,
    ...bench.care.stepping,
    observe: (timeS, temperatureK) => {
      bench.writer.add(startS + timeS, temperatureK)
      dwell.at(timeS, temperatureK)
    },
  })
  state.temperatureK.set(walked.temperatureK)
  bench.met.push({ as: 'walk', surroundings, lastedS: step.forS })
  bench.nowS = startS + step.forS
  const skin = mustHarden(body, job, { fromM: 0, toM: body.lengthM })
    .filter((i) => body.mesh.depthM[i] === 0 && state.peakK[i]! > bench.critical.ac1K)
    .map((i) => state.temperatureK[i]!)
  bench.records.push({
    kind: 'carry',
    step: index,
    startS,
    endS: bench.nowS,
    coldestSurfaceK: skin.length > 0 ? Math.min(...skin) : Number.NaN,
    hottestSurfaceK: skin.length > 0 ? Math.max(...skin) : Number.NaN,
  })
}

/** Into the bath and out again; every node's cooling clock starts here. */
export function quench(bench: Bench, step: Extract<ProcessStep, { do: 'quench' }>, index: number): void {
  const { body, state, job } = bench
  const bath = bathNow(bench, step.in)
  const depthM = step.depthM ?? null
  const lengthUnderM = Math.min(depthM ?? body.lengthM, body.lengthM)
  const acrossM = typicalAcrossM(body, 0, lengthUnderM)
  const contact = bathContact(bath, { agitation: step.agitation, acrossM, factor: bench.filmFactor })
  // The meshed round of a broad flat holds less metal than the flat: its share of the bath is less in proportion.
  const covered =
    contact.capacityJPerK === undefined ? contact : { ...contact, capacityJPerK: contact.capacityJPerK / trueToMesh(body) }
  const top = depthM ?? allUnderM(body)
  const surroundings: Surroundings = {
    covered,
    rest: airContact(ROOM_K, { acrossM }),
    fromM: 0,
    level: isAir(bath)
      ? [[0, Number.POSITIVE_INFINITY]]
      : [
          [0, 0],
          [top / ENTRY_M_PER_S, top],
        ],
  }
  const startS = bench.nowS
  const hottestInK = Math.max(...state.temperatureK)
  const mustNodes = mustHarden(body, job, { fromM: 0, toM: lengthUnderM })
  const entry = mustNodes.filter((i) => body.mesh.depthM[i] === 0).map((i) => state.temperatureK[i]!)
  const before = state.coolingS.slice()

  bench.expectedCoolingS ??= expectedCooling(bench, surroundings, step.forS, lengthUnderM)
  const clock = new CoolingClock(state.temperatureK, state.peakK)
  const dwell = dwellClock(bench, 'bath')
  const outcome = runStage({
    mesh: body.mesh,
    ...coolingMaterials(bench, bench.expectedCoolingS),
    temperatureK: state.temperatureK,
    surroundings,
    endS: step.forS,
    toleranceK: bench.care.toleranceK,
    ...bench.care.stepping,
    observe: (timeS, temperatureK) => {
      bench.writer.add(startS + timeS, temperatureK, isAir(bath) ? Number.NaN : Math.min(top, ENTRY_M_PER_S * timeS))
      clock.update(timeS, temperatureK)
      dwell.at(timeS, temperatureK)
      noteLowest(bench, temperatureK)
    },
  })
  state.temperatureK.set(outcome.temperatureK)
  bench.nowS = startS + step.forS
  bench.quenchedAtS = bench.nowS
  bench.clock = clock
  bench.clockStartS = startS
  noteCooling(bench, before)
  bench.met.push({ as: 'bath', surroundings, lastedS: step.forS })
  const warmed: Bath = { ...bath, temperatureK: isAir(bath) ? bath.temperatureK : outcome.fluidEndK }
  bench.baths.set(bath.name, warmed)
  bench.records.push({
    kind: 'quench',
    step: index,
    startS,
    endS: bench.nowS,
    bath,
    bathStartK: bath.temperatureK,
    bathEndK: warmed.temperatureK,
    depthM,
    lengthUnderM,
    massUnderKg: massBetweenKg(body, 0, lengthUnderM),
    acrossM,
    heatIntoBathJ: -outcome.heatFromCoveredJ * trueToMesh(body),
    hottestInK,
    hottestOutK: hottestUnder(bench, state.temperatureK, lengthUnderM),
    coldestEntryK: entry.length > 0 ? Math.min(...entry) : Number.NaN,
  })
}

/** A first, rough run, ended at black heat: how much martensite to expect where, so that the latent heat falls in its right place. */
function expectedCooling(bench: Bench, surroundings: Surroundings, endS: number, lengthUnderM: number): Float64Array {
  const { body, state } = bench
  const clock = new CoolingClock(state.temperatureK, state.peakK)
  runStage({
    mesh: body.mesh,
    ...coolingMaterials(bench, undefined),
    temperatureK: state.temperatureK,
    surroundings,
    endS,
    toleranceK: bench.care.roughToleranceK,
    ...bench.care.stepping,
    observe: (timeS, temperatureK) => {
      clock.update(timeS, temperatureK)
      return hottestUnder(bench, temperatureK, lengthUnderM) < BLACK_K
    },
  })
  return clock.times()
}

/** Left in the air until it can be held in the hand; heat left in the body tempers what is already hard. */
export function coolInAir(
  bench: Bench,
  until?: (timeS: number, temperatureK: Float64Array) => boolean,
  maxStepS: (timeS: number) => number = () => Number.POSITIVE_INFINITY,
): void {
  const { body, state } = bench
  const startS = bench.nowS
  const acrossM = typicalAcrossM(body, 0, body.lengthM)
  const { clock, clockStartS } = bench
  let lastS = 0
  const previous = state.temperatureK.slice()
  const before = state.coolingS.slice()
  const dwell = dwellClock(bench, 'air')
  const surroundings = allIn(airContact(ROOM_K, { acrossM }))
  const cooled = runStage({
    mesh: body.mesh,
    ...coolingMaterials(bench, clock?.times()),
    temperatureK: state.temperatureK,
    surroundings,
    endS: 4 * 3600,
    maxStepS,
    toleranceK: Math.max(0.5, bench.care.toleranceK),
    ...bench.care.stepping,
    observe: (timeS, temperatureK) => {
      bench.writer.add(startS + timeS, temperatureK)
      clock?.update(startS + timeS - clockStartS, temperatureK)
      dwell.at(timeS, temperatureK)
      noteTempering(bench, previous, temperatureK, timeS - lastS)
      noteLowest(bench, temperatureK)
      previous.set(temperatureK)
      lastS = timeS
      return until === undefined ? Math.max(...temperatureK) < HAND_WARM_K : until(timeS, temperatureK)
    },
  })
  state.temperatureK.set(cooled.temperatureK)
  bench.nowS = startS + cooled.endedS
  bench.met.push({ as: 'air', surroundings, lastedS: cooled.endedS })
  noteCooling(bench, before)
  bench.quenchedAtS = bench.nowS
}

export function warmBath(bench: Bench, step: Extract<ProcessStep, { do: 'warm-bath' }>, index: number): void {
  const bath = bathNow(bench, step.in)
  const { acrossM, lengthM, atK } = step.with
  const barMassKg = (STEEL_DENSITY_KG_PER_M3 * Math.PI * acrossM * acrossM * lengthM) / 4
  const warmed = { ...bath, temperatureK: bathAfterBar(bath, { massKg: barMassKg, atK }) }
  bench.baths.set(bath.name, warmed)
  const startS = bench.nowS
  // Five minutes to heat-soak the oil and stir it even: common practice, no source.
  bench.nowS += 300
  bench.records.push({
    kind: 'warm-bath',
    step: index,
    startS,
    endS: bench.nowS,
    bath,
    barMassKg,
    bathStartK: bath.temperatureK,
    bathEndK: warmed.temperatureK,
  })
}

/** The film that grows on the skin in air. */
export function noteOxide(bench: Bench, oxideS: Float64Array, beforeK: Float64Array, afterK: Float64Array, stepS: number): void {
  const { depthM } = bench.body.mesh
  const hotterK = hotterForColourK(bench.job.steel.composition)
  for (let i = 0; i < afterK.length; i++)
    if (depthM[i] === 0) oxideS[i] = oxideS[i]! + oxideGrownS(0.5 * (beforeK[i]! + afterK[i]!), stepS, hotterK)
}

/** Tempering by whatever heat a node meets below its martensite start. */
export function noteTempering(bench: Bench, beforeK: Float64Array, afterK: Float64Array, stepS: number): void {
  if (stepS <= 0) return
  const { parameter18K, parameter20K, temperPeakK } = bench.state
  const { msK } = bench.critical
  noteOxide(bench, bench.state.oxideS, beforeK, afterK, stepS)
  for (let i = 0; i < afterK.length; i++) {
    const meanK = 0.5 * (beforeK[i]! + afterK[i]!)
    // Below 100 degC nothing moves in a day; above Ms there is no martensite to temper.
    if (meanK < 373 || (meanK > msK && bench.state.lowestK[i]! > msK)) continue
    parameter18K[i] = advanceParameter(parameter18K[i]!, 18, meanK, stepS)
    parameter20K[i] = advanceParameter(parameter20K[i]!, 20, meanK, stepS)
    if (afterK[i]! > temperPeakK[i]!) temperPeakK[i] = afterK[i]!
  }
}

/** Most of the austenite is martensite by this much under its start [K]: two thirds to nine tenths, by carbon. */
const SETTLED_UNDER_MS_K = 100

/** Nothing turns in the air above Ar1, which lies about this far under Ac1 at the pace of a walk [K] (memory). */
const AIR_TURNS_UNDER_AC1_K = 30

function dwellClock({ state, critical }: Bench, where: 'bath' | 'air'): DwellClock {
  const settledK = critical.msK - SETTLED_UNDER_MS_K
  const limits = where === 'bath' ? { settledK } : { settledK, ceilingK: critical.ac1K - AIR_TURNS_UNDER_AC1_K }
  return new DwellClock(state.dwellS, state.temperatureK, state.lowestK, limits)
}

/** What the running clock has timed; a place that an earlier bath of the same heat timed in full keeps that time. */
function noteCooling({ clock, state }: Bench, beforeS: Float64Array): void {
  if (clock === undefined) return
  const now = clock.times()
  for (let i = 0; i < now.length; i++) state.coolingS[i] = Number.isFinite(now[i]!) ? now[i]! : beforeS[i]!
}

function noteLowest(bench: Bench, temperatureK: Float64Array): void {
  const { lowestK } = bench.state
  for (let i = 0; i < temperatureK.length; i++) if (temperatureK[i]! < lowestK[i]!) lowestK[i] = temperatureK[i]!
}

/** Cooling tables of every node: never austenitised, or austenitised with the share of martensite that its cooling will give. */
export function coolingMaterials(
  bench: Pick<Bench, 'state' | 'critical' | 'response' | 'tables'>,
  coolingS: ArrayLike<number> | undefined,
): { materials: readonly ThermalMaterial[]; materialOfNode: Uint8Array } {
  const { state, critical, response } = bench
  const materials = bench.tables.cooling
  const half = 0.5 * (critical.ac1K + critical.ac3K)
  const materialOfNode = Uint8Array.from(state.peakK, (peakK, i) => {
    if (peakK < half) return 0
    const share = coolingS === undefined ? 1 : response.martensiteFraction(coolingS[i]!)
    // What has already transformed gives its latent heat no second time, nor takes it back when warmed from inside.
    const nowK = state.temperatureK[i]!
    if (state.lowestK[i]! < critical.msK - SETTLED_UNDER_MS_K || nowK < critical.msK - 60 || (share < 0.5 && nowK < BLACK_K - 20))
      return materials.length - 1
    return 1 + Math.round((1 - share) * (SHARES.length - 1))
  })
  return { materials, materialOfNode }
}

function allIn(contact: Surroundings['covered']): Surroundings {
  return { covered: contact, rest: contact, fromM: 0, level: [[0, Number.POSITIVE_INFINITY]] }
}

function hottestUnder(bench: Bench, temperatureK: Float64Array, lengthUnderM: number): number {
  const { xM } = bench.body.mesh
  let hottest = 0
  for (let i = 0; i < xM.length; i++) if (xM[i]! <= lengthUnderM && temperatureK[i]! > hottest) hottest = temperatureK[i]!
  return hottest
}

export function isAir(bath: Bath): boolean {
  return bath.kind === 'still air' || bath.kind === 'moving air'
}

/** The bath of that name as it stands now; still and moving air need no entry in the shop. */
export function bathNow(bench: Bench, name: string): Bath {
  const bath = bench.baths.get(name)
  if (bath !== undefined) return bath
  if (name === 'still air' || name === 'moving air') return { name, kind: name, temperatureK: ROOM_K }
  throw new Error(`quench: the shop has no bath called "${name}"`)
}
