import type { Finding, Forecast } from '#contract/answers.ts'
import { chanceSays } from '#web/forecast/aims.ts'

/** What became of one zone. A zone that only one of the two knows has no figure on the other side. */
export interface ZoneChange {
  readonly name: string
  readonly aim: string
  readonly before?: ZoneFigures
  readonly after?: ZoneFigures
}

interface ZoneFigures {
  readonly chance: number
  readonly hrc: number
}

/** Two forecasts of one piece side by side. */
export interface ForecastDiff {
  readonly zones: readonly ZoneChange[]
  readonly gained: readonly Finding[]
  readonly lost: readonly Finding[]
  /** From the first fire to the last cooling [s]. */
  readonly timeS: readonly [before: number, after: number]
}

/** What a change does: zone by zone, which findings come and which go, how long it all takes. */
export function forecastDiff(before: Forecast, after: Forecast): ForecastDiff {
  const names = [...new Set([...after.zones, ...before.zones].map(({ name }) => name))]
  const { gained, lost } = findingsDiff(before, after)
  return {
    zones: names.map((name): ZoneChange => {
      const [was, is] = [before, after].map(({ zones }) => zones.find((zone) => zone.name === name))
      return {
        name,
        aim: (is ?? was)?.aim ?? '',
        ...(was === undefined ? {} : { before: figuresOf(was) }),
        ...(is === undefined ? {} : { after: figuresOf(is) }),
      }
    }),
    gained,
    lost,
    timeS: [lengthS(before), lengthS(after)],
  }
}

/** Two answers agree on a chance to about this much; less is no change worth telling. */
const NOISE = 0.03

/** `better`, `worse` or `same`; undefined where one side has no figure. */
export function turnOf({ before, after }: ZoneChange): 'better' | 'worse' | 'same' | undefined {
  if (before === undefined || after === undefined) return undefined
  const step = after.chance - before.chance
  return Math.abs(step) < NOISE ? 'same' : step > 0 ? 'better' : 'worse'
}

/** True when nothing in it is worth telling. */
export function isQuiet({ zones, gained, lost }: ForecastDiff): boolean {
  return gained.length === 0 && lost.length === 0 && zones.every((zone) => turnOf(zone) === 'same')
}

/** Whether a finding of one forecast is still raised in another one. */
export function stillThere(finding: Finding, of: Forecast, after: Forecast): boolean {
  const { lost } = findingsDiff(of, after)
  return !lost.includes(finding)
}

/**
 * A finding is the same one when it speaks of the same fault at the same zone and the same sort of step: its figures, its place and the
 * number of its step move with every change.
 */
function findingsDiff(before: Forecast, after: Forecast): { gained: Finding[]; lost: Finding[] } {
  const left = new Map<string, number>()
  for (const finding of before.findings) left.set(keyOf(finding, before), (left.get(keyOf(finding, before)) ?? 0) + 1)
  const gained: Finding[] = []
  const kept = new Map<string, number>()
  for (const finding of after.findings) {
    const key = keyOf(finding, after)
    const count = left.get(key) ?? 0
    if (count === 0) gained.push(finding)
    else {
      left.set(key, count - 1)
      kept.set(key, (kept.get(key) ?? 0) + 1)
    }
  }
  const lost = before.findings.filter((finding) => {
    const key = keyOf(finding, before)
    const count = kept.get(key) ?? 0
    if (count > 0) kept.set(key, count - 1)
    return count === 0
  })
  return { gained, lost }
}

function keyOf({ id, where }: Finding, { steps }: Forecast): string {
  return `${id} ${where?.zone ?? ''} ${where?.step === undefined ? '' : (steps[where.step]?.do ?? '')}`
}

function figuresOf({ chance, tempered_HRC }: Forecast['zones'][number]): ZoneFigures {
  return { chance, hrc: tempered_HRC.value }
}

function lengthS({ steps }: Forecast): number {
  return steps.at(-1)?.end_s ?? 0
}

/** A zone's change in words: `48 in 100 before, now 81 in 100`. */
export function chanceTurn(zone: ZoneChange): string {
  const [was, is] = [zone.before, zone.after].map((figures) => (figures === undefined ? undefined : chanceSays(figures.chance)))
  if (is === undefined) return 'not asked for any more'
  if (was === undefined) return `${is}, not asked for before`
  return turnOf(zone) === 'same' ? `${is}, as before` : `${was} before, now ${is}`
}
