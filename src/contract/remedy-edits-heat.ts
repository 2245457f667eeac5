import type { EngineFinding } from '#engine/findings/finding.ts'
import { leastHeatK } from '#engine/findings/hardening-heat.ts'
import { struckFromM } from '#engine/findings/struck.ts'
import type { HeatRecord } from '#engine/simulation/records.ts'
import type { FireKind } from '#engine/surface-heat/gear.ts'
import { type PlacedStep, type Remedy, type RemedyGround, type StepOf, stepAt, writes } from './remedy-edits-ground.ts'
import { endHeatedM } from './remedy-edits-lengths.ts'
import { before, heatSetting, holdSetting, lengthSetting, type Way, walkSetting } from './remedy-edits-settings.ts'

type HeatStep = PlacedStep<StepOf<'heat'>>

/** Not hot enough: hotter, a hotter fire, a shorter walk, more of the length. */
export function underheated(finding: EngineFinding, ground: RemedyGround): Remedy[] {
  const { figures, where } = finding
  if (figures?.cause === 'cold-entry') return shorterWalk(ground, where?.step, figures.entryK ?? 0)
  const heat = stepAt(ground, where?.step, 'heat')
  if (heat === undefined) return []
  if (figures?.cause === 'fire-too-cool') return [...hotterFire(heat, ground), ...lessOfIt(heat, ground)]
  if (figures?.cause === 'short-heat') return moreOfIt(heat, ground, figures.heatedM ?? 0)
  return figures?.heatToK === undefined ? [] : toHeat(heat, ground, figures.heatToK)
}

export function overheated({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const heat = stepAt(ground, where?.step, 'heat')
  const record = heatRecord(ground, where?.step)
  if (heat === undefined || record === undefined || figures?.heatToK === undefined) return []
  if (figures.cause !== 'edge-ahead') return toHeat(heat, ground, figures.heatToK)
  // The thin part runs ahead of what is meant: meant that much lower, as far as it still hardens.
  const { steel } = ground.account
  const lowerK = Math.max(
    leastHeatK(steel, false) + 10,
    Math.min(figures.heatToK, heat.step.toK - (record.hottestK - steel.hardening.toK)),
  )
  return [...slowerFire(heat, ground), ...toHeat(heat, ground, lowerK)]
}

/** The middle of a round follows the outside after about so long [s/m]; beside a cold end it takes longer (common practice, no source). */
const MIDDLE_UP_S_PER_M = 12_000
const BESIDE_COLD = 1.25
const LONG_SOAK_S = 7200

export function soakTooShort({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const heat = stepAt(ground, where?.step, 'heat')
  if (heat === undefined || figures?.holdS === undefined) return []
  // What was seen of a short hold says little of how long the middle takes.
  const throughS = MIDDLE_UP_S_PER_M * ground.layout().thickestM + (figures.soakS ?? 0)
  // What would take hours is no matter of waiting.
  if (figures.holdS > Math.max(LONG_SOAK_S, 2 * throughS)) return []
  const longer = held(heat, ground, (heat.step.part === undefined ? 1.05 : BESIDE_COLD) * Math.max(figures.holdS, throughS))
  // A cold end that begins too near keeps its neighbour down, however long it is held.
  const { part } = heat.step
  const furtherM = part === undefined ? undefined : endHeatedM(ground)
  const drained = part !== undefined && furtherM !== undefined && furtherM > part.toM + 0.004
  if (!drained) return longer
  const [hold] = longer
  const more = moreOfIt(heat, ground, furtherM)
  return hold === undefined
    ? more
    : more.map(({ says, edits }) => ({ says: `${says}, and hold it ${holdText(hold)}`, edits: [...edits, ...hold.edits] }))
}

export function unevenHeat({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const heat = stepAt(ground, where?.step, 'heat')
  if (heat === undefined) return []
  if (figures?.cause !== 'said-so') return slowerFire(heat, ground)
  return [{ says: 'Turn it in the fire, so that it heats evenly', edits: [{ path: [...heat.path, 'even'] }] }]
}

function holdText({ edits }: Remedy): string {
  return String(edits[0]?.value)
}

/** The same step to another heat. */
function toHeat({ step, path }: HeatStep, { units }: RemedyGround, toK: number, way: Way = 'nearest'): Remedy[] {
  const setting = heatSetting(toK, units, way)
  if (Math.abs(setting.si - step.toK) < 1) return []
  return [
    {
      says: `Heat it to ${setting.text} instead of ${before.heat(step.toK, units)}`,
      edits: [writes([...path, 'to'], setting.text)],
    },
  ]
}

/** Nobody stands at a fire for longer [s]. */
const LONGEST_HOLD_S = 4 * 3600

export function held({ step, path }: PlacedStep<StepOf<'heat' | 'normalise'>>, _ground: RemedyGround, holdS: number): Remedy[] {
  if (!(holdS <= LONGEST_HOLD_S)) return []
  const setting = holdSetting(holdS)
  if (setting.si === step.holdS) return []
  return [
    {
      says: `Hold it ${setting.text} at heat instead of ${before.time(step.holdS)}`,
      edits: [writes([...path, 'hold'], setting.text)],
    },
  ]
}

/** Heat into steel at a red, the most first; a torch is for ends. */
const POWER: readonly FireKind[] = ['coal', 'charcoal', 'gas']

function hotterFire({ step, path }: HeatStep, { account: { job } }: RemedyGround): Remedy[] {
  const rank = (kind: FireKind | undefined): number =>
    kind === undefined || !POWER.includes(kind) ? POWER.length : POWER.indexOf(kind)
  const now = rank(job.shop.fires.find(({ name }) => name === step.in)?.kind)
  const better = job.shop.fires.filter(({ kind }) => rank(kind) < now).sort((a, b) => rank(a.kind) - rank(b.kind))
  return better.slice(0, 1).map(({ name }) => inFire(path, step.in, name))
}

/** A muffle, or an oven that goes so hot: nothing runs ahead in it. */
function slowerFire({ step, path }: HeatStep, { account: { job } }: RemedyGround): Remedy[] {
  const names = [
    ...job.shop.fires.filter(({ kind }) => kind === 'muffle'),
    ...job.shop.ovens.filter(({ maxK }) => maxK >= step.toK),
  ].map(({ name }) => name)
  return names.includes(step.in) ? [] : names.slice(0, 1).map((name) => inFire(path, step.in, name))
}

function inFire(path: HeatStep['path'], from: string, to: string): Remedy {
  return { says: `Heat it in the ${to} instead of the ${from}`, edits: [writes([...path, 'in'], to)] }
}

/** Less of the length, where the fire is not up to all of it. */
function lessOfIt({ step, path }: HeatStep, ground: RemedyGround): Remedy[] {
  const toM = endHeatedM(ground)
  if (toM === undefined || toM >= (step.part?.toM ?? ground.account.lengthM) - 0.005) return []
  const { text } = lengthSetting(toM, ground.units)
  return [{ says: `Heat only the first ${text}`, edits: [writes([...path, 'part'], { from: partFrom(ground), to: text })] }]
}

/** More of the length, or all of it where nothing has to stay soft. */
function moreOfIt({ step, path }: HeatStep, ground: RemedyGround, leastM: number): Remedy[] {
  const { units, account } = ground
  const { softFromM } = ground.layout()
  // A hard struck end is no wish to be met.
  if (step.part === undefined || (account.job.struck && leastM > struckFromM(account))) return []
  const further = lengthSetting(Math.max(leastM, endHeatedM(ground) ?? 0), units, 'up')
  const whole: Remedy = { says: 'Heat the whole of it', edits: [{ path: [...path, 'part'] }] }
  if (further.si > account.lengthM - 0.01) return [whole]
  const more: Remedy = {
    says: `Heat it to ${further.text} from the working end instead of ${before.length(step.part.toM, units)}`,
    edits: [writes([...path, 'part', 'to'], further.text)],
  }
  return softFromM === undefined ? [more, whole] : [more]
}

function partFrom({ units }: RemedyGround): string {
  return lengthSetting(0, units).text
}

/** Quicker than this nobody is [s]. */
const QUICKEST_S = 1

/** A little less than what is reckoned. */
const SURELY = 0.9

/** How long the walk may take: what glows loses by the fourth power of its temperature, so the inverse cubes grow evenly with time. */
function shorterWalk(ground: RemedyGround, quenchAt: number | undefined, entryK: number): Remedy[] {
  const { account } = ground
  const quench = stepAt(ground, quenchAt, 'quench')
  const records = account.records
  const entered = records.find((record) => record.kind === 'quench' && record.step === quenchAt)
  const walk = records.findLast((record) => record.kind === 'carry' && record.step < (quenchAt ?? 0))
  const heat = records.findLast((record) => record.kind === 'heat' && record.step < (quenchAt ?? 0))
  if (quench === undefined || walk === undefined || entered?.kind !== 'quench' || heat?.kind !== 'heat') return []
  const tookS = walk.endS - walk.startS
  const grown = (k: number): number => 1 / (k * k * k) - 1 / (heat.coldestK * heat.coldestK * heat.coldestK)
  const mayTakeS = (SURELY * tookS * grown(entryK)) / grown(entered.coldestEntryK)
  if (!(Number.isFinite(mayTakeS) && entered.coldestEntryK < heat.coldestK)) return []
  const setting = walkSetting(mayTakeS)
  if (mayTakeS < QUICKEST_S) return hotterForTheWalk(ground, heat.step, entryK - entered.coldestEntryK)
  if (setting.si >= tookS) return []
  const says = `Have it in the bath ${setting.text} out of the fire instead of ${before.time(tookS)}`
  const placed = stepAt(ground, walk.step, 'carry')
  return placed === undefined
    ? [{ says, edits: [{ path: quench.path, insert: { do: 'carry', for: setting.text } }] }]
    : [{ says, edits: [writes([...placed.path, 'for'], setting.text)] }]
}

/** What falls too far on the quickest walk starts from higher up in its range. */
function hotterForTheWalk(ground: RemedyGround, heatAt: number, lackingK: number): Remedy[] {
  const heat = stepAt(ground, heatAt, 'heat')
  const toK = (heat?.step.toK ?? 0) + 1.5 * lackingK + 5
  return heat === undefined || toK > ground.account.steel.hardening.toK + 3 ? [] : toHeat(heat, ground, toK, 'up')
}

export function heatRecord({ account }: RemedyGround, step: number | undefined): HeatRecord | undefined {
  return account.records.find((record): record is HeatRecord => record.kind === 'heat' && record.step === step)
}
