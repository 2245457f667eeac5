import { interpolate } from '#engine/arithmetic/table.ts'
import type { Grade, Limit } from './catalogue.ts'
import { type TemperCurve, temperCurvesOf } from './published-temper-curves.ts'
import type { TemperatureRange, TreatmentItem } from './source-order.ts'
import { treatmentOf } from './treatment.ts'

/** A matter on which published sources disagree, with what each of them says. Nothing is averaged. */
export interface Clash {
  readonly what: string
  readonly figures: readonly { readonly says: string; readonly source: string }[]
}

const ZERO_C_K = 273.15

/** Ranges whose middles stand further apart than this clash [K]. */
const APART_K = 20
/** Tempering curves that differ by more than this at the same temperature clash [HRC]. */
const APART_HRC = 3

const celsius = (kelvin: number): number => Math.round(kelvin - ZERO_C_K)

function rangeSays({ fromK, toK, says }: TemperatureRange): string {
  const range = celsius(fromK) === celsius(toK) ? `${celsius(fromK)} °C` : `${celsius(fromK)}..${celsius(toK)} °C`
  return says === '' ? range : `${range} (${says})`
}

/** Every clash among the sources of the grade's limits, treatment and tempering curves. */
export function clashesOf(grade: Grade): readonly Clash[] {
  const treatment = treatmentOf(grade)
  const clashes: Clash[] = []
  for (const { element, limit, source, taken } of grade.otherLimits)
    clashes.push({
      what: `${element} in the analysis`,
      figures: [
        { says: limitSays(grade.limits[element]), source: `${taken} (taken)` },
        { says: limitSays(limit), source },
      ],
    })
  const { normaliseForbidden: forbidden } = treatment
  if (forbidden !== undefined && forbidden.notBy.length > 0 && treatment.normalise !== undefined)
    clashes.push({
      what: 'normalising',
      figures: [
        ...forbidden.by.map(({ source }) => ({ says: 'do not normalise', source })),
        ...treatment.normalise.all.map((range) => ({ says: rangeSays(range), source: range.source })),
      ],
    })
  const ranges = {
    forging: treatment.forge,
    'hardening heat': treatment.austenitise,
    tempering: treatment.temper,
    annealing: treatment.anneal,
  }
  for (const [what, item] of Object.entries(ranges))
    if (item !== undefined && disagree(item)) clashes.push({ what, figures: figuresOf(item) })
  return [...clashes, ...curveClashes(grade)]
}

function limitSays(limit: Limit | undefined): string {
  return `${limit?.low ?? 0}..${limit?.high ?? 'no limit'} %`
}

/** Ranges that overlap say the same thing with other words. */
function disagree({ all }: TreatmentItem): boolean {
  return all.some((a) => all.some((b) => b.fromK - a.toK > 1 && (b.fromK + b.toK - a.fromK - a.toK) / 2 > APART_K))
}

function figuresOf({ all }: TreatmentItem): { says: string; source: string }[] {
  return all.map((range) => ({ says: rangeSays(range), source: range.source }))
}

/** The grade's own curves against each other, where they are furthest apart. */
function curveClashes(grade: Grade): Clash[] {
  const own = temperCurvesOf(grade).filter(({ near }) => !near)
  let worst: { apart: number; kelvin: number } | undefined
  for (const curve of own)
    for (const { temperK, hardnessHrc } of curve.rows)
      for (const other of own) {
        const hrc = at(other, temperK)
        // The same sheet prints one curve for each hardening heat: that is no clash.
        if (hrc === undefined || other.source === curve.source) continue
        if (hardenedApart(curve, other)) continue
        const apart = Math.abs(hrc - hardnessHrc.value)
        if (apart >= APART_HRC && apart > (worst?.apart ?? 0)) worst = { apart, kelvin: temperK }
      }
  if (worst === undefined) return []
  const { kelvin } = worst
  const figures = own.flatMap((curve) => {
    const hrc = at(curve, kelvin)
    const from = curve.austenitiseK === undefined ? '' : `, hardened from ${celsius(curve.austenitiseK)} °C`
    return hrc === undefined ? [] : [{ says: `${Math.round(hrc * 2) / 2} HRC${from}`, source: curve.source }]
  })
  return [{ what: `hardness after tempering at ${celsius(kelvin)} °C`, figures }]
}

/** Curves from hardening heats far apart may differ without a clash. */
function hardenedApart({ austenitiseK: a }: TemperCurve, { austenitiseK: b }: TemperCurve): boolean {
  return a !== undefined && b !== undefined && Math.abs(a - b) > APART_K
}

function at({ rows }: TemperCurve, kelvin: number): number | undefined {
  const first = rows[0]?.temperK ?? Number.POSITIVE_INFINITY
  const last = rows[rows.length - 1]?.temperK ?? Number.NEGATIVE_INFINITY
  if (kelvin < first - 3 || kelvin > last + 3) return undefined
  return interpolate(
    rows.map(({ temperK, hardnessHrc }) => [temperK, hardnessHrc.value] as const),
    kelvin,
  )
}
