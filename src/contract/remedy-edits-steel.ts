import { timeToGapS } from '#engine/findings/hardening-heat.ts'
import type { SteelFacts } from '#engine/findings/steel-facts.ts'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { takesWhole } from '#engine/planning/hard-lengths.ts'
import { type SteelPractice, steelPractice } from '#engine/planning/steel-practice.ts'
import type { TemperGear } from '#engine/planning/temper-ladder.ts'
import type { QuenchRecord } from '#engine/simulation/records.ts'
import type { Bath } from '#engine/surface-heat/gear.ts'
import { durationText } from '#units/duration.ts'
import type { JobEdit } from './job-edits.ts'
import { coolingInS, isAir, type Moved, slowestCoolingS, takesHeat } from './remedy-edits-cooling.ts'
import { type PlacedStep, placedSteps, type Remedy, type RemedyGround, type StepOf, writes } from './remedy-edits-ground.ts'
import { endHeatedM } from './remedy-edits-lengths.ts'
import { heatSetting, holdSetting, inTimes, lengthSetting } from './remedy-edits-settings.ts'
import { dialOf, overFire, temperGearFor } from './remedy-edits-temper-choice.ts'

/** Bar that a small shop buys by its name, the plainest first. */
const USUAL_GRADES = ['1045', '4140', '1084', 'W1', '5160', 'O1', '4340', 'S5', 'S7'] as const

const known = new Map<string, SteelPractice>()

function practiceOf(id: string): SteelPractice | undefined {
  const grade = gradeById(id)
  if (grade === undefined) return undefined
  const found = known.get(id) ?? steelPractice(steelOf(grade))
  known.set(id, found)
  return found
}

interface Wanted {
  /** The zone that the steel in hand fails; every hard zone where absent. */
  readonly zone?: string | undefined
}

/** What the steps of a treatment become with another steel. */
interface Treated {
  readonly says: readonly string[]
  readonly edits: readonly JobEdit[]
}

/**
 * Another bar for the same shape, treated as that steel wants: its heat, a bath that it may have, and the temper that brings the zones to
 * their aims. The plainest that does it with the gear at hand; none where no usual bar does.
 */
export function otherGrade(ground: RemedyGround, wanted: Wanted = {}): Remedy[] {
  const steps = placedSteps(ground)
  const heat = steps.findLast(({ step }) => step.do === 'heat') as PlacedStep<StepOf<'heat'>> | undefined
  const quench = steps.findLast(({ step }) => step.do === 'quench') as PlacedStep<StepOf<'quench'>> | undefined
  const record = ground.account.records.findLast((each) => each.kind === 'quench')
  if (heat === undefined || quench === undefined || record?.kind !== 'quench' || ground.layout().hard.length === 0) return []
  for (const id of USUAL_GRADES) {
    const practice = practiceOf(id)
    if (practice === undefined || id === ground.account.steel.gradeId || !isHardEnough(ground, practice.facts, wanted)) continue
    const bathed = bathFor(ground, practice, quench, record)
    const tempered = bathed === undefined ? undefined : temperFor(ground, practice, steps, quench)
    if (bathed === undefined || tempered === undefined) continue
    const heated = heatFor(ground, practice, steps, heat)
    return [
      {
        says: `Make it of ${id} instead of ${ground.account.steel.name}: ${[...heated.says, ...bathed.says, ...tempered.says].join(', ')}`,
        edits: [writes(['steel'], { grade: id }), ...bathed.edits, ...tempered.edits, ...heated.edits],
      },
    ]
  }
  return []
}

/** Bars sold under one name differ; so much over the aim is wanted before the temper [HRC]. */
const TO_SPARE_HRC = 2
/** And so much slower may it cool than the place does. */
const TO_SPARE_COOLING = 1.1

function isHardEnough(ground: RemedyGround, facts: SteelFacts, { zone }: Wanted): boolean {
  const asked = ground.layout().hard.filter(({ name }) => zone === undefined || name === zone)
  return facts.fullHrc.value >= Math.max(0, ...asked.map(({ aim }) => aim.lowHrc ?? 0)) + TO_SPARE_HRC
}

/** The bath in use, or another that the steel may have and that cools the hard zones fast enough for it. */
function bathFor(
  ground: RemedyGround,
  practice: SteelPractice,
  quench: PlacedStep<StepOf<'quench'>>,
  record: QuenchRecord,
): Treated | undefined {
  const { job, lengthM } = ground.account
  const now: Moved = { bath: record.bath, agitation: quench.step.agitation }
  const coolingS = slowestCoolingS(ground)
  const others = job.shop.baths.filter(({ name }) => name !== record.bath.name && !isAir(record.bath))
  const bath = [record.bath, ...others].find((each) => {
    const quickS = coolingS === undefined ? 0 : coolingInS(coolingS, now, { ...now, bath: each })
    const fits = each === record.bath || record.depthM !== null || takesWhole(each, lengthM)
    return (
      fits &&
      takesHeat(each, record.massUnderKg) &&
      isAllowed(practice, each) &&
      practice.facts.fullCoolingS >= TO_SPARE_COOLING * quickS
    )
  })
  if (bath === undefined) return undefined
  return bath === record.bath
    ? { says: [], edits: [] }
    : { says: [`quench it in the ${bath.name}`], edits: [writes([...quench.path, 'in'], bath.name)] }
}

function isAllowed({ facts, media, waterFromM }: SteelPractice, bath: Bath): boolean {
  if (isAir(bath)) return facts.media.fiercest === 'air'
  if (!bath.kind.endsWith('oil')) return facts.media.fiercest === 'water' && waterFromM === undefined
  return facts.media.fiercest !== 'air' || media.includes('oil')
}

/** The middle of a round follows the outside after about so long [s/m]: common practice, no source. */
const MIDDLE_UP_S_PER_M = 12_000

function heatFor(
  ground: RemedyGround,
  practice: SteelPractice,
  steps: readonly PlacedStep[],
  heat: PlacedStep<StepOf<'heat'>>,
): Treated {
  const { units, account } = ground
  const record = account.records.find((each) => each.kind === 'heat' && each.step === heat.at)
  const to = heatSetting(practice.austeniteK, units)
  const edits: JobEdit[] = [writes([...heat.path, 'to'], to.text)]
  const upS = record?.kind === 'heat' ? timeToGapS(record, 15) : Number.POSITIVE_INFINITY
  const throughS = MIDDLE_UP_S_PER_M * ground.layout().thickestM
  const hold = holdSetting(Math.max(Number.isFinite(upS) ? upS : heat.step.holdS, throughS) + practice.soakS)
  if (hold.si > heat.step.holdS) edits.push(writes([...heat.path, 'hold'], hold.text))
  const cycles = steps.filter(({ step }) => step.do === 'normalise')
  for (const { path } of cycles)
    if (practice.normaliseK !== undefined) edits.push(writes([...path, 'to'], heatSetting(practice.normaliseK, units).text))
  // Some steels are not normalised. From the back, so that the places of the others stand.
  if (practice.normaliseK === undefined) edits.push(...cycles.reverse().map(({ path }): JobEdit => ({ path })))
  // Steel that hardens deeper hardens the struck end too, unless that stays cold.
  const endM = account.job.struck && heat.step.part === undefined ? endHeatedM(ground) : undefined
  if (endM === undefined) return { says: [`heat it to ${to.text}`], edits }
  const end = lengthSetting(endM, units).text
  edits.unshift(writes([...heat.path, 'part'], { from: lengthSetting(0, units).text, to: end }))
  return { says: [`heat the first ${end} to ${to.text}`], edits }
}

/** The temper that is there, for this steel: to the middle of the aims, or within them, in an oven; else over a fire by eye. */
function temperFor(
  ground: RemedyGround,
  practice: SteelPractice,
  steps: readonly PlacedStep[],
  quench: PlacedStep,
): Treated | undefined {
  const temper = steps.find((each): each is PlacedStep<StepOf<'temper'>> => {
    const { step, at } = each
    return at > quench.at && step.do === 'temper' && step.part === undefined
  })
  // Colours are stopped by eye, whatever the steel.
  if (temper === undefined && steps.some(({ step, at }) => at > quench.at && step.do === 'run-colours'))
    return { says: [], edits: [] }
  const step = temper?.step ?? { in: undefined, holdS: TEMPER_S, times: 1 }
  const times = Math.max(step.times, practice.cycles)
  const { lowHrc, highHrc } = aims(ground)
  const drawn = (hrc: number): number | undefined => temperToK(practice.facts, hrc, { holdS: step.holdS, times })
  const middleK = drawn(0.5 * (lowHrc + highHrc))
  const coolK = drawn(highHrc - 1)
  const ways: { readonly atK: number | undefined; readonly gear: TemperGear | undefined }[] = [
    { atK: middleK, gear: middleK === undefined ? undefined : temperGearFor(ground, middleK, step.in) },
    { atK: coolK, gear: coolK === undefined ? undefined : temperGearFor(ground, coolK, step.in) },
    { atK: middleK, gear: overFire(ground) },
  ]
  const way = ways.find(({ atK, gear }) => atK !== undefined && gear !== undefined)
  if (way?.atK === undefined || way.gear === undefined) return undefined
  const dial = dialOf(way.gear, way.atK, ground.units)
  const elsewhere = way.gear.name !== step.in
  const byEye = ground.account.job.shop.fires.some(({ name }) => name === way.gear?.name)
  const where = elsewhere ? (byEye ? ` over the ${way.gear.name}, by eye` : ` in the ${way.gear.name}`) : ''
  const says = [`temper it${inTimes(times)} at ${dial.text}${where}`]
  if (temper === undefined) {
    const added = { do: 'temper', in: way.gear.name, at: dial.text, hold: durationText(TEMPER_S), times }
    return { says, edits: [{ path: ['process', quench.place + 1], insert: added }] }
  }
  const { path } = temper
  return {
    says,
    edits: [
      writes([...path, 'at'], dial.text),
      ...(elsewhere ? [writes([...path, 'in'], way.gear.name)] : []),
      ...(times > step.times ? [writes([...path, 'times'], times)] : []),
    ],
  }
}

const TEMPER_S = 7200

/** Width of an aim with one bound only [HRC]. */
const USUAL_WIDTH_HRC = 4

function aims(ground: RemedyGround): { readonly lowHrc: number; readonly highHrc: number } {
  const { hard } = ground.layout()
  const lowHrc = Math.max(...hard.map(({ aim }) => aim.lowHrc ?? 0))
  const highHrc = Math.min(...hard.map(({ aim }) => aim.highHrc ?? lowHrc + USUAL_WIDTH_HRC))
  return { lowHrc, highHrc: Math.max(lowHrc, highHrc) }
}

/** Coolest temper that brings fully hardened steel down to a hardness [K]. */
export function temperToK(
  facts: SteelFacts,
  hrc: number,
  temper: { readonly holdS: number; readonly times: number },
): number | undefined {
  const mostK = Math.min(973.15, facts.critical.ac1K - 40)
  for (let k = 423.15; k <= mostK; k += 5) if (facts.temperedHrc(facts.fullHrc.value, { atK: k, ...temper }) <= hrc) return k
  return undefined
}
