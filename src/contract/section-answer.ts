import { exp } from '#engine/arithmetic/elementary.ts'
import type { SectionOutlook, SectionPlaceOutlook } from '#engine/ensemble/cross-sections.ts'
import type { SectionShape } from '#engine/geometry/profile.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Forecast } from './answers.ts'

type CrossSectionAnswer = NonNullable<Forecast['crossSections']>[number]

/** True cross-sections in the units of the contract, each with how far its equivalent round is off. */
export function crossSectionAnswers(sections: readonly SectionOutlook[]): CrossSectionAnswer[] {
  return sections.map(({ name, shape, xM, size, roundM, places, judged }) => ({
    name,
    shape,
    x_mm: rounded(xM * 1000, 1),
    across_mm: rounded(size.acrossM * 1000, 2),
    ...(size.widthM === undefined ? {} : { width_mm: rounded(size.widthM * 1000, 2) }),
    centre: placeAnswer(places.centre),
    face: placeAnswer(places.face),
    corner: placeAnswer(places.corner),
    equivalentRound: {
      across_mm: rounded(roundM * 1000, 2),
      centre: offAnswer(places.centre),
      face: offAnswer(places.face),
      corner: offAnswer(places.corner),
    },
    judged,
  }))
}

function placeAnswer({
  peakK,
  soakS,
  cooling800To500S,
  quenchedHrc,
  temperedHrc,
}: SectionPlaceOutlook): CrossSectionAnswer['face'] {
  return {
    peak_C: rounded(peakK - 273.15, 1),
    soak_s: rounded(soakS, 0),
    cooling_800_500_s: Number.isFinite(cooling800To500S) ? rounded(cooling800To500S, 2) : null,
    quenched_HRC: rounded(quenchedHrc, 1),
    tempered_HRC: rounded(temperedHrc, 1),
  }
}

function offAnswer(place: SectionPlaceOutlook): CrossSectionAnswer['equivalentRound']['face'] {
  return {
    cooling_pct: rounded(100 * (exp(place.roundLnCooling) - 1), 0),
    quenched_HRC: rounded(place.roundQuenchedHrc, 1),
    tempered_HRC: rounded(place.roundTemperedHrc, 1),
  }
}

/** Sections that are not round and were worked as the round that cools alike, for want of a place where the true section was solved. */
export function sectionAssumptions(job: Job, solved: readonly SectionOutlook[]): { says: string; because: string }[] {
  const left = job.profile.sections.flatMap(({ shape }, index): SectionShape[] =>
    shape === 'round' || solved.some(({ section }) => section === index) ? [] : [shape],
  )
  if (left.length === 0) return []
  return [
    {
      says: `Worked as the equivalent round: ${[...new Set(left)].join(', ')}.`,
      because:
        'equal cooling at the middle of long bars; true corners and edges cool faster. They are looked into where a zone or a place lies on a long length that is quenched, and never in a sketch',
    },
  ]
}

function rounded(value: number, digits: number): number {
  const scale = 10 ** digits
  // No "-0" in an answer.
  return Math.round(value * scale) / scale + 0
}
