import type { Figure, Finding, Forecast } from '#contract/answers.ts'
import { parseHardnessRange, type TypedHardnessRange } from '#units/hardness.ts'
import { formatLength, type System } from '#units/length.ts'
import { formatTemperature } from '#units/temperature.ts'

/** Below this the Rockwell C scale says nothing. */
export const SOFTEST_HRC = 20

/** `52 HRC`, or in words where the scale has no figure. */
export function hardnessText({ value }: Figure): string {
  return value < SOFTEST_HRC ? `under ${SOFTEST_HRC} HRC` : `${Math.round(value)} HRC`
}

/** Nine in ten lie here: `50 to 54`. */
export function bandText({ low, high }: Figure): string {
  if (high < SOFTEST_HRC) return `under ${SOFTEST_HRC}`
  return low < SOFTEST_HRC ? `under ${SOFTEST_HRC} to ${Math.round(high)}` : spanText(low, high)
}

/** `182 HV (170 to 200)`. */
export function vickersText({ value, low, high }: Figure): string {
  return `${Math.round(value)} HV (${spanText(low, high)})`
}

/** What stands beside a hardness: its band, and Vickers where the Rockwell C scale ends or nears its end. */
export function besideText(hrc: Figure, vickers?: Figure): string {
  const band = hrc.high < SOFTEST_HRC ? [] : [bandText(hrc)]
  return [...band, ...(vickers !== undefined && hrc.low < SOFTEST_HRC + 2 ? [vickersText(vickers)] : [])].join('; ')
}

function spanText(low: number, high: number): string {
  return Math.round(low) === Math.round(high) ? `${Math.round(low)}` : `${Math.round(low)} to ${Math.round(high)}`
}

/** Chances as one says them. */
export function chanceText(chance: number): string {
  if (chance >= 0.95) return 'more than 19 in 20'
  if (chance <= 0.05) return 'less than 1 in 20'
  return `about ${Math.min(9, Math.max(1, Math.round(chance * 10)))} in 10`
}

/** Where a figure comes from, in a word or two. */
export const BASIS_WORDS: Readonly<Record<Figure['basis'], string>> = {
  published: 'published figures',
  model: 'worked out by a model',
  measured: 'measured on this bar',
  memory: 'from memory, not checked',
}

export const SEVERITY_WORDS: Readonly<Record<Finding['severity'], string>> = { stop: 'Stop', warn: 'Mind', note: 'Note' }

export function temperatureOf(celsius: number, units: System): string {
  return formatTemperature(celsius + 273.15, units)
}

export function lengthOf(mm: number, units: System): string {
  return formatLength(mm / 1000, units, 64)
}

/** A length without its unit, for a column that names the unit once. */
export function bareLength(mm: number, units: System): string {
  return lengthOf(mm, units).replace(/ (?:mm|in)$/u, '')
}

/** The aim of a zone as figures, for a box in the picture; undefined where it is no Rockwell C aim. */
export function aimOf(aim: string): TypedHardnessRange | undefined {
  const range = parseHardnessRange(aim)
  return range.ok && range.value.scale === 'HRC' ? range.value : undefined
}

/** `48..54 HRC` as one says it. */
export function aimWords(aim: string): string {
  return aim.replace('..', ' to ')
}

/** Height on the piece that a finding speaks of [mm from the working end]; undefined when it speaks of the whole. */
export function heightOf({ where }: Finding, { zones }: Forecast): number | undefined {
  if (where?.x_mm !== undefined) return where.x_mm
  const zone = zones.find(({ name }) => name === where?.zone)
  return zone === undefined ? undefined : (zone.from_mm + zone.to_mm) / 2
}

const RANK: Readonly<Record<Finding['severity'], number>> = { stop: 0, warn: 1, note: 2 }

/** The gravest first; the numbers of the marks follow this order everywhere. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity])
}
