import type { Said } from './source-order.ts'

/** How long a source wants the steel held at hardening heat, once it is through at heat. */
export interface Soak extends Said {
  /** [s]; 0 and 0 when only a time by thickness is given. */
  readonly fromS: number
  readonly toS: number
  /** Added for thickness [s/m]; 0 when the source gives none. */
  readonly perMetreS: number
  /** Never less than this [s]. */
  readonly leastS: number
}

const INCH_M = 0.0254
const MINUTE_S = 60
const HOUR_S = 3600

/** For steels of which no sheet speaks. */
export const USUAL_SOAK: Soak = {
  fromS: 2 * MINUTE_S,
  toS: 5 * MINUTE_S,
  perMetreS: 0,
  leastS: 0,
  basis: 'memory',
  source: 'common practice, no source',
  provenance: 'memory',
  confidence: 'medium',
  says: 'plain and low-alloy steel that has been normalised; annealed stock needs 10 min or more',
}

/** "10-30 min", "30 min per inch, 1 h minimum", "20-25 min plus 5 min per inch" as figures; `undefined` when no time is named. */
export function soakFrom(text: string, said: Said): Soak | undefined {
  const perInch = /(?:(\d+) min|(\d+) h|half an hour) per (?:extra )?inch/.exec(text)
  const range = /(\d+)-(\d+) min/.exec(text) ?? /()(\d+) min soak/.exec(text)
  const least = /(\d+) h minimum/.exec(text)
  if (perInch === null && range === null) return undefined
  const inchS =
    perInch === null ? 0 : perInch[1] ? Number(perInch[1]) * MINUTE_S : perInch[2] ? Number(perInch[2]) * HOUR_S : HOUR_S / 2
  const to = range === null ? 0 : Number(range[2])
  return {
    ...said,
    fromS: (range === null ? 0 : Number(range[1] || to)) * MINUTE_S,
    toS: to * MINUTE_S,
    perMetreS: inchS / INCH_M,
    leastS: least === null ? 0 : Number(least[1]) * HOUR_S,
  }
}

/** Time to hold a piece of that thickness [m, s]: the middle of the range, the time by thickness on top. */
export function soakTimeS({ fromS, toS, perMetreS, leastS }: Soak, thicknessM: number): number {
  return Math.max(leastS, (fromS + toS) / 2 + perMetreS * thicknessM)
}
