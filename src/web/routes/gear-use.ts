import type { Forecast } from '#contract/answers.ts'
import { formatLength, parseLength, type System } from '#units/length.ts'
import { formatTemperature, parseTemperature } from '#units/temperature.ts'
import type { ShopText, StepText } from '#web/job/job-text.ts'

/** What a treatment asks of one piece of gear. */
export interface GearUse {
  readonly name: string
  readonly says: string
  /** The gear is asked for nearly all that it can do, or for more. */
  readonly strained?: string
}

const ZERO_C_K = 273.15
/** An oven set this near to its end has no room to swing [K]. */
const NEAR_END_K = 15
/** Liquid that a piece wants under its working end [m]. */
const UNDER_END_M = 0.03

/** Fires, baths and ovens in the order in which a treatment comes to them, each with the hardest that is asked of it. */
export function gearUse(process: readonly StepText[], forecast: Forecast, shop: ShopText, units: System): readonly GearUse[] {
  const names = [...new Set(process.flatMap((step) => (typeof step.in === 'string' ? [step.in] : [])))]
  return names.map((name): GearUse => {
    const steps = process.filter((step) => step.in === name)
    const key = name.trim().toLowerCase()
    const oven = shop.ovens?.find((each) => each.name.trim().toLowerCase() === key)
    const hottestK = Math.max(...steps.map((step) => kelvin(step.to ?? step.at)))
    if (oven !== undefined) return ovenUse(name, hottestK, kelvin(oven.max), units)
    if (Number.isFinite(hottestK)) return { name, says: `to ${formatTemperature(hottestK, units)}` }
    const bath = shop.baths?.find((each) => each.name.trim().toLowerCase() === key)
    return bathUse(name, steps, forecast, metres(bath?.depth), units)
  })
}

function ovenUse(name: string, atK: number, maxK: number, units: System): GearUse {
  const says = `at ${formatTemperature(atK, units)}`
  if (!(atK > maxK - NEAR_END_K)) return { name, says }
  const end = formatTemperature(maxK, units)
  return { name, says, strained: atK > maxK ? `it goes only to ${end}` : `near its end, ${end}` }
}

function bathUse(
  name: string,
  steps: readonly StepText[],
  { baths, length_mm }: Forecast,
  depthM: number | undefined,
  units: System,
): GearUse {
  if (/^(?:still|moving) air$/iu.test(name)) return { name, says: 'to cool in' }
  const dips = steps.filter((step) => step.do !== 'warm-bath').map((step) => metres(step.depth) ?? length_mm / 1000)
  const deepM = Math.min(length_mm / 1000, Math.max(0, ...dips))
  const whole = deepM >= (length_mm / 1000) * (1 - 1e-6)
  const warmest = baths
    .filter((each) => each.name === name)
    .reduce((hottest, { end_C }) => Math.max(hottest, end_C), Number.NEGATIVE_INFINITY)
  const says = [
    whole ? 'all of it under' : `${formatLength(deepM, units)} deep`,
    ...(Number.isFinite(warmest) ? [`ends at ${formatTemperature(warmest + ZERO_C_K, units)}`] : []),
  ].join(', ')
  if (depthM === undefined || deepM + UNDER_END_M <= depthM) return { name, says }
  return { name, says, strained: `it stands only ${formatLength(depthM, units)} deep` }
}

function kelvin(typed: unknown): number {
  const read = typeof typed === 'string' ? parseTemperature(typed) : undefined
  return read?.ok === true ? read.value.temperatureK : Number.NEGATIVE_INFINITY
}

function metres(typed: unknown): number | undefined {
  const read = typeof typed === 'string' ? parseLength(typed) : undefined
  return read?.ok === true ? read.value.lengthM : undefined
}
