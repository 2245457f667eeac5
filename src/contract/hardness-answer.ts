import { convert, HARDNESS_SCALES, type HardnessScale, OutsideScale } from '#engine/metallurgy/hardness-scales.ts'
import { parseHardness } from '#units/hardness.ts'
import { shown } from '#units/reading.ts'
import type { Figure } from './answers.ts'
import { InputProblems } from './problems.ts'

const SCALE_WORDS: Readonly<Record<string, HardnessScale>> = {
  HB: 'HBW',
  BHN: 'HBW',
  BRINELL: 'HBW',
  RC: 'HRC',
  RB: 'HRB',
  RA: 'HRA',
  VICKERS: 'HV',
  VPN: 'HV',
  DPH: 'HV',
  KNOOP: 'HK',
  MPA: 'MPa',
}

/** Reading on a scale that only this command knows: `81 HRA`, `640 HK`, `1200 MPa`. */
const OTHER_SCALE = /^\s*(\d+(?:[.,]\d+)?)\s*(HRA|HK|HR15N|HR30N|HR45N|MPa)\s*$/iu

function scaleOf(words: string): HardnessScale | undefined {
  const key = words.trim().toUpperCase()
  return HARDNESS_SCALES.find((scale) => scale.toUpperCase() === key) ?? SCALE_WORDS[key]
}

/**
 * A hardness as it reads on another scale: `convertHardness('52 HRC', 'HV')` is 544 HV. Scales: HRC, HV, HBW (also HB), HRB, HRA, HK,
 * HR15N, HR30N, HR45N and MPa (tensile strength). The band holds nine in ten conversions of single readings.
 * Throws `InputProblems` naming `hardness` or `scale` when either cannot be read or the standards give no such conversion.
 */
export function convertHardness(hardness: string, scale: string): Figure {
  const to = scaleOf(String(scale))
  const from = readingOf(hardness)
  const problems = [
    ...(from.ok ? [] : [{ field: 'hardness', says: from.says }]),
    ...(to === undefined
      ? [{ field: 'scale', says: `${shown(scale)}: no scale that I know; write one of ${HARDNESS_SCALES.join(', ')}` }]
      : []),
  ]
  if (!from.ok || to === undefined) throw new InputProblems(problems)
  try {
    const { value, low, high, basis, source } = convert(from.value, from.scale, to)
    return { value: tenths(value), low: tenths(low), high: tenths(high), basis, source }
  } catch (error) {
    if (error instanceof OutsideScale) throw new InputProblems([{ field: 'hardness', says: error.message }])
    throw error
  }
}

function readingOf(hardness: unknown): { ok: true; value: number; scale: HardnessScale } | { ok: false; says: string } {
  const [, figure, words] = (typeof hardness === 'string' ? OTHER_SCALE.exec(hardness) : null) ?? []
  const scale = words === undefined ? undefined : scaleOf(words)
  if (figure !== undefined && scale !== undefined) return { ok: true, value: Number(figure.replace(',', '.')), scale }
  const reading = parseHardness(hardness)
  return reading.ok ? { ok: true, value: reading.value.value, scale: reading.value.scale } : reading
}

/** No scale is read closer than this. */
function tenths(value: number): number {
  return Math.round(value * 10) / 10
}
