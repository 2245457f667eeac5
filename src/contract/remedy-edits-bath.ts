import type { EngineFinding } from '#engine/findings/finding.ts'
import { thinnestUnderM } from '#engine/findings/thickness.ts'
import { takesWhole } from '#engine/planning/hard-lengths.ts'
import { type QuenchMeans, quenchMeans } from '#engine/planning/media.ts'
import { INCH_ROUNDING, METRIC_ROUNDING } from '#engine/planning/rounding.ts'
import type { Bath } from '#engine/surface-heat/gear.ts'
import { durationText } from '#units/duration.ts'
import type { JobEdit } from './job-edits.ts'
import { coolingInS, isAir, severity, slowestCoolingS, takesHeat } from './remedy-edits-cooling.ts'
import { type Remedy, type RemedyGround, writes } from './remedy-edits-ground.ts'
import { clearDips } from './remedy-edits-lengths.ts'
import { before } from './remedy-edits-settings.ts'
import { madeThicker } from './remedy-edits-shape.ts'
import { otherGrade } from './remedy-edits-steel.ts'
import { type Quenched, quenchedAt } from './remedy-edits-tank.ts'

/** Which bath, and how far in. */

/** Strong motion makes a bath about so much quicker than moderate, and a guess is no nearer than this (common practice, no source). */
const NEARLY = 1.25

/** Not even its skin hardens where the bath takes so much longer than the steel allows. */
const HOPELESS = 4

/** A faster bath of this shop that the steel may have, the gentlest that will do; the same moved hard; a steel that needs no faster one. */
export function bathTooSlow(finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, finding.where?.step)
  const { coolingS = Number.POSITIVE_INFINITY, hardensInS = 0 } = finding.figures ?? {}
  if (found === undefined) return []
  const { quench, record } = found
  const { bath } = record
  const now = { bath, agitation: quench.step.agitation }
  const moved: Remedy[] =
    isAir(bath) || now.agitation === 'strong' || coolingS > NEARLY * hardensInS
      ? []
      : [{ says: `Move it hard in the ${bath.name} all the while`, edits: [writes([...quench.path, 'agitation'], 'strong')] }]
  const faster = allowed(ground)
    .filter((other) => severity(other) > severity(now) && other.bath.name !== bath.name)
    .filter((other) => record.depthM !== null || isAir(other.bath) || takesWhole(other.bath, ground.account.lengthM))
    .filter((other) => takesHeat(other.bath, record.massUnderKg))
    .sort((a, b) => severity(a) - severity(b))
  const enough = faster.find((other) => coolingInS(coolingS, now, other) <= NEARLY * hardensInS) ?? faster.at(-1)
  const quicker = enough === undefined ? [] : [intoBath(found, enough.bath, enough.agitation)]
  const richer = otherGrade(ground, { zone: finding.where?.zone })
  const hopeless = enough !== undefined && coolingInS(coolingS, now, enough) > HOPELESS * hardensInS
  return hopeless ? [...richer, ...quicker] : [...moved, ...quicker, ...richer]
}

/** A gentler bath of this shop that hardens the steel, or air for a steel that hardens in it; the thin part left thicker. */
export function bathTooFast(finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, finding.where?.step)
  if (found === undefined) return []
  const { quench, record } = found
  const { fiercest } = ground.account.steel.media
  const now = { bath: record.bath, agitation: quench.step.agitation }
  const coolingS = slowestCoolingS(ground) ?? 0
  const { fullCoolingS } = ground.account.steel
  const [oil] = ground.account.job.shop.baths
    .filter((bath) => bath.kind.endsWith('oil') && (record.depthM !== null || takesWhole(bath, ground.account.lengthM)))
    .map((bath): { readonly bath: Bath; readonly agitation: 'moderate' } => ({ bath, agitation: 'moderate' }))
    .filter((other) => severity(other) < severity(now) && takesHeat(other.bath, record.massUnderKg))
    // Steel that is sold for water hardens in oil only where it is thin enough all over.
    .filter((other) => fiercest !== 'water' || coolingInS(coolingS, now, other) <= NEARLY * fullCoolingS)
    .sort((a, b) => severity(b) - severity(a))
  const inAir = fiercest === 'air' ? [intoBath(found, AIR, 'still')] : []
  const inOil = oil === undefined || fiercest === 'air' ? [] : [intoBath(found, oil.bath, oil.agitation)]
  const least = finding.figures?.leastAcrossM
  const thin = thinnestUnderM(ground.account, record.lengthUnderM)
  const thicker = least === undefined || thin === undefined ? [] : madeThicker(ground, thin.xM, least)
  return [...inAir, ...inOil, ...thicker]
}

/** The line moved to where nothing changes section. */
export function quenchLineAtShoulder(finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, finding.where?.step)
  const nowM = found?.record.depthM ?? null
  if (found === undefined || nowM === null) return []
  const dips = clearDips(ground, found.record.bath, nowM)
  return dips.map((dip) => ({
    says: `Quench ${dip.text} instead of ${before.length(nowM, ground.units)}`,
    edits: [writes([...found.quench.path, 'depth'], dip.text)],
  }))
}

const AIR: Bath = { name: 'still air', kind: 'still air', temperatureK: 293.15 }
/** Until a piece can be held in the hand: standing in air, and in a liquid [s]: common practice, no source. */
const AIR_S = 2400
const LIQUID_S = 240

function intoBath({ quench, record }: Quenched, bath: Bath, agitation: QuenchMeans['agitation']): Remedy {
  const { path } = quench
  const edits: JobEdit[] = [writes([...path, 'in'], bath.name), writes([...path, 'agitation'], agitation)]
  if (isAir(bath)) edits.push({ path: [...path, 'depth'] }, writes([...path, 'for'], durationText(AIR_S)))
  else if (isAir(record.bath)) edits.push(writes([...path, 'depth'], 'whole'), writes([...path, 'for'], durationText(LIQUID_S)))
  const named = (which: Bath): string => (isAir(which) ? which.name : `the ${which.name}`)
  const hard = agitation === 'strong' ? ', moved hard,' : ''
  const verb = isAir(bath) ? 'Let it cool in' : 'Quench it in'
  return { says: `${verb} ${named(bath)}${hard} instead of ${named(record.bath)}`, edits }
}

/** What this shop has that the steel may be quenched in. */
function allowed(ground: RemedyGround): readonly QuenchMeans[] {
  const { account, units } = ground
  const rounding = units === 'inch' ? INCH_ROUNDING : METRIC_ROUNDING
  return quenchMeans(account.job, ground.practice(), { thickestM: ground.layout().thickestM }, rounding).means
}
