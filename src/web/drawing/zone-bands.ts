import type { Forecast } from '#contract/answers.ts'
import type { JobText } from '#web/job/job-text.ts'
import { metres } from '#web/job/profile-reading.ts'
import type { DrawnBody } from './body.ts'
import type { Heights } from './heights.ts'

/** A zone beside the piece: from where to where, in which lane (0 is nearest to the metal), and what is wished of it. */
export interface ZoneBand {
  /** Its place in the document; absent where Quenchwright put it there. */
  readonly index?: number
  readonly name: string
  readonly aim: string
  readonly fromMm: number
  readonly toMm: number
  readonly lane: number
}

/** Zones of a document, and those that the forecast assumed; zones that lie over each other stand side by side. */
export function zoneBandsOf(job: JobText, lengthMm: number, forecast?: Forecast): ZoneBand[] {
  const typed = (job.zones ?? []).flatMap(({ name, from, to, aim }, index) => {
    const [fromM, toM] = [metres(from), metres(to)]
    if (fromM === undefined || toM === undefined || !(toM > fromM)) return []
    return [{ index, name: name ?? `zone ${index + 1}`, aim, fromMm: fromM * 1000, toMm: Math.min(lengthMm, toM * 1000) }]
  })
  const assumed = job.struck === false ? [] : (forecast?.zones ?? []).filter((zone) => zone.assumed)
  const added = assumed
    .filter(({ name }) => typed.every((zone) => zone.name !== name))
    .map(({ name, aim, from_mm, to_mm }) => {
      // It keeps to the other end while the piece is being drawn longer or shorter.
      const by = lengthMm - (forecast?.length_mm ?? lengthMm)
      return { name, aim, fromMm: Math.max(0, from_mm + by), toMm: Math.min(lengthMm, to_mm + by) }
    })
  const bands: ZoneBand[] = []
  for (const zone of [...typed, ...added].filter(({ fromMm, toMm }) => toMm > fromMm)) {
    const taken = new Set(bands.filter((each) => each.fromMm < zone.toMm && each.toMm > zone.fromMm).map(({ lane }) => lane))
    let lane = 0
    while (taken.has(lane)) lane += 1
    bands.push({ ...zone, lane })
  }
  return bands
}

const BAND_PX = 9
const LANE_PX = 13
/** From the metal to the first band [px]. */
const OFF_PX = 14

/** Where a band stands across [px]: to the left of the widest of the piece, so that all bands of a lane are in line. */
export function zoneBandPx(
  { lane }: Pick<ZoneBand, 'lane'>,
  body: DrawnBody,
  heights: Heights,
  axisPx: number,
): { leftPx: number; widthPx: number } {
  const metalPx = axisPx - body.halfWidthMm * heights.pxPerMm
  return { leftPx: Math.max(1, metalPx - OFF_PX - BAND_PX - lane * LANE_PX), widthPx: BAND_PX }
}
