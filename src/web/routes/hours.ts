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

/** The skin is at heat while it is within this of the hottest that it gets [K]. */
const AT_HEAT_K = 25

/**
 * Hours of a treatment from its forecast and its steps as typed. A round of normalising or of relieving stress is at the fire until it is
 * taken out to cool, which the temperature curve of the forecast tells; what cools shut in keeps the fire.
 */
export function hoursOf({ steps, curves }: Forecast, process: readonly StepText[], shop: ShopText): Hours {
  const ovens = new Set((shop.ovens ?? []).map(({ name }) => name.trim().toLowerCase()))
  let fireS = 0
  let ovenS = 0
  for (const [i, step] of steps.entries()) {
    const lasts = Math.max(0, step.end_s - step.start_s)
    const inOven = step.in !== undefined && ovens.has(step.in.trim().toLowerCase())
    const typed = process.length === steps.length ? process[i] : undefined
    switch (step.do) {
      case 'normalise':
      case 'stress-relieve': {
        const rounds = typeof typed?.times === 'number' ? typed.times : 1
        const hot = Math.min(lasts, rounds * (atHeatUntil(curves, step.start_s, step.end_s) ?? lasts))
        if (inOven) ovenS += hot
        else fireS += hot
        break
      }
      case 'heat':
      case 'anneal':
      case 'temper':
        if (inOven) ovenS += lasts
        else fireS += lasts
        break
    }
  }
  return { fireS, ovenS, allS: steps.at(-1)?.end_s ?? 0 }
}

/** How long after its start a step's first round leaves the fire; undefined where the curve has nothing of it. */
function atHeatUntil({ time_s, skin_C }: Forecast['curves'], startS: number, endS: number): number | undefined {
  const within = time_s.flatMap((t, i) => (t >= startS && t <= endS ? [{ t, skin: skin_C[i] ?? Number.NaN }] : []))
  const hottest = Math.max(...within.map(({ skin }) => skin))
  const last = within.findLast(({ skin }) => skin >= hottest - AT_HEAT_K)
  return last === undefined ? undefined : last.t - startS
}
