import { valueUnit } from '#report/validation-reach.ts'
import type { BetweenSources, Check, CheckSummary, DrawnRow } from '#report/validation-record.ts'
import type { System } from '#units/length.ts'

const MM_PER_INCH = 25.4

interface Turn {
  readonly value: (value: number) => number
  readonly error: (error: number) => number
  readonly valueUnit: string
  readonly errorUnit: string
}

/** A check as the smith reads it: differences of temperature in degrees, and everything in inches and Fahrenheit where he has chosen so. */
export interface CheckShown extends Omit<Check, 'rows'> {
  readonly valueUnit: string
  readonly rows?: readonly DrawnRow[]
}

function turnOf(check: Check, units: System): Turn {
  const same = (value: number): number => value
  if (check.scale === 'degC')
    return units === 'metric'
      ? { value: same, error: same, valueUnit: '°C', errorUnit: '°C' }
      : { value: (degC) => 1.8 * degC + 32, error: (kelvin) => 1.8 * kelvin, valueUnit: '°F', errorUnit: '°F' }
  if (check.scale === 'mm' && units === 'inch') {
    const inches = (mm: number): number => mm / MM_PER_INCH
    return { value: inches, error: inches, valueUnit: 'in', errorUnit: 'in' }
  }
  return { value: same, error: same, valueUnit: valueUnit(check), errorUnit: check.unit }
}

/** `check` in the units of the device; pure, so that the record stays as it was read. */
export function checkIn(check: Check, units: System): CheckShown {
  const turn = turnOf(check, units)
  const summary = (each: CheckSummary): CheckSummary => ({
    ...each,
    meanAbsolute: turn.error(each.meanAbsolute),
    bias: turn.error(each.bias),
    ...(each.worst === undefined
      ? {}
      : { worst: { ...each.worst, published: turn.value(each.worst.published), error: turn.error(each.worst.error) } }),
  })
  const { rows, betweenSources, fitted, ...rest } = check
  return {
    ...rest,
    unit: turn.errorUnit,
    valueUnit: turn.valueUnit,
    aim: turn.error(check.aim),
    all: summary(check.all),
    families: check.families.map(summary),
    groups: check.groups.map(summary),
    provenances: check.provenances.map(summary),
    ...(fitted === undefined ? {} : { fitted: summary(fitted) }),
    ...(betweenSources === undefined ? {} : { betweenSources: between(betweenSources, turn) }),
    ...(rows === undefined ? {} : { rows: rows.map((row) => rowIn(row, turn)) }),
  }
}

function between({ n, meanAbsolute, widest }: BetweenSources, turn: Turn): BetweenSources {
  return {
    n,
    meanAbsolute: turn.error(meanAbsolute),
    ...(widest === undefined ? {} : { widest: { ...widest, one: turn.value(widest.one), other: turn.value(widest.other) } }),
  }
}

function rowIn({ label, family, published, forecast, low, high }: DrawnRow, turn: Turn): DrawnRow {
  return {
    label,
    ...(family === undefined ? {} : { family }),
    published: turn.value(published),
    forecast: turn.value(forecast),
    ...(low === undefined || high === undefined ? {} : { low: turn.value(low), high: turn.value(high) }),
  }
}

/** `12 °C`, `2.9 HRC`, `0.11 in`: as many digits as tell something. */
export function errorText(error: number, unit: string): string {
  const size = Math.abs(error)
  const digits = unit.startsWith('°') || size >= 100 ? 0 : size < 0.995 ? 2 : 1
  return `${error.toFixed(digits)} ${unit}`
}
