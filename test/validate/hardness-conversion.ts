import { convert, type HardnessScale, scaleLimits } from '#engine/metallurgy/hardness-scales.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { committedTable, number, text } from './data.ts'

const COLUMNS: readonly (readonly [column: string, scale: HardnessScale])[] = [
  ['hv', 'HV'],
  ['hbw', 'HBW'],
  ['hk', 'HK'],
  ['hra', 'HRA'],
  ['hr15n', 'HR15N'],
  ['hr30n', 'HR30N'],
  ['hr45n', 'HR45N'],
  ['tensile_mpa', 'MPa'],
]

export const hardnessConversion: Comparison = {
  name: 'Conversion between hardness scales',
  unit: 'unit of the scale; MPa / 10',
  arithmetic: true,
  aim: 1,
  tolerance: 0.02,
  committed: true,
  says: 'From HRC to each scale of the table, and from HV back to HRC. The program reads the same table: this says that it reads it rightly.',
  inside: [0.98, 1],
  rows: () =>
    committedTable('hardness_conversion.csv').flatMap((row): ComparedRow[] => {
      const hrc = number(row, 'hrc')
      const provenance = text(row, 'provenance')
      const source = text(row, 'source')
      const forward = COLUMNS.flatMap(([column, scale]): ComparedRow[] => {
        const published = number(row, column)
        if (Number.isNaN(published)) return []
        const { value, low, high } = convert(hrc, 'HRC', scale)
        const per = scale === 'MPa' ? 10 : 1
        return [
          {
            label: `${hrc} HRC`,
            group: `HRC to ${scale}`,
            provenance,
            source,
            published: published / per,
            forecast: value / per,
            low: low / per,
            high: high / per,
          },
        ]
      })
      const hv = number(row, 'hv')
      const [least, most] = scaleLimits('HV')
      if (hv < least || hv > most) return forward
      const back = convert(hv, 'HV', 'HRC')
      return [
        ...forward,
        {
          label: `${hv} HV`,
          group: 'HV to HRC',
          provenance,
          source,
          published: hrc,
          forecast: back.value,
          low: back.low,
          high: back.high,
        },
      ]
    }),
}
