import type { Figure, SteelAnswer } from '#contract/answers.ts'
import { BASIS_WORDS } from '#report/figure-text.ts'
import { formatLength, type System } from '#units/length.ts'
import { formatTemperature } from '#units/temperature.ts'

const ZERO_C_K = 273.15

/** One fact of a steel, ready to be read: what, the figure, its band, and where it comes from. */
export interface Fact {
  readonly what: string
  readonly figure: string
  readonly band?: string
  readonly from: string
}

type Span = NonNullable<SteelAnswer['treatment']['forge_C']>

const degrees = (celsius: number, units: System): string => formatTemperature(celsius + ZERO_C_K, units)

/** Published heats are round figures in one scale: in the other they are given to the nearest five. */
export function roundDegrees(celsius: number, units: System): string {
  if (units === 'metric') return degrees(celsius, units)
  return degrees((Math.round((celsius * 1.8 + 32) / 5) * 5 - 32) / 1.8, units)
}

/** `845 to 870 °C`, or one figure where both ends agree. */
export function spanText({ from, to }: { readonly from: number; readonly to: number }, units: System): string {
  const [low, high] = [roundDegrees(from, units), roundDegrees(to, units)]
  return low === high ? low : `${low.replace(/ °[CF]$/u, '')} to ${high}`
}

function temperatureFact(what: string, figure: Figure, units: System): Fact {
  return {
    what,
    figure: degrees(figure.value, units),
    band: spanText({ from: figure.low, to: figure.high }, units),
    from: `${BASIS_WORDS[figure.basis]}: ${figure.source}`,
  }
}

/** Where the steel changes as it heats and cools. */
export function criticalFacts({ critical }: SteelAnswer, units: System): Fact[] {
  return [
    temperatureFact('Begins to turn on heating (Ac1)', critical.ac1_C, units),
    temperatureFact('Has turned on heating (Ac3)', critical.ac3_C, units),
    ...(critical.acm_C === undefined ? [] : [temperatureFact('Carbides all dissolved (Acm)', critical.acm_C, units)]),
    temperatureFact('Begins to harden on cooling (Ms)', critical.ms_C, units),
    temperatureFact('Has hardened on cooling (Mf)', critical.mf_C, units),
  ]
}

/** What it can come to. */
export function hardnessFacts({ fullyMartensitic_HRC: full, idealDiameter_mm: ideal }: SteelAnswer, units: System): Fact[] {
  const across = (mm: number): string => formatLength(mm / 1000, units)
  return [
    {
      what: 'Hardest it can come from the bath',
      figure: `${Math.round(full.value)} HRC`,
      band: `${Math.round(full.low)} to ${Math.round(full.high)}`,
      from: `${BASIS_WORDS[full.basis]}: ${full.source}`,
    },
    {
      what: 'Round that hardens to half at its middle in an ideal bath',
      figure: across(ideal.value),
      band: `${across(ideal.low)} to ${across(ideal.high)}`,
      from: `${BASIS_WORDS[ideal.basis]}: ${ideal.source}`,
    },
  ]
}

const TREATMENTS = [
  ['forge_C', 'Forge'],
  ['normalise_C', 'Normalise'],
  ['anneal_C', 'Anneal'],
  ['austenitise_C', 'Harden from'],
  ['temper_C', 'Temper'],
] as const

/** Heats of the treatment; where sources clash every one of them stands. */
export function treatmentFacts({ treatment }: SteelAnswer, units: System): (Fact & { readonly others: readonly Fact[] })[] {
  return TREATMENTS.flatMap(([key, what]) => {
    const span = treatment[key]
    if (span === undefined) return []
    const all = (span.all ?? []).map((each): Fact => spanFact(each.says ?? '', each, units))
    return [{ ...spanFact(what, span, units), others: all.length > 1 ? all : [] }]
  })
}

function spanFact(what: string, span: Pick<Span, 'from' | 'to' | 'basis' | 'source'>, units: System): Fact {
  return { what, figure: spanText(span, units), from: `${BASIS_WORDS[span.basis]}: ${span.source}` }
}

/** Temper rows for a table: temperature, hold, hardness with band. */
export function temperTable(
  { temper }: SteelAnswer,
  units: System,
): readonly (readonly [at: string, hrc: string, band: string])[] {
  return temper.map(({ temperature_C, hardness_HRC: { value, low, high } }) => [
    degrees(temperature_C, units),
    `${Math.round(value)}`,
    `${Math.round(low)} to ${Math.round(high)}`,
  ])
}

/** `C 0.38 to 0.43`, the shares that are more than traces. */
export function analysisText({ analysis_wtpct }: SteelAnswer): string {
  return Object.entries(analysis_wtpct)
    .filter(([, { value }]) => value >= 0.05)
    .map(([element, { low, high, value }]) => `${element} ${low === high ? round(value) : `${round(low)} to ${round(high)}`}`)
    .join(', ')
}

function round(share: number): string {
  return String(Math.round(share * 100) / 100)
}
