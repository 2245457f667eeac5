import type { EngineFinding } from '#engine/findings/finding.ts'
import { shoulderAtLine } from '#engine/findings/shape-findings.ts'
import { thinnestUnderM } from '#engine/findings/thickness.ts'
import { takesWhole } from '#engine/planning/hard-lengths.ts'
import { type QuenchMeans, quenchMeans } from '#engine/planning/media.ts'
import { INCH_ROUNDING, METRIC_ROUNDING } from '#engine/planning/rounding.ts'
import { BATH_KINDS, type Bath } from '#engine/surface-heat/gear.ts'
import { durationText } from '#units/duration.ts'
import type { JobEdit } from './job-edits.ts'
import { type Remedy, type RemedyGround, writes } from './remedy-edits-ground.ts'
import { clearDips } from './remedy-edits-lengths.ts'
import { before } from './remedy-edits-settings.ts'
import { madeThicker } from './remedy-edits-shape.ts'
import { otherGrade } from './remedy-edits-steel.ts'
import { quenchedAt } from './remedy-edits-tank.ts'

/** Which bath, and how far in. */

/** A faster bath of this shop that the steel may have; else the same moved hard; else a steel that needs no faster one. */
export function bathTooSlow(finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, finding.where?.step)
  const { coolingS = Number.POSITIVE_INFINITY, hardensInS = 0 } = finding.figures ?? {}
  if (found === undefined) return []
  const { quench, record } = found
  const { bath } = record
  const air = isAir(bath)
  const moved: Remedy[] =
    air || quench.step.agitation === 'strong' || coolingS > STIRRED * hardensInS
      ? []
      : [{ says: `Move it hard in the ${bath.name} all the while`, edits: [writes([...quench.path, 'agitation'], 'strong')] }]
  const faster = allowed(ground)
    .filter(({ bath: other }) => speed(other) > speed(bath))
    .filter(({ bath: other }) => record.depthM !== null || takesWhole(other, ground.account.lengthM))
    .sort((a, b) => speed(a.bath) - speed(b.bath))
  // The gentlest that is a step up in kind; fast oil is hardly that to medium oil where much is lacking.
  const enough =
    faster.find(({ bath: other }) => speed(other) - speed(bath) >= (coolingS > 2 * hardensInS ? 2 : 1)) ?? faster.at(-1)
  const quicker = enough === undefined ? [] : [intoBath(ground, finding, enough.bath, enough.agitation)]
  const richer = otherGrade(ground, { zone: finding.where?.zone, coolingS: Number.isFinite(coolingS) ? coolingS : undefined })
  return finding.figures?.cause === 'skin-only' ? [...quicker, ...richer] : [...quicker, ...moved, ...richer]
}

/** Strong motion makes a bath about so much quicker than moderate (common practice, no source). */
const STIRRED = 1.25

/** A gentler bath of this shop that hardens the steel, or air for a steel that hardens in it. */
export function bathTooFast(finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, finding.where?.step)
  if (found === undefined) return []
  const { bath, depthM } = found.record
  const oil = ground.account.job.shop.baths
    .filter((other) => other.kind.endsWith('oil') && (depthM !== null || takesWhole(other, ground.account.lengthM)))
    .sort((a, b) => speed(b) - speed(a))
    .find((other) => speed(other) < speed(bath))
  const { fiercest } = ground.account.steel.media
  const inAir = fiercest === 'air' ? [intoBath(ground, finding, AIR, 'still')] : []
  const inOil = oil === undefined || fiercest === 'air' ? [] : [intoBath(ground, finding, oil, 'moderate')]
  const least = finding.figures?.leastAcrossM
  const thin = thinnestUnderM(ground.account, found.record.lengthUnderM)
  const thicker = least === undefined || thin === undefined ? [] : madeThicker(ground, thin.xM, least)
  return [...inAir, ...inOil, ...thicker]
}

/** The line moved to where nothing changes section. */
export function quenchLineAtShoulder(finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, finding.where?.step)
  if (found?.record.depthM === null || found === undefined) return []
  const { record, quench } = found
  const nowM = record.depthM ?? 0
  const dips = clearDips(ground, record.bath, nowM)
  const [nearest] = dips
  const onOtherSide = nearest === undefined ? undefined : dips.find(({ si }) => si > nowM !== nearest.si > nowM)
  return [nearest, onOtherSide].flatMap((dip) =>
    dip === undefined || shoulderAtLine(ground.account.job.profile, dip.si) !== undefined
      ? []
      : [
          {
            says: `Quench ${dip.text} instead of ${before.length(nowM, ground.units)}`,
            edits: [writes([...quench.path, 'depth'], dip.text)],
          },
        ],
  )
}

const AIR: Bath = { name: 'still air', kind: 'still air', temperatureK: 293.15 }
/** Until a piece can be held in the hand after standing in air [s]: common practice, no source. */
const AIR_S = 2400
const LIQUID_S = 240

function intoBath(ground: RemedyGround, finding: EngineFinding, bath: Bath, agitation: QuenchMeans['agitation']): Remedy {
  const found = quenchedAt(ground, finding.where?.step)
  const path = found?.quench.path ?? []
  const from = found?.record.bath
  const edits: JobEdit[] = [writes([...path, 'in'], bath.name), writes([...path, 'agitation'], agitation)]
  if (isAir(bath)) edits.push({ path: [...path, 'depth'] }, writes([...path, 'for'], durationText(AIR_S)))
  else if (from !== undefined && isAir(from))
    edits.push(writes([...path, 'depth'], 'whole'), writes([...path, 'for'], durationText(LIQUID_S)))
  const where = isAir(bath) ? bath.name : `the ${bath.name}`
  const was = from === undefined || isAir(from) ? (from?.name ?? 'that bath') : `the ${from.name}`
  const hard = agitation === 'strong' ? ', moved hard,' : ''
  return { says: `${isAir(bath) ? 'Let it cool' : 'Quench it'} in ${where}${hard} instead of ${was}`, edits }
}

/** What this shop has that the steel may be quenched in. */
function allowed(ground: RemedyGround): readonly QuenchMeans[] {
  const { account, units } = ground
  const rounding = units === 'inch' ? INCH_ROUNDING : METRIC_ROUNDING
  return quenchMeans(account.job, ground.practice(), { thickestM: ground.layout().thickestM }, rounding).means
}

/** Slow ones first, as the list of kinds has them; vegetable oil is as quick as a medium oil or quicker. */
function speed({ kind }: Bath): number {
  return kind === 'vegetable oil' ? BATH_KINDS.indexOf('medium oil') : BATH_KINDS.indexOf(kind)
}

function isAir({ kind }: Bath): boolean {
  return kind === 'still air' || kind === 'moving air'
}
