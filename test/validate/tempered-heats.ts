import { hrcFromHv } from '#engine/metallurgy/hardness-scales.ts'
import { usualAustenite } from '#engine/metallurgy/jominy-estimate.ts'
import { fullMartensiteHrc } from '#engine/metallurgy/martensite-hardness.ts'
import { temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { checkingTable, number, text } from './data.ts'
import { steelFamily } from './families.ts'
import { steelOfRow } from './steels.ts'
import { temperedRow } from './tempering-rows.ts'

export const temperTimeSeries: Comparison = {
  name: 'Tempered hardness by heat, time and temperature',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'Tempered, from the composition alone',
  aim: 2.5,
  tolerance: 0.1,
  committed: false,
  says: 'The heats of Grange & Baughman are those that the increments by element were fitted to: they do not count in the error. Of Hollomon & Jaffe only the level of the increments, one number from five sources, knows; Penha was not used. Rows under 20 HRC are left out.',
  inside: [0.78, 0.95],
  whyOutside:
    'One of the two sets was read off a later compilation and scatters more than the band: of Hollomon & Jaffe it holds nine in ten.',
  rows: () =>
    checkingTable('temper_time_series.csv').flatMap((row): ComparedRow[] => {
      if (text(row, 'hrc_below_20') === 'yes') return []
      const steel = steelOfRow(row, text(row, 'steel_label'))
      const austenite = usualAustenite(steel.composition)
      const asQuenched = number(row, 'as_quenched_hrc')
      const source = text(row, 'source')
      return [
        temperedRow(
          temperingResponse(steel, austenite),
          { degC: number(row, 'temper_c'), holdH: number(row, 'time_s') / 3600, tempers: 1 },
          Number.isNaN(asQuenched) ? fullMartensiteHrc(austenite.C) : asQuenched,
          {
            label: text(row, 'heat_id'),
            group: source.slice(0, 32),
            family: steelFamily(steel.composition),
            provenance: text(row, 'provenance'),
            source,
            published: number(row, 'hardness_hrc'),
            fitted: /Grange/u.test(source),
          },
        ),
      ]
    }),
}

export const temperedHeats: Comparison = {
  name: 'Tempered hardness of heats (tensile test bars)',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'Tempered, from the composition alone',
  aim: 2.5,
  tolerance: 0.1,
  committed: false,
  says: 'Composition alone, hardened through, one hour by memory of the source. Printed in Vickers and converted; under 20 HRC the scale is only used to compare. Only the level of the increments, one number from five sources, leans on them.',
  rows: () =>
    checkingTable('tempered_hardness_nims.csv').map((row) => {
      const steel = steelOfRow(row, text(row, 'heat_id'))
      const austenite = usualAustenite(steel.composition)
      return temperedRow(
        temperingResponse(steel, austenite),
        { degC: number(row, 'temper_c'), holdH: 1, tempers: 1 },
        fullMartensiteHrc(austenite.C),
        {
          label: text(row, 'heat_id'),
          group: text(row, 'family'),
          family: steelFamily(steel.composition),
          provenance: text(row, 'provenance'),
          source: text(row, 'source'),
          published: hrcFromHv(number(row, 'hardness_hv')),
        },
      )
    }),
}
