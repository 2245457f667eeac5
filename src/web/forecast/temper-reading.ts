import type { Forecast } from '#contract/answers.ts'

type Curve = NonNullable<Forecast['temperCurve']>

/** What a temper at one temperature gives [degC, HRC]. */
export interface TemperReading {
  readonly celsius: number
  readonly hrc: number
  readonly lowHrc: number
  readonly highHrc: number
}

/** The curve at a temperature of the steel, straight between its points; undefined off its ends. */
export function temperAt({ points }: Curve, celsius: number): TemperReading | undefined {
  const after = points.findIndex(({ temperature_C }) => temperature_C >= celsius)
  if (after === -1) return undefined
  const to = points[after]!
  const from = points[Math.max(0, after - 1)]!
  if (after === 0 && to.temperature_C > celsius) return undefined
  const width = to.temperature_C - from.temperature_C
  const share = width > 0 ? (celsius - from.temperature_C) / width : 0
  const between = (key: 'value' | 'low' | 'high'): number =>
    from.hardness_HRC[key] + share * (to.hardness_HRC[key] - from.hardness_HRC[key])
  return { celsius, hrc: between('value'), lowHrc: between('low'), highHrc: between('high') }
}

/** The heat of the steel that the step gives, and the hottest that its oven can give [degC]; the dial stands lower by what it reads low. */
export function ovenHeats({ oven, step }: Curve, steps: Forecast['steps']): { readonly setC?: number; readonly mostC?: number } {
  const dialC = steps[step]?.at_C
  const low = oven?.reads_low_C ?? 0
  return {
    ...(dialC === undefined ? {} : { setC: dialC + low }),
    ...(oven === undefined ? {} : { mostC: oven.max_C + low }),
  }
}
