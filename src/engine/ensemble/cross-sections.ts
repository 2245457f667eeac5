import { exp, ln } from '#engine/arithmetic/elementary.ts'
import { radiusAt } from '#engine/geometry/outline.ts'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import { sectionThrough } from '#engine/simulation/section-run.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import { historyAt, SLOWEST_LN_S, type SpotHistory } from './history.ts'
import { type SectionStation, type Stations, sectionStations } from './section-stations.ts'
import { type SpotHardness, SteelBehaviour, spotHardness } from './spot-hardness.ts'
import { NOMINAL_OFFSETS } from './unknowns.ts'

const PLACES = ['centre', 'face', 'corner'] as const
/** The middle of the section, the middle of its (broad) face, its corner. */
export type SectionPlace = (typeof PLACES)[number]

/** One place of a true section, best estimate, beside its equivalent round: the middle beside the axis, face and corner beside the skin. */
export interface SectionPlaceOutlook {
  readonly peakK: number
  readonly soakS: number
  /** Infinity where it was never passed. */
  readonly cooling800To500S: number
  readonly quenchedHrc: number
  readonly temperedHrc: number
  /** Logarithm of the round's cooling time over that of the place; the round's hardness less that of the place. */
  readonly roundLnCooling: number
  readonly roundQuenchedHrc: number
  readonly roundTemperedHrc: number
}

export interface SectionOutlook extends SectionStation {
  readonly places: { readonly [Place in SectionPlace]: SectionPlaceOutlook }
  /** The zones on this section are judged by its corner and its face as well as by the skin of the round. */
  readonly judged: boolean
}

/** The cross-sections of a piece, with what its zones need of them. */
export interface CrossSections {
  readonly solved: readonly SectionOutlook[]
  /** Logarithms of cooling times of face and corner over that of the round's skin at a height; none where they are not judged. */
  readonly edgesAt: (xM: number) => readonly number[]
}

export const NO_SECTIONS: CrossSections = { solved: [], edgesAt: () => [] }

/** Corners and faces are judged where they differ from the round by more than this. */
const TELLS_HRC = 1
const TELLS_LN = 1.5

/** Logarithm of the cooling time of each place over that of the round's. */
type Shifts = { readonly [Place in SectionPlace]: number }

/**
 * Solves the true cross-section wherever corners may matter, and the long equivalent round beside it through the same stages. What differs
 * between the two is laid on what the body of revolution went through there, so that heat along the axis is not lost.
 */
export function crossSections(job: Job, treatment: Treatment): CrossSections {
  const stations = sectionStations(job, treatment)
  if (stations.at.length === 0) return NO_SECTIONS
  const { body } = treatment
  const history = historyAt(
    treatment,
    stations.at.flatMap(({ xM }) => [
      { xM, rM: 0 },
      { xM, rM: radiusAt(body.outline, xM) },
    ]),
  )
  const steel = new SteelBehaviour(job.steel, job.steel.composition, heatedFrom(job))
  const found = stations.at.flatMap((station, k) => {
    const shifts = shiftsAt(station, treatment)
    if (shifts === undefined) return []
    const at = (place: SectionPlace): SectionPlaceOutlook =>
      placeOutlook(steel, history, 2 * k + (place === 'centre' ? 0 : 1), shifts[place])
    const places = { centre: at('centre'), face: at('face'), corner: at('corner') }
    return [{ shifts, outlook: { ...station, places, judged: PLACES.some((place) => tells(places[place])) } }]
  })
  const edges = found.map(({ shifts, outlook }) => ({ ...outlook, shifts }))
  return { solved: found.map(({ outlook }) => outlook), edgesAt: (xM) => edgesAt(xM, stations, edges) }
}

function shiftsAt({ shape, size, xM, roundM }: SectionStation, { body, hardening }: Treatment): Shifts | undefined {
  const section = sectionThrough(shape, size, xM, body, hardening)
  const round = sectionThrough('round', { acrossM: roundM }, xM, body, hardening)
  if (section === undefined || round === undefined) return undefined
  const over = (placeS: number, roundS: number): number =>
    Number.isFinite(placeS) && Number.isFinite(roundS) ? ln(placeS / roundS) : 0
  return {
    centre: over(section.centreS, round.centreS),
    face: over(section.faceS, round.faceS),
    corner: over(section.cornerS, round.faceS),
  }
}

function placeOutlook(steel: SteelBehaviour, round: SpotHistory, spot: number, lnCooling: number): SectionPlaceOutlook {
  const place = shifted(round, [{ spot, lnCooling }])
  const ofRound = spotHardness(steel, round, undefined, NOMINAL_OFFSETS, spot)
  const { quenchedHrc, temperedHrc }: SpotHardness = spotHardness(steel, place, undefined, NOMINAL_OFFSETS, spot)
  const lnS = place.lnCoolingS[spot]!
  return {
    peakK: place.peakK[spot]!,
    soakS: place.soakS[spot]!,
    cooling800To500S: lnS >= SLOWEST_LN_S - 1e-6 ? Number.POSITIVE_INFINITY : exp(lnS),
    quenchedHrc,
    temperedHrc,
    roundLnCooling: -lnCooling,
    roundQuenchedHrc: ofRound.quenchedHrc - quenchedHrc,
    roundTemperedHrc: ofRound.temperedHrc - temperedHrc,
  }
}

function tells({ roundLnCooling, roundQuenchedHrc, roundTemperedHrc }: SectionPlaceOutlook): boolean {
  return Math.max(Math.abs(roundQuenchedHrc), Math.abs(roundTemperedHrc)) > TELLS_HRC || Math.abs(roundLnCooling) > TELLS_LN
}

/** Between the stations of a section in proportion of height. */
function edgesAt(
  xM: number,
  { reaches }: Stations,
  edges: readonly (SectionOutlook & { readonly shifts: Shifts })[],
): readonly number[] {
  const reach = reaches.find(({ fromM, toM }) => xM >= fromM - 1e-9 && xM <= toM + 1e-9)
  const here = edges.filter(({ section }) => section === reach?.section).sort((a, b) => a.xM - b.xM)
  if (!here.some(({ judged }) => judged)) return []
  const after = here.findIndex((edge) => edge.xM > xM)
  const high = here[after < 0 ? here.length - 1 : after]!
  const low = here[after < 0 ? here.length - 1 : Math.max(0, after - 1)]!
  const share = high.xM > low.xM ? Math.max(0, (xM - low.xM) / (high.xM - low.xM)) : 0
  return (['face', 'corner'] as const).map((place) => low.shifts[place] + share * (high.shifts[place] - low.shifts[place]))
}

/** Histories with the cooling of some spots made longer or shorter throughout: every second of it counts as exp(lnCooling). */
export function shifted(
  history: SpotHistory,
  moved: readonly { readonly spot: number; readonly lnCooling: number }[],
): SpotHistory {
  if (moved.length === 0) return history
  const lnCoolingS = history.lnCoolingS.slice()
  const dwellS = history.dwellS.slice()
  const spots = lnCoolingS.length
  for (const { spot, lnCooling } of moved) {
    if (lnCoolingS[spot]! >= SLOWEST_LN_S - 1e-6) continue
    lnCoolingS[spot] = lnCoolingS[spot]! + lnCooling
    const factor = exp(lnCooling)
    for (let at = spot; at < dwellS.length; at += spots) dwellS[at] = dwellS[at]! * factor
  }
  return { ...history, lnCoolingS, dwellS }
}
