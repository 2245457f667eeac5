import { timeToGapS } from '#engine/findings/hardening-heat.ts'
import type { SteelFacts } from '#engine/findings/steel-facts.ts'
import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { type SteelPractice, steelPractice } from '#engine/planning/steel-practice.ts'
import type { Bath } from '#engine/surface-heat/gear.ts'
import type { JobEdit } from './job-edits.ts'
import { placedSteps, type Remedy, type RemedyGround, writes } from './remedy-edits-ground.ts'
import { heatSetting, holdSetting } from './remedy-edits-settings.ts'
import { dialOf, temperGearFor } from './remedy-edits-temper-choice.ts'

/** Bar that a small shop buys by its name, the plainest first. */
const USUAL_GRADES = ['1045', '1084', 'W1', '4140', '5160', 'O1', '4340', 'S5', 'S7'] as const

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
  /** How slowly the place cools that must harden through [s]. */
  readonly coolingS?: number | undefined
}

/**
 * Another bar for the same shape, treated as that steel wants: its heat, a bath that it may have, and the temper that brings the zones to
 * their aims. None where no usual bar does it with the gear at hand.
 */
export function otherGrade(ground: RemedyGround, wanted: Wanted = {}): Remedy[] {
  const { account, units } = ground
  const { steel } = account
  const zones = ground.layout().hard
  const steps = placedSteps(ground)
  const heat = steps.findLast(({ step }) => step.do === 'heat')
  const quench = steps.findLast(({ step }) => step.do === 'quench')
  const record = account.records.findLast((each) => each.kind === 'heat')
  const bathed = account.records.findLast((each) => each.kind === 'quench')
  if (heat?.step.do !== 'heat' || quench?.step.do !== 'quench' || record?.kind !== 'heat' || bathed?.kind !== 'quench') return []
  if (zones.length === 0) return []
  const temper = steps.find(({ step, at }) => at > quench.at && step.do === 'temper' && step.part === undefined)
  for (const id of USUAL_GRADES) {
    const practice = practiceOf(id)
    if (practice === undefined || id === steel.gradeId || !suits(practice, zones, bathed.bath, wanted)) continue
    const toK = practice.austeniteK
    const edits: JobEdit[] = [writes(['steel'], { grade: id })]
    const to = heatSetting(toK, units)
    edits.push(writes([...heat.path, 'to'], to.text))
    const upS = timeToGapS(record, 15)
    const hold = holdSetting((Number.isFinite(upS) ? upS : record.holdS) + practice.soakS)
    if (hold.si > record.holdS) edits.push(writes([...heat.path, 'hold'], hold.text))
    for (const { step, path } of steps)
      if (step.do === 'normalise' && practice.normaliseK !== undefined)
        edits.push(writes([...path, 'to'], heatSetting(practice.normaliseK, units).text))
    const unnormalised = steps
      .filter(({ step }) => step.do === 'normalise' && practice.normaliseK === undefined)
      .map(({ path }) => path)
    const says = [`heat it to ${to.text}`]
    if (temper?.step.do === 'temper') {
      const { holdS } = temper.step
      const times = Math.max(temper.step.times, practice.cycles)
      const atK = temperOf(practice.facts, zones, { holdS, times })
      const gear = atK === undefined ? undefined : temperGearFor(ground, atK, temper.step.in)
      if (atK === undefined || gear === undefined) continue
      const dial = dialOf(gear, atK, units)
      edits.push(writes([...temper.path, 'at'], dial.text))
      if (gear.name !== temper.step.in) edits.push(writes([...temper.path, 'in'], gear.name))
      if (times > temper.step.times) edits.push(writes([...temper.path, 'times'], times))
      says.push(`temper it${times > 1 ? (times === 2 ? ' twice' : ` ${times} times`) : ''} at ${dial.text}`)
    }
    // From the back, so that the places of the others stand.
    edits.push(...unnormalised.reverse().map((path) => ({ path })))
    return [{ says: `Make it of ${id} instead of ${steel.name}: ${says.join(', ')}`, edits }]
  }
  return []
}

/** Bars sold under one name differ; so much over the aim is wanted before the temper [HRC]. */
const TO_SPARE_HRC = 2
/** And so much slower may it cool than the place does. */
const TO_SPARE_COOLING = 1.2

function suits({ facts, media }: SteelPractice, zones: RemedyZones, bath: Bath, { zone, coolingS }: Wanted): boolean {
  const lowHrc = Math.max(...zones.filter(({ name }) => zone === undefined || name === zone).map(({ aim }) => aim.lowHrc ?? 0))
  if (facts.fullHrc.value < lowHrc + TO_SPARE_HRC) return false
  if (coolingS !== undefined && facts.fullCoolingS < TO_SPARE_COOLING * coolingS) return false
  const kind = bath.kind.endsWith('oil') ? 'oil' : bath.kind.endsWith('air') ? 'air' : 'water'
  return kind === 'water'
    ? facts.media.fiercest === 'water'
    : kind === 'oil'
      ? facts.media.fiercest !== 'air' || media.includes('oil')
      : facts.media.fiercest === 'air'
}

type RemedyZones = ReturnType<RemedyGround['layout']>['hard']

/** Temper that brings fully hardened steel to the middle of what the zones ask [K]. */
function temperOf(
  facts: SteelFacts,
  zones: RemedyZones,
  temper: { readonly holdS: number; readonly times: number },
): number | undefined {
  const low = Math.max(...zones.map(({ aim }) => aim.lowHrc ?? 0))
  const high = Math.min(...zones.map(({ aim }) => aim.highHrc ?? 100))
  const middle = high < 100 ? 0.5 * (low + high) : low + 2
  for (let k = 423.15; k <= Math.min(973.15, facts.critical.ac1K - 40); k += 5)
    if (facts.temperedHrc(facts.fullHrc.value, { atK: k, ...temper }) <= middle) return k
  return undefined
}
