import { gradeById } from '#engine/materials/catalogue.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import { usualAustenite } from '#engine/metallurgy/jominy-estimate.ts'
import { temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import type { TablesKnown, TemperingKind } from '#engine/metallurgy/tempering-scatter.ts'
import { checkingTable, text } from './data.ts'
import { steelNamed, steelOfRow } from './steels.ts'
import { temperedHeats, temperTimeSeries } from './tempered-heats.ts'
import { samePrint } from './tempering-rows.ts'
import { curvesFromComposition, curvesFromOthers } from './tempering-tables.ts'

/** Nine in ten of a normal spread lie within so many standard deviations. */
const NINE_IN_TEN = 1.645

/** Errors of one kind of steel with so many tables known, by source. */
export interface Scatter {
  readonly known: TablesKnown
  readonly kind: TemperingKind
  readonly steels: number
  readonly rows: number
  /** Half way between what holds nine tenths of the errors, each source weighing the same, and what holds 0.85 of every set by itself; over 1.645 [HRC]. */
  readonly sigmaHrc: number
}

interface Miss {
  readonly known: TablesKnown
  readonly kind: TemperingKind
  readonly steel: string
  readonly source: string
  readonly set: 'tables' | 'heats by time' | 'test bars'
  readonly hrc: number
}

/** A set with fewer rows of a kind says nothing by itself. */
const FEWEST = 20

/** The scatter of tempered hardness with each steel, or each print, left out in turn: what the engine's table of widths holds. */
export function temperingScatter(withCheckingSets: boolean): Scatter[] {
  const misses = [...ofTables(), ...(withCheckingSets ? ofHeats() : [])]
  const classes = new Map<string, Miss[]>()
  for (const miss of misses) {
    const key = `${miss.known} ${miss.kind}`
    classes.set(key, [...(classes.get(key) ?? []), miss])
  }
  return [...classes.values()].map((of): Scatter => {
    const { known, kind } = of[0]!
    return {
      known,
      kind,
      steels: new Set(of.map(({ steel }) => steel)).size,
      rows: of.length,
      sigmaHrc: (weighedQuantile(of) + Math.max(weighedQuantile(of), ...ofEachSet(of))) / 2 / NINE_IN_TEN,
    }
  })
}

function ofTables(): Miss[] {
  const misses = (rows: ReturnType<typeof curvesFromOthers.rows>, leftOut: boolean): Miss[] =>
    rows.map(({ label, group, source = '', published, forecast }): Miss => {
      const grade = gradeById(group)
      const steel = grade === undefined ? steelNamed(group) : steelOf(grade)
      const { kind, tables } = temperingResponse(steel, usualAustenite(steel.composition), {
        without: samePrint(steel, label.split(' ')[0] ?? ''),
      })
      return { known: leftOut ? 'none' : tables, kind, steel: group, source, set: 'tables', hrc: forecast - published }
    })
  return [...misses(curvesFromComposition.rows(), true), ...misses(curvesFromOthers.rows(), false)]
}

function ofHeats(): Miss[] {
  const kinds = new Map(
    ['temper_time_series.csv', 'tempered_hardness_nims.csv'].flatMap((name) =>
      checkingTable(name).map((row): [string, TemperingKind] => {
        const steel = steelOfRow(row, text(row, 'heat_id'))
        return [steel.name, temperingResponse(steel, usualAustenite(steel.composition)).kind]
      }),
    ),
  )
  const misses = (rows: ReturnType<typeof temperedHeats.rows>, set: Miss['set']): Miss[] =>
    rows
      .filter(({ fitted }) => fitted !== true)
      .map(({ label, source = '', published, forecast }): Miss => {
        const steel = label.split(' ')[0] ?? ''
        return { known: 'none', kind: kinds.get(steel)!, steel, source, set, hrc: forecast - published }
      })
  return [...misses(temperTimeSeries.rows(), 'heats by time'), ...misses(temperedHeats.rows(), 'test bars')]
}

function ofEachSet(misses: readonly Miss[]): number[] {
  return (['tables', 'heats by time', 'test bars'] as const).flatMap((set) => {
    const sizes = misses.filter((miss) => miss.set === set).map(({ hrc }) => Math.abs(hrc))
    return sizes.length < FEWEST ? [] : [sizes.sort((a, b) => a - b)[Math.ceil(0.85 * sizes.length) - 1]!]
  })
}

/** The 0.9 quantile of the size of the errors, every source with the same weight whatever its number of rows. */
function weighedQuantile(misses: readonly Miss[]): number {
  const rowsOf = new Map<string, number>()
  for (const { source } of misses) rowsOf.set(source, (rowsOf.get(source) ?? 0) + 1)
  const sorted = misses
    .map(({ hrc, source }) => ({ size: Math.abs(hrc), weight: 1 / rowsOf.get(source)! }))
    .sort((a, b) => a.size - b.size)
  const wanted = 0.9 * rowsOf.size
  let sum = 0
  for (const { size, weight } of sorted) {
    sum += weight
    if (sum >= wanted) return size
  }
  return sorted[sorted.length - 1]?.size ?? Number.NaN
}
