import type { Forecast } from '#contract/answers.ts'
import { parseHardnessRange } from '#units/hardness.ts'

/** A zone with its aim on the C scale; an open side is absent. */
export interface AimedZone {
  readonly name: string
  readonly fromMm: number
  readonly toMm: number
  readonly aim: string
  readonly lowHrc?: number
  readonly highHrc?: number
  readonly chance: number
  readonly temperedHrc: Forecast['zones'][number]['tempered_HRC']
}

/** The zones of an answer, with the aims that are on the C scale as figures; the others keep their words. */
export function aimedZones({ zones }: Pick<Forecast, 'zones'>): AimedZone[] {
  return zones.map(({ name, from_mm, to_mm, aim, chance, tempered_HRC }) => {
    const read = parseHardnessRange(aim)
    const range = read.ok && read.value.scale === 'HRC' ? read.value : undefined
    return {
      name,
      fromMm: from_mm,
      toMm: to_mm,
      aim,
      ...(range?.low === undefined ? {} : { lowHrc: range.low }),
      ...(range?.high === undefined ? {} : { highHrc: range.high }),
      chance,
      temperedHrc: tempered_HRC,
    }
  })
}

/** From this chance on an aim counts as met; the band holds nine in ten. */
const LIKELY = 0.9
const UNLIKELY = 0.5

/** How an aim stands, by its chance. */
export type AimState = 'met' | 'doubtful' | 'missed'

export function aimState(chance: number): AimState {
  return chance >= LIKELY ? 'met' : chance >= UNLIKELY ? 'doubtful' : 'missed'
}

/** A chance as one would say it: `62 in 100`. */
export function chanceSays(chance: number): string {
  const inHundred = Math.round(chance * 100)
  if (inHundred >= 100) return chance >= 0.9995 ? 'as good as sure' : 'over 99 in 100'
  return inHundred < 1 ? 'under 1 in 100' : `${inHundred} in 100`
}
