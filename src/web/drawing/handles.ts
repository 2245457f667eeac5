import type { JobText } from '#web/job/job-text.ts'
import { type Measure, measureKey, metresAt } from '#web/job/measure.ts'
import type { DrawnBody, DrawnSection } from './body.ts'

/** Something to take hold of: what it moves, where it is on the metal, and how its figure follows the hand. */
export interface Handle {
  readonly key: string
  readonly measure: Measure
  /** Whose it is, and which figure of it: `Section 2 of 3, round`, `across at its lower end`. */
  readonly of: string
  readonly says: string
  readonly valueM: number
  /** Height and signed distance from the axis, right of it positive [mm]. */
  readonly xMm: number
  readonly rMm: number
  /** Change of the figure for a move up and to the right, in the same unit. */
  readonly perX: number
  readonly perR: number
  /** How it can be moved. */
  readonly way: 'across' | 'along' | 'both'
}

type Place = Omit<Handle, 'key' | 'of' | 'valueM'>

/** All handles of a piece, from the working end up, then those of its zones. */
export function handlesOf(job: JobText, body: DrawnBody, zoneSideMm: readonly number[]): Handle[] {
  const count = job.profile?.length ?? 0
  const handles: Handle[] = []
  const add = (of: string, places: readonly Place[]): void => {
    for (const place of places) {
      const valueM = metresAt(job, place.measure)
      if (valueM !== undefined) handles.push({ ...place, of, key: measureKey(place.measure), valueM })
    }
  }
  for (const section of body.sections) {
    if (!section.sound) continue
    const of = `Section ${section.index + 1} of ${count}, ${section.shape}`
    add(of, [
      ...acrossPlaces(job, section, count),
      ...filletPlaces(job, body, section),
      ...hollowPlaces(job, section, count),
      lengthPlace(section, count),
    ])
  }
  for (const [i, zone] of (job.zones ?? []).entries()) {
    const rMm = zoneSideMm[i] ?? 0
    add(`Zone ${zone.name ?? i + 1}`, zonePlaces(job, i, rMm))
  }
  return handles
}

function acrossPlaces(job: JobText, { index, fromMm, lengthMm, acrossMm, widthMm }: DrawnSection, count: number): Place[] {
  const even = job.profile?.[index]?.across !== undefined
  const ends = [
    ['from', index === 0 ? 'at the working end' : 'at its lower end', 0.12] as const,
    ...(even ? [['both', 'all along', 0.5] as const] : []),
    ['to', index === count - 1 ? 'at the other end' : 'at its upper end', 0.88] as const,
  ]
  const at = (sizes: readonly [number, number], share: number): number => (sizes[0] + share * (sizes[1] - sizes[0])) / 2
  const common = { perX: 0, way: 'across' } as const
  return ends.flatMap(([end, where, share]) => [
    {
      ...common,
      measure: { of: 'across', section: index, end },
      says: `${widthMm === undefined ? 'across' : 'thickness'} ${where}`,
      xMm: fromMm + share * lengthMm,
      rMm: at(acrossMm, share),
      perR: 2,
    } satisfies Place,
    ...(widthMm === undefined
      ? []
      : [
          {
            ...common,
            measure: { of: 'width', section: index, end },
            says: `width ${where}`,
            xMm: fromMm + share * lengthMm,
            rMm: -at(widthMm, share),
            perR: -2,
          } satisfies Place,
        ]),
  ])
}

function lengthPlace({ index, fromMm, lengthMm }: DrawnSection, count: number): Place {
  return {
    measure: { of: 'length', section: index },
    says: index === count - 1 ? 'length, to the other end' : 'length, to its upper joint',
    xMm: fromMm + lengthMm,
    rMm: 0,
    perX: 1,
    perR: 0,
    way: 'along',
  }
}

/** A fillet is held where it runs out on the thinner of the two sections; where nothing stands out there is none. */
function filletPlaces(job: JobText, body: DrawnBody, { index, fromMm, acrossMm }: DrawnSection): Place[] {
  const below = body.sections.find((each) => each.index === index - 1)?.acrossMm[1]
  if (below === undefined || below === acrossMm[0]) return []
  const reduced = body.outline?.reducedFillets.find(({ joint }) => joint === index - 1)
  const radiusMm = (reduced?.usedM ?? metresAt(job, { of: 'fillet', section: index }) ?? 0) * 1000
  const up = acrossMm[0] > below ? -1 : 1
  return [
    {
      measure: { of: 'fillet', section: index },
      says: 'fillet to the section below',
      xMm: fromMm + up * radiusMm,
      rMm: Math.min(below, acrossMm[0]) / 2,
      perX: up,
      perR: 0,
      way: 'along',
    },
  ]
}

/** What is in an end face: its rim in the face, its depth on the axis. */
function hollowPlaces(job: JobText, { index, fromMm, lengthMm, acrossMm }: DrawnSection, count: number): Place[] {
  if (index !== 0 && index !== count - 1) return []
  const front = index === 0
  const faceMm = front ? fromMm : fromMm + lengthMm
  const inward = front ? 1 : -1
  const mm = (measure: Measure): number => (metresAt(job, measure) ?? 0) * 1000
  const places: Place[] = []
  for (const hollow of ['dish', 'bore'] as const) {
    const across: Measure = { of: `${hollow}-across`, section: index }
    const depth: Measure = { of: `${hollow}-depth`, section: index }
    const deepMm = mm(depth)
    places.push(
      {
        measure: across,
        says: `${hollow}, across`,
        xMm: hollow === 'dish' ? faceMm : faceMm + inward * deepMm * 0.6,
        rMm: mm(across) / 2,
        perX: 0,
        perR: 2,
        way: 'across',
      },
      {
        measure: depth,
        says: `${hollow}, depth`,
        xMm: faceMm + inward * deepMm,
        rMm: hollow === 'dish' ? 0 : mm(across) / 4,
        perX: inward,
        perR: 0,
        way: 'along',
      },
    )
  }
  const radiusMm = mm({ of: 'tip', section: index })
  const endMm = acrossMm[front ? 0 : 1] / 2
  places.push({
    measure: { of: 'tip', section: index },
    says: 'rounding of the end, radius',
    xMm: faceMm + inward * Math.min(radiusMm, lengthMm),
    rMm: Math.max(endMm - radiusMm * 0.3, 0),
    perX: inward,
    perR: 0,
    way: 'along',
  })
  return places
}

function zonePlaces(job: JobText, zone: number, rMm: number): Place[] {
  return (['zone-from', 'zone-to'] as const).map((of) => ({
    measure: { of, zone },
    says: of === 'zone-from' ? 'lower end' : 'upper end',
    xMm: (metresAt(job, { of, zone }) ?? 0) * 1000,
    rMm,
    perX: 1,
    perR: 0,
    way: 'along',
  }))
}

/** How near to a handle a finger must come to take it [px]: a target of 44 px. */
export const REACH_PX = 24

/** The handle that a pointer means: the nearest within reach; what is selected already is met more easily. */
export function handleAt(
  handles: readonly { readonly xPx: number; readonly yPx: number; readonly favoured: boolean }[],
  xPx: number,
  yPx: number,
): number | undefined {
  let best: number | undefined
  let nearest = Number.POSITIVE_INFINITY
  for (const [i, handle] of handles.entries()) {
    const away = Math.hypot(handle.xPx - xPx, handle.yPx - yPx)
    const felt = handle.favoured ? away - 8 : away
    if (away > REACH_PX * Math.SQRT2 || felt >= nearest) continue
    nearest = felt
    best = i
  }
  return best
}
