import { equivalentRoundM } from '#engine/geometry/equivalent-round.ts'
import type { Section, SectionShape, SectionSize } from '#engine/geometry/profile.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { HeatRecord, QuenchRecord } from '#engine/simulation/records.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'

/** A height at which the true cross-section is solved. */
export interface SectionStation {
  /** Index in the profile's sections. */
  readonly section: number
  /** The zone or the probe for whose sake it is. */
  readonly name: string
  readonly xM: number
  readonly shape: SectionShape
  readonly size: SectionSize
  /** Diameter of the equivalent round there [m]. */
  readonly roundM: number
}

/** A length of the piece for which the stations on one profile section speak [m]. */
export interface Reach {
  readonly section: number
  readonly fromM: number
  readonly toM: number
}

/** What is solved, and what was left as its equivalent round because the solve would not hold there. */
export interface Stations {
  readonly at: readonly SectionStation[]
  readonly reaches: readonly Reach[]
}

/** A bar this many times as long as thick is a long bar. */
const LONG = 2
/** Nearer than this share of the thickness to a waterline heat flows along the bar. */
const OFF_WATERLINE = 0.5
/** Ratio of thickness over which a taper needs stations at both ends, and one between. */
const TAPERS = 1.1
const TAPERS_MUCH = 1.8
const MOST = 6

/**
 * Heights at which corners may matter: zones and probes on sections that are not round, where the piece was hardened. Left out are lengths
 * shorter than twice their thickness, what stood out of the bath or within half a thickness of its line, and hollow ends.
 */
export function sectionStations(job: Job, { body, records }: Pick<Treatment, 'body' | 'records'>): Stations {
  const quench = records.findLast((record): record is QuenchRecord => record.kind === 'quench')
  if (quench === undefined) return { at: [], reaches: [] }
  const heat = records.findLast((record): record is HeatRecord => record.kind === 'heat')
  const heatedFromM = heat?.part?.fromM ?? 0
  const heatedToM = heat?.part?.toM ?? body.lengthM
  const wanted = [
    ...job.zones
      .filter(({ aim }) => aim.lowHrc !== undefined)
      .concat(job.zones.filter(({ aim }) => aim.lowHrc === undefined))
      .map(({ name, fromM, toM }) => ({ name, fromM, toM })),
    ...job.probes.map(({ name, xM }) => ({ name, fromM: xM, toM: xM })),
  ]
  const at: SectionStation[] = []
  const reaches: Reach[] = []
  let startM = 0
  const starts = job.profile.sections.map(({ lengthM }) => {
    const here = startM
    startM += lengthM
    return here
  })
  for (const { name, fromM, toM } of wanted) {
    job.profile.sections.forEach((section, index) => {
      if (section.shape === 'round') return
      const begins = starts[index]!
      const thickest = Math.max(section.from.acrossM, section.to.acrossM)
      const stoodOutM = quench.depthM === null ? body.lengthM : quench.depthM - OFF_WATERLINE * thickest
      const ends = begins + section.lengthM - (index > 0 && index === starts.length - 1 ? hollowM(section) : 0)
      const lowM = Math.max(fromM, begins + (index === 0 ? hollowM(section) : 0), heatedFromM)
      const highM = Math.min(toM, ends, stoodOutM, heatedToM)
      if (highM < lowM || (highM === lowM && fromM !== toM)) return
      if (barLengthM(job.profile.sections, index) < LONG * sizeAt(section, (lowM + highM) / 2 - begins).acrossM) return
      reaches.push({ section: index, fromM: lowM, toM: highM })
      for (const xM of heights(section, begins, lowM, highM)) {
        const near = at.some(
          (other) => other.section === index && (!tapers(section) || Math.abs(other.xM - xM) < 0.05 * section.lengthM),
        )
        if (near || at.length === MOST) continue
        const size = sizeAt(section, xM - begins)
        at.push({ section: index, name, xM, shape: section.shape, size, roundM: equivalentRoundM(section.shape, size) })
      }
    })
  }
  return { at, reaches }
}

function heights(section: Section, begins: number, lowM: number, highM: number): number[] {
  const middle = (lowM + highM) / 2
  const a = sizeAt(section, lowM - begins).acrossM
  const b = sizeAt(section, highM - begins).acrossM
  if (Math.max(a, b) < TAPERS * Math.min(a, b)) return [middle]
  // The very edge of a wedge has no thickness of its own.
  const inset = Math.min(0.04 * (highM - lowM), 0.0005)
  const ends = [lowM + inset, highM - inset]
  return Math.max(a, b) < TAPERS_MUCH * Math.min(a, b) ? ends : [ends[0]!, middle, ends[1]!]
}

function tapers({ from, to }: Section): boolean {
  const ratio = (a = 1, b = 1): boolean => Math.max(a, b) >= TAPERS * Math.min(a, b)
  return ratio(from.acrossM, to.acrossM) || ratio(from.widthM, to.widthM)
}

/** The true size at a height over the start of its section; both measures run in straight lines. */
export function sizeAt({ from, to, lengthM }: Section, upM: number): SectionSize {
  const share = Math.min(1, Math.max(0, upM / lengthM))
  const between = (a: number, b: number): number => a + share * (b - a)
  const acrossM = between(from.acrossM, to.acrossM)
  if (from.widthM === undefined || to.widthM === undefined) return { acrossM }
  return { acrossM, widthM: between(from.widthM, to.widthM) }
}

/** How long the bar is of which a section is part: with its neighbours of nearly the same equivalent round. */
function barLengthM(sections: readonly Section[], index: number): number {
  let lengthM = sections[index]!.lengthM
  const joins = (a: Section, b: Section): boolean => {
    const d = equivalentRoundM(a.shape, a.to)
    const e = equivalentRoundM(b.shape, b.from)
    return Math.max(d, e) < TAPERS * Math.min(d, e)
  }
  for (let i = index; i + 1 < sections.length && joins(sections[i]!, sections[i + 1]!); i++) lengthM += sections[i + 1]!.lengthM
  for (let i = index; i > 0 && joins(sections[i - 1]!, sections[i]!); i--) lengthM += sections[i - 1]!.lengthM
  return lengthM
}

/** How far a hollow or a rounded tip reaches into a section from the end that it is in [m]. */
function hollowM({ dish, bore, tip }: Section): number {
  return Math.max(dish?.depthM ?? 0, bore?.depthM ?? 0, tip?.radiusM ?? 0)
}
