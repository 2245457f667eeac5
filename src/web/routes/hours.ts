import type { Forecast } from '#contract/answers.ts'
import type { ShopText, StepText } from '#web/job/job-text.ts'

/** How long a treatment keeps whom and what busy [s]. */
export interface Hours {
  /** Standing at the fire. */
  readonly fireS: number
  /** In an oven, with the cooling between tempers. */
  readonly ovenS: number
  /** From the first fire to the last cooling. */
  readonly allS: number
}

/** The skin is at heat while it has this share of the hottest that it gets, counted from 0 degC. */
const AT_HEAT_SHARE = 0.97

const AT_THE_FIRE = ['normalise', 'stress-relieve', 'heat', 'anneal', 'temper']
/** These are taken out to cool before their step is over. */
const TAKEN_OUT = ['normalise', 'stress-relieve']

/**
 * Hours of a treatment from its forecast and its steps as typed. A piece that is normalised, relieved of
 * stress or drawn over the fire keeps the fire until it is taken out to cool, which the temperature curve of the forecast tells; what cools
 * shut in keeps it all the while.
 */
export function hoursOf({ steps, curves }: Forecast, process: readonly StepText[], shop: ShopText): Hours {
  const ovens = new Set((shop.ovens ?? []).map(({ name }) => name.trim().toLowerCase()))
  let fireS = 0
  let ovenS = 0
  for (const [i, step] of steps.entries()) {
    const lasts = Math.max(0, step.end_s - step.start_s)
    const inOven = step.in !== undefined && ovens.has(step.in.trim().toLowerCase())
    const typed = process.length === steps.length ? process[i] : undefined
    if (!AT_THE_FIRE.includes(step.do)) continue
    const rounds = typeof typed?.times === 'number' ? typed.times : 1
    const takenOut = TAKEN_OUT.includes(step.do) || (step.do === 'temper' && !inOven)
    const busy = takenOut ? Math.min(lasts, rounds * (atHeatUntil(curves, step.start_s, step.end_s) ?? lasts)) : lasts
    if (inOven) ovenS += busy
    else fireS += busy
  }
  return { fireS, ovenS, allS: steps.at(-1)?.end_s ?? 0 }
}

/** How long after its start a step's first round leaves the fire; undefined where the curve has nothing of it. */
function atHeatUntil({ time_s, skin_C }: Forecast['curves'], startS: number, endS: number): number | undefined {
  const within = time_s.flatMap((t, i) => (t >= startS && t <= endS ? [{ t, skin: skin_C[i] ?? Number.NaN }] : []))
  const hottest = Math.max(...within.map(({ skin }) => skin))
  const last = within.findLast(({ skin }) => skin >= hottest * AT_HEAT_SHARE)
  return last === undefined ? undefined : last.t - startS
}
