import { austeniteAt } from '#engine/metallurgy/austenite.ts'
import { grainAfterHeat } from '#engine/metallurgy/grain-growth.ts'
import { hardenedHv } from '#engine/metallurgy/hardened-hardness.ts'
import { hrcFromHv } from '#engine/metallurgy/hardness-scales.ts'
import { structureAsDelivered } from '#engine/metallurgy/prior-structure.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { type CsvRow, committedTable, number, text } from './data.ts'
import { steelFamily } from './families.ts'
import { steelNamed } from './steels.ts'

const ZERO_DEGC_K = 273.15
/** Holds where the source gives none [min]: a salt bath heats high-speed steel for minutes only, tool steel stands longer. */
const USUAL_HOLD_MIN = { 'high-speed': 5, other: 20 } as const
/** What is left of the annealed structure between the austenite [HV]. */
const ANNEALED_HV = 200

/** Bar as it is sold, held and fully quenched. */
function rowOf(row: CsvRow, steelColumn: string, heatColumn: string, hardnessColumn: string, holdMin: number): ComparedRow[] {
  const published = number(row, hardnessColumn)
  const degC = number(row, heatColumn)
  if (Number.isNaN(published) || Number.isNaN(degC)) return []
  const name = text(row, steelColumn)
  const steel = steelNamed(name)
  const family = steelFamily(steel.composition)
  const holdS = 60 * (Number.isNaN(holdMin) ? USUAL_HOLD_MIN[family === 'high-speed' ? family : 'other'] : holdMin)
  const austenite = austeniteAt(steel, degC + ZERO_DEGC_K, holdS, structureAsDelivered(steel))
  const hardHv = hardenedHv(austenite.composition, { bulk: steel.composition })
  const label = `${name} from ${degC} degC, ${text(row, 'quench')}`
  return [
    {
      label,
      group: name,
      family,
      provenance: text(row, 'provenance'),
      source: text(row, 'source'),
      alike: label,
      published,
      forecast: hrcFromHv(austenite.fraction * hardHv + (1 - austenite.fraction) * ANNEALED_HV),
    },
  ]
}

export const hardeningHeat: Comparison = {
  name: 'Hardness as quenched by hardening heat',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'Hardness as quenched, rounds, skin to middle',
  aim: 3,
  tolerance: 0.1,
  committed: true,
  says: 'Small pieces, fully quenched, from bar as it is sold: what the heat dissolved, the austenite that is retained and the carbides that are left; and the as-quenched rows of the tempering tables. As if no sheet of the grade were known; nothing was fitted to these figures. S5 is where sources clash: from 871 °C in water one prints 59 HRC, the maker 64.5.',
  rows: () => [
    ...committedTable('as_quenched_vs_austenitise.csv').flatMap((row) =>
      rowOf(row, 'steel', 'harden_c', 'as_quenched_hrc', number(row, 'hold_min')),
    ),
    // The tables of M2 are those of the other set.
    ...committedTable('temper_curves.csv')
      .filter((row) => text(row, 'temper_as_given') === 'as quenched' && text(row, 'grade') !== 'M2')
      .flatMap((row) => rowOf(row, 'grade', 'harden_c', 'hardness_hrc', Number.NaN)),
  ],
}

/** The middle of "7-8". */
function grainNumberOf(words: string): number {
  const numbers = words.split('-').map(Number)
  return numbers.reduce((sum, each) => sum + each, 0) / numbers.length
}

/** Hold of the specimens, which the card does not give [s]. */
const GRAIN_HOLD_S = 1800
/** Grain at the usual heat, by the card itself. */
const GRAIN_AT_USUAL = 8

export const grainByHeat: Comparison = {
  name: 'Austenite grain by hardening heat',
  unit: 'ASTM number',
  aim: 1,
  tolerance: 0.1,
  committed: true,
  says: 'Grain of 100Cr6 by the heat, half an hour each, as a steel that brings grain 8. The card gives no hold; nothing was fitted.',
  rows: () =>
    committedTable('as_quenched_vs_austenitise.csv').flatMap((row): ComparedRow[] => {
      const words = text(row, 'astm_grain_size')
      if (words === '') return []
      const name = text(row, 'steel')
      const degC = number(row, 'harden_c')
      const { composition } = steelNamed(name)
      const { number: forecast } = grainAfterHeat(composition, GRAIN_AT_USUAL, degC + ZERO_DEGC_K, GRAIN_HOLD_S)
      return [
        {
          label: `${name} from ${degC} degC`,
          group: name,
          family: steelFamily(composition),
          provenance: text(row, 'provenance'),
          source: text(row, 'source'),
          published: grainNumberOf(words),
          forecast,
        },
      ]
    }),
}
