import type { QuenchChoice } from '#engine/materials/quenchants.ts'
import type { Soak } from '#engine/materials/soaking.ts'
import type { TemperatureRange, TreatmentItem } from '#engine/materials/source-order.ts'
import type { GradeTreatment, TemperCycles } from '#engine/materials/treatment.ts'
import type { DerivedRange, DerivedTreatment } from '#engine/metallurgy/derived-treatment.ts'
import { formatDuration } from '#units/duration.ts'
import { celsiusFromKelvin } from '#units/temperature.ts'
import type { SteelAnswer } from './answers.ts'

type TreatmentAnswer = SteelAnswer['treatment']
type ItemAnswer = NonNullable<TreatmentAnswer['forge_C']>

const INCH_M = 0.0254

/**
 * The treatment as an answer: what is published of the grade, and what it is silent on as derived from its critical temperatures.
 * A steel without a grade has the derived treatment alone.
 */
export function treatmentAnswer(published: GradeTreatment | undefined, derived: DerivedTreatment): TreatmentAnswer {
  const forbidden = published?.normaliseForbidden
  const normalise = published?.normalise
  return {
    ...(published?.forgeForbidden === undefined ? { forge_C: itemOf(published?.forge, derived.forge) } : {}),
    ...(normalise !== undefined || (forbidden === undefined && derived.normalise !== undefined)
      ? { normalise_C: itemOf(normalise, derived.normalise ?? derived.anneal) }
      : {}),
    anneal_C: itemOf(published?.anneal, derived.anneal),
    austenitise_C: itemOf(published?.austenitise, derived.austenitise),
    temper_C: itemOf(published?.temper, derived.temper),
    soak: published === undefined ? soakSays(derivedSoak(derived)) : soakSays(published.soak),
    baths: bathsOf(published, derived),
    cycles: cyclesSay(published, derived),
  }
}

function itemOf(published: TreatmentItem | undefined, derived: DerivedRange): ItemAnswer {
  if (published === undefined) {
    const { fromK, toK, basis, source } = derived
    return { from: degrees(fromK), to: degrees(toK), basis, source }
  }
  return {
    ...spanOf(published.use),
    all: published.all.map((range) => ({ ...spanOf(range), ...(range.says === '' ? {} : { says: range.says }) })),
  }
}

function spanOf({ fromK, toK, basis, source }: TemperatureRange): {
  from: number
  to: number
  basis: ItemAnswer['basis']
  source: string
} {
  return { from: degrees(fromK), to: degrees(toK), basis, source }
}

const degrees = (kelvin: number): number => Math.round(celsiusFromKelvin(kelvin))

type SoakWords = Pick<Soak, 'fromS' | 'toS' | 'perMetreS' | 'leastS' | 'source' | 'says'>

function derivedSoak({ airHardening }: DerivedTreatment): SoakWords {
  const source = 'common practice, no source'
  return airHardening
    ? { fromS: 900, toS: 2700, perMetreS: 0, leastS: 0, source, says: 'steel rich in alloy, as its like in SAE J437' }
    : { fromS: 120, toS: 300, perMetreS: 0, leastS: 0, source, says: 'normalised steel; annealed stock needs 10 min or more' }
}

/** "10 min to 30 min once it is at heat right through (a data sheet)". */
function soakSays({ fromS, toS, perMetreS, leastS, source, says }: SoakWords): string {
  const range = fromS === toS ? formatDuration(toS) : `${formatDuration(fromS)} to ${formatDuration(toS)}`
  const perInch = `${formatDuration(perMetreS * INCH_M)} per inch of thickness`
  const length = toS === 0 ? perInch : perMetreS === 0 ? range : `${range} and ${perInch}`
  const least = leastS === 0 ? '' : `, ${formatDuration(leastS)} at least`
  const remark = /common practice/.test(source) && says !== '' ? `: ${says}` : ''
  return `${length}${least}, once it is at heat right through${remark} (${source})`
}

function bathsOf(published: GradeTreatment | undefined, derived: DerivedTreatment): string[] {
  if (published === undefined || published.quenchants.length === 0)
    return [`${derived.quench} (by model: ${derived.quenchBecause})`]
  return published.quenchants.map(bathSays)
}

/** "oil, for sections over 75 mm". */
function bathSays({ kind, aboveM, belowM, austeniteFromK, austeniteToK }: QuenchChoice): string {
  const over = aboveM === undefined ? '' : `, for sections over ${Math.round(aboveM * 1000)} mm`
  const under = belowM === undefined ? '' : `, for sections under ${Math.round(belowM * 1000)} mm`
  const from =
    austeniteFromK === undefined || austeniteToK === undefined ? '' : `, from ${heatSays(austeniteFromK, austeniteToK)}`
  return `${kind}${over}${under}${from}`
}

function heatSays(fromK: number, toK: number): string {
  return degrees(fromK) === degrees(toK) ? `${degrees(fromK)} °C` : `${degrees(fromK)}..${degrees(toK)} °C`
}

function cyclesSay(published: GradeTreatment | undefined, derived: DerivedTreatment): string {
  const cycles: Pick<TemperCycles, 'from' | 'to' | 'source' | 'says'> = published?.cycles ?? {
    from: derived.airHardening ? 2 : 1,
    to: 2,
    source: 'common practice, no source',
    says: 'at least 1 h each, better 2 h',
  }
  const count = cycles.from === cycles.to ? `${cycles.from}` : `${cycles.from} or ${cycles.to}`
  const remark = cycles.says === '' ? '' : `: ${cycles.says}`
  return `${count} ${cycles.to === 1 ? 'temper' : 'tempers'}${remark} (${cycles.source})`
}
