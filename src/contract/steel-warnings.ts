import type { Grade } from '#engine/materials/catalogue.ts'
import type { Steel } from '#engine/materials/steel.ts'
import type { GradeTreatment } from '#engine/materials/treatment.ts'
import type { DerivedTreatment } from '#engine/metallurgy/derived-treatment.ts'
import { embrittlingAt, embrittlingRanges } from '#engine/metallurgy/tempering-embrittlement.ts'
import { celsiusFromKelvin } from '#units/temperature.ts'

interface Known {
  readonly steel: Steel
  readonly grade: Grade | undefined
  readonly published: GradeTreatment | undefined
  readonly derived: DerivedTreatment
  /** Of the name that was asked for, when it is a word of the trade. */
  readonly matchedWarning: string | undefined
  readonly request: { readonly austenitiseK: number | undefined; readonly temperK: number | undefined }
  readonly ac1K: number
}

/** Hotter than this a coal or gas fire does not hold a piece evenly [K]; common practice, no source. */
const FIRE_LIMIT_K = 1190 + 273.15
/** How far outside the published range a heat may stand before it is worth a word [K]. */
const HEAT_TOLERANCE_K = 10

const heat = (kelvin: number): string => `${Math.round(celsiusFromKelvin(kelvin))} °C`
const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`

/** What a smith should hear before working with the steel, the gravest first. */
export function steelWarnings(known: Known): string[] {
  const { grade, published, matchedWarning } = known
  const own = grade === undefined || grade.warning === '' ? [] : [sentence(grade.warning)]
  const says = published?.hardens === false && published.hardensSays !== grade?.warning ? [sentence(published.hardensSays)] : []
  const said = grade !== undefined && /do not forge/.test(grade.warning)
  const forging = published?.forgeForbidden === undefined || said ? [] : [sentence(published.forgeForbidden.says)]
  return [
    ...forging,
    ...own,
    ...says.filter((each) => each !== '.'),
    ...(matchedWarning === undefined ? [] : [sentence(matchedWarning)]),
    ...coolingWarnings(known),
    ...heatWarnings(known),
    ...temperWarnings(known),
  ]
}

function coolingWarnings({ published, derived }: Known): string[] {
  const never = (published?.neverQuenchIn ?? []).map(({ kind, source }) => `Do not quench it in ${kind}: it cracks (${source}).`)
  const forbidden = published?.normaliseForbidden
  const normalising =
    forbidden === undefined
      ? []
      : forbidden.notBy.length === 0
        ? [`Do not normalise it (${forbidden.by.map(({ source }) => source).join('; ')}).`]
        : [
            `Sources disagree on normalising: forbidden by ${forbidden.by.map(({ source }) => source).join('; ')}, given by ${forbidden.notBy.map(({ source }) => source).join('; ')}.`,
          ]
  const thick = (published?.throughHardening ?? []).map(
    ({ quench, says, sectionM, source }) => `In ${quench}: ${says} ${Math.round(sectionM * 1000)} mm (${source}).`,
  )
  const air = published?.airHardening ?? derived.airHardening
  return [
    ...never,
    ...normalising,
    ...thick,
    ...(air ? ['It hardens in still air: cool it very slowly to soften it, never in water.'] : []),
  ]
}

function heatWarnings({ published, derived, request: { austenitiseK }, ac1K }: Known): string[] {
  const use = published?.austenitise?.use ?? derived.austenitise
  const beyondFire =
    use.fromK > FIRE_LIMIT_K ? [`Its hardening heat of ${heat(use.fromK)} and more is beyond a coal or gas fire.`] : []
  if (austenitiseK === undefined) return beyondFire
  if (austenitiseK <= ac1K)
    return [...beyondFire, `At ${heat(austenitiseK)} it stays below its Ac1 (${heat(ac1K)}): it will not harden.`]
  const all = published?.austenitise?.all ?? [use]
  const fromK = Math.min(...all.map((range) => range.fromK))
  const toK = Math.max(...all.map((range) => range.toK))
  if (austenitiseK < fromK - HEAT_TOLERANCE_K)
    return [
      ...beyondFire,
      `${heat(austenitiseK)} is under its hardening heat, ${heat(fromK)}..${heat(toK)}: part of it may stay soft.`,
    ]
  if (austenitiseK > toK + HEAT_TOLERANCE_K)
    return [
      ...beyondFire,
      `${heat(austenitiseK)} is over its hardening heat, ${heat(fromK)}..${heat(toK)}: the grain grows and it may crack or keep soft austenite.`,
    ]
  return beyondFire
}

function temperWarnings({ steel, request: { temperK } }: Known): string[] {
  if (temperK === undefined) return []
  const hit = embrittlingAt(embrittlingRanges(steel), temperK)
  return hit === undefined
    ? []
    : [
        `Tempering at ${heat(temperK)} lies in a range that costs toughness, ${heat(hit.fromK)}..${heat(hit.toK)} (${hit.source}).`,
      ]
}
