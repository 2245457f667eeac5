import type { Outlook, SpotOutlook, ZoneOutlook } from '#engine/ensemble/outlook.ts'
import type { Job } from '#engine/simulation/job.ts'
import type {
  CarryRecord,
  ColoursRecord,
  HeatRecord,
  QuenchRecord,
  StepRecord,
  TemperRecord,
} from '#engine/simulation/records.ts'
import type { Bath, BathKind } from '#engine/surface-heat/gear.ts'
import type { SteelFacts } from './steel-facts.ts'

/** All that the rules judge by: what was asked, what each step did, what came of it, and what is known of the steel. */
export interface Account {
  readonly job: Job
  readonly records: readonly StepRecord[]
  readonly outlook: Outlook
  readonly lengthM: number
  readonly steel: SteelFacts
}

/** One heat with the walk and the quench that followed it. */
export interface Hardening {
  readonly heat: HeatRecord
  readonly carry?: CarryRecord
  readonly quench: QuenchRecord
}

/** An aim with a lower bound from here on asks for hardened steel [HRC]; the simulation draws the same line. */
export const HARD_AIM_HRC = 30

/** Heats that ended in a quench, in order; the outlook speaks of the last one. */
export function hardenings({ records }: Pick<Account, 'records'>): Hardening[] {
  const found: Hardening[] = []
  let heat: HeatRecord | undefined
  let carry: CarryRecord | undefined
  for (const record of records) {
    if (record.kind === 'heat') {
      heat = record
      carry = undefined
    } else if (record.kind === 'carry') carry = record
    else if (record.kind === 'quench' && heat !== undefined) {
      found.push({ heat, ...(carry === undefined ? {} : { carry }), quench: record })
      heat = undefined
      carry = undefined
    }
  }
  return found
}

export function lastHardening(account: Pick<Account, 'records'>): Hardening | undefined {
  const all = hardenings(account)
  return all[all.length - 1]
}

/** Tempers and colour runs since the last quench. */
export function drawings({ records }: Pick<Account, 'records'>): {
  readonly tempers: TemperRecord[]
  readonly colours: ColoursRecord[]
} {
  let from = -1
  records.forEach((record, index) => {
    if (record.kind === 'quench') from = index
  })
  const since = from < 0 ? [] : records.slice(from + 1)
  return {
    tempers: since.filter((record) => record.kind === 'temper'),
    colours: since.filter((record) => record.kind === 'run-colours'),
  }
}

/** Zones that have to come out hard. */
export function hardZones({ outlook }: Pick<Account, 'outlook'>): ZoneOutlook[] {
  return outlook.zones.filter(({ zone }) => (zone.aim.lowHrc ?? 0) >= HARD_AIM_HRC)
}

/** The skin at each height of a zone. */
export function skinOf({ spots }: Pick<ZoneOutlook, 'spots'>): SpotOutlook[] {
  const outermost = new Map<number, SpotOutlook>()
  for (const each of spots) {
    const known = outermost.get(each.spot.xM)
    if (known === undefined || each.spot.rM > known.spot.rM) outermost.set(each.spot.xM, each)
  }
  return [...outermost.values()]
}

/** The skin of the walk along the piece that lies nearest to a height. */
export function skinAt({ outlook }: Pick<Account, 'outlook'>, xM: number): SpotOutlook | undefined {
  let best: SpotOutlook | undefined
  let bestM = Number.POSITIVE_INFINITY
  for (const { xM: atM, skin } of outlook.along) {
    if (Math.abs(atM - xM) >= bestM) continue
    bestM = Math.abs(atM - xM)
    best = skin
  }
  return best
}

/** Whether the steel at a height came out of the quench hard enough to crack rather than bend. */
export function hardensAt(account: Pick<Account, 'outlook'>, xM: number): boolean {
  const skin = skinAt(account, xM)
  return skin !== undefined && skin.quenchedHrc.value >= BRITTLE_HRC && skin.martensiteFraction >= 0.5
}

/** Below this a quenched skin yields before it cracks, and needs no temper to be safe [HRC]: common practice, no source. */
export const BRITTLE_HRC = 45

export function isOil({ kind }: Pick<Bath, 'kind'>): boolean {
  return OILS.has(kind)
}

export function isWater({ kind }: Pick<Bath, 'kind'>): boolean {
  return kind === 'water' || kind === 'brine'
}

const OILS: ReadonlySet<BathKind> = new Set(['fast oil', 'medium oil', 'slow oil', 'vegetable oil'])
