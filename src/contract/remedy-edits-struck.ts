import { isWater, skinAt } from '#engine/findings/account.ts'
import type { EngineFinding } from '#engine/findings/finding.ts'
import { STRUCK_END_WARN_HRC, struckFromM } from '#engine/findings/struck.ts'
import { rulingDrawing } from '#engine/findings/temper-choice.ts'
import { drawn } from './remedy-edits-draw.ts'
import { placedSteps, type Remedy, type RemedyGround, sectionStartsM, stepAt, writes } from './remedy-edits-ground.ts'
import { clearDips, endHeatedM } from './remedy-edits-lengths.ts'
import { before, lengthSetting } from './remedy-edits-settings.ts'
import { isSound, withSection } from './remedy-edits-shape.ts'
import { quenchedAt } from './remedy-edits-tank.ts'
import { temperedIn } from './remedy-edits-temper.ts'
import { missAt } from './remedy-edits-temper-choice.ts'

/** Ends that the hammer meets: the struck end, and the lip of a hollow. */

/** Kept out of the heat, drawn in a flame, or kept out of the bath. */
export function struckEndHard({ where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const { account } = ground
  const fromM = struckFromM(account)
  const zone = account.job.zones.find(({ name }) => name === where?.zone)
  const end =
    zone !== undefined && (zone.aim.lowHrc ?? 0) < STRUCK_END_WARN_HRC && zone.fromM > 0.5 * account.lengthM
      ? zone
      : { name: 'struck end', fromM, toM: account.lengthM, aim: { highHrc: STRUCK_END_WARN_HRC } }
  return [...outOfTheFire(ground), ...drawn(ground, end), ...outOfTheBath(ground)]
}

function outOfTheFire(ground: RemedyGround): Remedy[] {
  const heat = placedSteps(ground).findLast(({ step }) => step.do === 'heat')
  const toM = endHeatedM(ground)
  if (heat?.step.do !== 'heat' || toM === undefined) return []
  const now = heat.step.part?.toM
  if (now !== undefined && toM > now - 0.005) return []
  const to = lengthSetting(toM, ground.units)
  const from = lengthSetting(heat.step.part?.fromM ?? 0, ground.units)
  return [
    {
      says: `Heat only the first ${to.text} of it${now === undefined ? '' : ` instead of ${before.length(now, ground.units)}`}, so that the struck end stays cold`,
      edits: [writes([...heat.path, 'part'], { from: from.text, to: to.text })],
    },
  ]
}

function outOfTheBath(ground: RemedyGround): Remedy[] {
  const quench = placedSteps(ground).findLast(({ step }) => step.do === 'quench')
  const found = quenchedAt(ground, quench?.at)
  // Red metal that stands out of oil lights it: that is no way out.
  if (found === undefined || !isWater(found.record.bath)) return []
  const { hardToM, acrossM } = ground.layout()
  const [dip] = clearDips(ground, found.record.bath, hardToM + Math.max(0.008, 0.4 * acrossM))
  if (dip === undefined || (found.record.depthM !== null && dip.si >= found.record.depthM)) return []
  const was = found.record.depthM === null ? 'the whole of it' : before.length(found.record.depthM, ground.units)
  return [
    {
      says: `Quench ${dip.text} instead of ${was}, moving it up and down`,
      edits: [writes([...found.quench.path, 'depth'], dip.text)],
    },
  ]
}

/** Softer by a hotter temper, where the aims allow it; else a smaller hollow. */
export function hollowEdgeChips({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  return [
    ...softerLip(ground, where?.xM ?? 0, figures?.mostHrc),
    ...smallerHollow(ground, where?.xM ?? 0, figures?.leastAcrossM ?? 0),
  ]
}

const STEP_K = 5
const HOTTEST_K = 923.15

function softerLip(ground: RemedyGround, xM: number, mostHrc: number | undefined): Remedy[] {
  const { account } = ground
  const ruling = rulingDrawing(account)
  const lip = skinAt(account, xM)
  const temper = stepAt(ground, ruling?.step, 'temper')
  if (ruling === undefined || lip === undefined || temper === undefined || mostHrc === undefined) return []
  const curve = (atK: number): number =>
    account.steel.temperedHrc(lip.quenchedHrc.value, { atK, holdS: ruling.holdS, times: ruling.times })
  const nowMiss = missAt(ground, ruling.trueK, ruling)
  for (let k = ruling.trueK + STEP_K; k < HOTTEST_K; k += STEP_K) {
    if (lip.temperedHrc.value + curve(k) - curve(ruling.trueK) > mostHrc) continue
    return missAt(ground, k, ruling) <= nowMiss + 1 ? temperedIn(ground, temper, k) : []
  }
  return []
}

function smallerHollow(ground: RemedyGround, xM: number, landM: number): Remedy[] {
  const { job } = ground.account
  const index = xM < 0.5 * ground.account.lengthM ? 0 : job.profile.sections.length - 1
  const section = job.profile.sections[index]
  const faceM = index === 0 ? section?.from.acrossM : section?.to.acrossM
  if (section?.dish === undefined || faceM === undefined || sectionStartsM(job).length === 0) return []
  const across = lengthSetting(faceM - 2 * 1.05 * landM, ground.units, 'down')
  const shrink = across.si / section.dish.acrossM
  if (!(across.si > 0.004 && shrink < 0.98)) return []
  const depth = lengthSetting(section.dish.depthM * shrink, ground.units, 'down')
  if (!isSound(withSection(job.profile, index, { dish: { acrossM: across.si, depthM: depth.si } }))) return []
  return [
    {
      says: `Make the hollow ${across.text} across instead of ${before.length(section.dish.acrossM, ground.units)}, for a wider lip`,
      edits: [writes(['profile', index, 'dish'], { across: across.text, depth: depth.text })],
    },
  ]
}
