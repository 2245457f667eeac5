import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { GRADES } from '#engine/materials/catalogue.ts'
import { CURVES_FROM_MEMORY } from '#engine/materials/curves-from-memory.ts'
import { AS_QUENCHED_ROWS } from '#engine/materials/tables/as-quenched.ts'
import { GRADE_ROWS } from '#engine/materials/tables/grades.ts'
import { DEPTH_ROWS } from '#engine/materials/tables/hardening-depths.ts'
import { TREATMENT_ROWS } from '#engine/materials/tables/heat-treatments.ts'
import type { CurveRow } from '#engine/materials/tables/rows.ts'
import { SOURCES } from '#engine/materials/tables/sources.ts'
import { CURVE_ROWS } from '#engine/materials/tables/temper-curves.ts'
import { allCorrelations } from '#engine/metallurgy/all-correlations.ts'
import { publishedCriticals } from '#engine/metallurgy/published-criticals.ts'
import { TEMPERED_ROUNDS } from '#engine/metallurgy/tempered-round-table.ts'
import { FIRE_NATURES } from '#engine/surface-heat/fire.ts'
import type { MemoryFigure, MemoryTable } from '#report/memory-list.ts'
import { scanForMemory, sourceFiles } from './memory-scan.ts'
import { ROOT } from './record.ts'

const ZERO_DEGC_K = 273.15
const TABLES = 'src/engine/materials/tables'

function span(low: number | null, high: number | null): string {
  if (low === null) return high === null ? '' : `at most ${high}`
  if (high === null) return `at least ${low}`
  return low === high ? `${low}` : `${low} to ${high}`
}

function grades(): MemoryFigure[] {
  return GRADE_ROWS.filter(({ provenance }) => provenance === 'memory').map(({ id, limits, source }) => ({
    what: id,
    value: Object.entries(limits)
      .map(([element, [low, high]]) => `${element} ${span(low, high)}`)
      .join(', '),
    unit: 'weight %',
    file: `${TABLES}/grades.ts`,
    from: SOURCES[source],
  }))
}

const DEGREES: Readonly<Record<string, string>> = { C: '°C', 'C/h': '°C an hour' }

function treatments(): MemoryFigure[] {
  return TREATMENT_ROWS.filter((row) => row[7] === 'memory').map(([grade, item, low, high, unit, text, source, , , note]) => {
    const figures = span(low, high)
    return {
      what: `${grade}, ${item}`,
      value: [figures, text, note].filter((each) => each !== '').join('; '),
      unit: DEGREES[unit] ?? unit,
      file: `${TABLES}/heat-treatments.ts`,
      from: SOURCES[source],
    }
  })
}

function curveText(points: CurveRow['points']): string {
  return points
    .map(([degC, hrc, low, high, brinell]) => {
      const hardness = hrc ?? (brinell === null ? span(low, high) : `${brinell} HB`)
      return `${degC === null ? 'as quenched' : `${degC} °C`} ${hardness}`
    })
    .join(', ')
}

function temperCurves(): MemoryFigure[] {
  return [
    ...CURVE_ROWS.filter(({ provenance }) => provenance === 'memory').map(({ grade, points, source }) => ({
      what: grade,
      value: curveText(points),
      unit: 'HRC',
      file: `${TABLES}/temper-curves.ts`,
      from: SOURCES[source] as string,
    })),
    ...CURVES_FROM_MEMORY.map(({ grade, points, sourceText }) => ({
      what: grade,
      value: curveText(points),
      unit: 'HRC',
      file: 'src/engine/materials/curves-from-memory.ts',
      from: sourceText,
    })),
    ...TEMPERED_ROUNDS.filter(({ basis }) => basis === 'memory').map(({ grade, points, source }) => ({
      what: grade,
      value: points.map(([degC, brinell]) => `${degC} °C ${brinell}`).join(', '),
      unit: 'HB',
      file: 'src/engine/metallurgy/tempered-round-table.ts',
      from: source,
    })),
  ]
}

function hardnessAndDepth(): MemoryFigure[] {
  return [
    ...AS_QUENCHED_ROWS.filter(({ provenance }) => provenance === 'memory').map(
      ({ grade, hardenC, quench, hrc, lowHrc, highHrc, source }) => ({
        what: `${grade} as quenched in ${quench}${hardenC === null ? '' : ` from ${hardenC} °C`}`,
        value: hrc === null ? span(lowHrc, highHrc) : `${hrc}`,
        unit: 'HRC',
        file: `${TABLES}/as-quenched.ts`,
        from: SOURCES[source] as string,
      }),
    ),
    ...DEPTH_ROWS.filter(({ provenance }) => provenance === 'memory').map(({ steel, quantity, value, unit, source }) => ({
      what: `${steel}, ${quantity}`,
      value: value === null ? '' : `${value}`,
      unit,
      file: `${TABLES}/hardening-depths.ts`,
      from: SOURCES[source] as string,
    })),
  ]
}

function criticals(): MemoryFigure[] {
  return GRADES.flatMap(({ id }) => {
    const { ac1K, ac3K } = publishedCriticals(id)
    return [
      ['Ac1', ac1K],
      ['Ac3', ac3K],
    ].flatMap(([line, estimate]): MemoryFigure[] => {
      if (estimate === undefined || typeof estimate === 'string' || !/memory/u.test(estimate.source)) return []
      return [
        {
          what: `${id}, ${String(line)}`,
          value: `${Math.round(estimate.value - ZERO_DEGC_K)}`,
          unit: '°C',
          file: 'src/engine/metallurgy/published-criticals.ts',
          from: estimate.source,
        },
      ]
    })
  })
}

function correlations(): MemoryFigure[] {
  return allCorrelations
    .filter(({ source }) => /memory/u.test(source))
    .map(({ id, output, source }) => ({ what: id, value: output, unit: '', file: 'src/engine/metallurgy', from: source }))
}

function fires(): MemoryFigure[] {
  return Object.entries(FIRE_NATURES)
    .filter(([, { source }]) => /memory/u.test(source))
    .flatMap(([kind, { hotK, film, emissivity, judgedWithinK, source }]) => {
      const file = 'src/engine/surface-heat/fire.ts'
      return [
        ...(hotK === undefined
          ? []
          : [{ what: `${kind}: gas and walls`, value: `${Math.round(hotK - ZERO_DEGC_K)}`, unit: '°C', file, from: source }]),
        { what: `${kind}: film on a 25 mm bar`, value: `${film}`, unit: 'W/(m2 K)', file, from: source },
        { what: `${kind}: emissivity`, value: `${emissivity}`, unit: '', file, from: source },
        { what: `${kind}: heat read by eye within, one sigma`, value: `${judgedWithinK}`, unit: 'K', file, from: source },
      ]
    })
}

/** Files whose figures are read from their data above. */
const READ_AS_DATA =
  /materials\/tables\/|curves-from-memory|published-criticals|tempered-round-table|surface-heat\/fire\.ts|trade-names|steel-names|provenance\//u

interface Area {
  readonly name: string
  readonly folders: RegExp
  readonly replacedBy: string
}

const AREAS: readonly Area[] = [
  {
    name: 'Heat in fires, baths, air and ovens',
    folders: /engine\/(?:surface-heat|simulation|conduction)\//u,
    replacedBy: 'A run with a thermocouple in a block of known size: in that fire or oven, in that bath with and without motion.',
  },
  {
    name: 'Heat properties, soaking and what bar holds beside its limits',
    folders: /engine\/materials\//u,
    replacedBy:
      'A printed table of the steel (conductivity, specific heat, heat of transformation), and mill certificates of bar as it is sold.',
  },
  {
    name: 'What heat makes of steel',
    folders: /engine\/(?:metallurgy|kinetics|skin)\//u,
    replacedBy:
      'The publication that is named, opened and compared; where none is named, a measurement on one bar of known analysis.',
  },
  {
    name: 'Shapes',
    folders: /engine\/geometry\//u,
    replacedBy: 'The standard that is named, or cross-sections solved in their plane.',
  },
  {
    name: 'How wide the band is',
    folders: /engine\/ensemble\//u,
    replacedBy: 'The same piece treated again and again in one shop, and measured.',
  },
  {
    name: 'When something is said to be wrong',
    folders: /engine\/findings\//u,
    replacedBy: 'A standard or handbook that gives the limit; pieces that cracked, warped or stayed soft, with their figures.',
  },
  {
    name: 'How a treatment is proposed',
    folders: /engine\/planning\//u,
    replacedBy: 'A handbook of practice that gives the figure.',
  },
  {
    name: 'What is taken when a job does not say, and in mends',
    folders: /src\/contract\//u,
    replacedBy: 'What the smith himself measures: it can be written in the job, and then nothing is assumed.',
  },
]

/** Every figure of the program whose only ground is somebody's memory or common practice, by table. */
export function memoryTables(): MemoryTable[] {
  const scanned = ['src/engine', 'src/contract']
    .flatMap((folder) => sourceFiles(ROOT, folder))
    .filter((file) => !READ_AS_DATA.test(file))
    .flatMap((file) => scanForMemory(file, readFileSync(join(ROOT, file), 'utf8')))
  const other = scanned.filter(({ file }) => !AREAS.some(({ folders }) => folders.test(file)))
  if (other.length > 0) throw new Error(`${other[0]?.file}: belongs to no area of memory-tables.ts`)
  const tables: MemoryTable[] = [
    {
      name: 'Composition limits of grades',
      replacedBy: 'The page of the standard that is named, or a mill sheet that prints the limits.',
      figures: grades(),
    },
    {
      name: 'Forging, normalising, annealing, hardening and tempering of grades',
      replacedBy: "The handbook page that is named, opened and compared, or a maker's sheet of the steel.",
      figures: treatments(),
    },
    {
      name: 'Tempering tables',
      replacedBy: "A maker's sheet that prints the table with its hold, number of tempers and hardness as quenched.",
      figures: temperCurves(),
    },
    {
      name: 'Hardness as quenched and depth',
      replacedBy: "A maker's sheet that prints it with the section and the bath.",
      figures: hardnessAndDepth(),
    },
    {
      name: 'Critical temperatures of grades',
      replacedBy: "A maker's sheet, or a dilatometer run with its rate of heating.",
      figures: criticals(),
    },
    { name: 'Formulas', replacedBy: 'The publication, opened and compared number by number.', figures: correlations() },
    {
      name: 'Fires',
      replacedBy: 'A thermocouple in a block of known size in that fire, brought up and held.',
      figures: fires(),
    },
    ...AREAS.map(({ name, folders, replacedBy }) => ({
      name,
      replacedBy,
      figures: scanned.filter(({ file }) => folders.test(file)),
    })),
  ]
  return tables.filter(({ figures }) => figures.length > 0)
}
