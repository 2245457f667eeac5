import { idealDiameterM } from '#engine/metallurgy/ideal-diameter.ts'
import { jominyEstimate } from '#engine/metallurgy/jominy-estimate.ts'
import { fullMartensiteHrc, partialMartensiteHrc } from '#engine/metallurgy/martensite-hardness.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { committedTable, number, text } from './data.ts'
import { steelFamily } from './families.ts'
import { steelNamed, steelOfRow } from './steels.ts'

export const idealDiameter: Comparison = {
  name: 'Ideal diameter from composition',
  unit: 'mm',
  scale: 'mm',
  arithmetic: true,
  aim: 0.2,
  tolerance: 0.05,
  committed: true,
  says: 'Worked examples of the ASTM A255 calculation, which the program itself uses; the last digit of the factors is rounded in the source.',
  rows: () =>
    committedTable('hardenability_di_cases.csv').map((row) => ({
      label: text(row, 'label'),
      group: 'A255',
      provenance: text(row, 'provenance'),
      source: text(row, 'source'),
      published: number(row, 'di_mm'),
      forecast: 1000 * idealDiameterM(steelOfRow(row, text(row, 'label')).composition, number(row, 'grain_size')),
    })),
}

/** Middle of each published band against the curve of the typical composition; the two edges together judge the program's own band. */
export const jominyBands: Comparison = {
  name: 'Hardenability bands, middle',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'End-quench bar, middle of the published band',
  aim: 2.5,
  tolerance: 0.1,
  committed: true,
  says: 'Typical composition of the grade, grain size 7, against the middle of the published band; places where the standard gives only one edge are left out. HH and HL are the harder and the softer part of one band, kept although a typical heat is meant to miss their middles. Three bands in four are recalled and not checked against the standard.',
  inside: [0.9, 1],
  whyOutside:
    'As it should: the band is to hold nine heats in ten, and the middle of a standard is no heat but the middle of all, which lies inside nearly always. Its edges are held to by themselves.',
  rows: () =>
    committedTable('jominy_bands.csv').flatMap((row): ComparedRow[] => {
      const least = number(row, 'hrc_min')
      const most = number(row, 'hrc_max')
      if (Number.isNaN(least) || Number.isNaN(most)) return []
      const name = text(row, 'steel')
      const steel = steelNamed(name)
      const estimate = jominyEstimate(steel, number(row, 'distance_mm') / 1000)
      return [
        {
          label: `${name} at ${number(row, 'distance_mm')} mm`,
          group: name,
          family: steelFamily(steel.composition),
          provenance: text(row, 'provenance'),
          source: text(row, 'source'),
          published: (least + most) / 2,
          forecast: estimate.value,
          low: estimate.low,
          high: estimate.high,
        },
      ]
    }),
}

/** Edge of each published band against the edge of the program's. */
export const jominyEdges: Comparison = {
  name: 'Hardenability bands, edges',
  unit: 'HRC',
  scale: 'HRC',
  aim: 2.5,
  tolerance: 0.1,
  committed: true,
  says: "The program's band of nine heats in ten against the edges that the standard allows, which hold nearly all heats. HH and HL, which narrow the band by choice of heats, are left out.",
  rows: () =>
    committedTable('jominy_bands.csv').flatMap((row): ComparedRow[] => {
      const name = text(row, 'steel')
      // HH and HL narrow the band by choice of heats: a typical heat says nothing about their edges.
      if (/\+H[HL]$/.test(name)) return []
      const steel = steelNamed(name)
      const estimate = jominyEstimate(steel, number(row, 'distance_mm') / 1000)
      const edges = [
        ['lower', number(row, 'hrc_min'), estimate.low],
        ['upper', number(row, 'hrc_max'), estimate.high],
      ] as const
      return edges.flatMap(([edge, published, forecast]) =>
        Number.isNaN(published)
          ? []
          : [
              {
                label: `${name} ${edge} at ${number(row, 'distance_mm')} mm`,
                group: `${edge} edge`,
                family: steelFamily(steel.composition),
                provenance: text(row, 'provenance'),
                source: text(row, 'source'),
                published,
                forecast,
              },
            ],
      )
    }),
}

export const martensiteHardness: Comparison = {
  name: 'Hardness of martensite by carbon and share',
  unit: 'HRC',
  scale: 'HRC',
  arithmetic: true,
  aim: 1,
  tolerance: 0.05,
  committed: true,
  says: 'The computed rows are the A255 polynomials that the program itself uses: they check the arithmetic. The recalled ones are a table after Hodge & Orehoski.',
  rows: () =>
    committedTable('martensite_hardness.csv').map((row) => {
      const carbon = number(row, 'carbon_pct')
      const share = text(row, 'martensite_pct')
      const initial = share.startsWith('initial')
      return {
        label: `${carbon} C, ${initial ? 'full' : `${share} %`} martensite`,
        group: initial ? 'full' : `${share} % martensite`,
        provenance: text(row, 'provenance'),
        source: text(row, 'source'),
        alike: `${carbon} C, ${share} % martensite`,
        published: number(row, 'hardness_hrc'),
        forecast: initial
          ? fullMartensiteHrc(carbon)
          : partialMartensiteHrc(carbon, share === '99' ? 0.999 : Number(share) / 100),
      }
    }),
}
