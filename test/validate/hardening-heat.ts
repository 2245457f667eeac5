import { austeniteAt } from '#engine/metallurgy/austenite.ts'
import { hardenedHv } from '#engine/metallurgy/hardened-hardness.ts'
import { hrcFromHv } from '#engine/metallurgy/hardness-scales.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { committedTable, number, text } from './data.ts'
import { steelFamily } from './families.ts'
import { steelNamed } from './steels.ts'

const ZERO_DEGC_K = 273.15
/** Hold where the source gives none: a salt bath heats high-speed steel for minutes only. */
const USUAL_HOLD_MIN = 5
/** What is left of the annealed structure between the austenite [HV]. */
const ANNEALED_HV = 200

export const hardeningHeat: Comparison = {
  name: 'Hardness as quenched by hardening heat',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'Hardness as quenched, rounds, skin to middle',
  aim: 3,
  tolerance: 0.1,
  committed: true,
  says: 'Small pieces, fully quenched: what the heat dissolved, the austenite that is retained and the carbides that are left. As if no sheet of the grade were known; nothing was fitted to these figures.',
  whyMissed:
    'S5 alone: from 816 °C the table prints 50 HRC in oil, from 954 °C 61, where steel of 0.55 % carbon that is all austenite gives 63. Coarse carbide that takes its time is meant, and neither structure nor section is printed. M2 is met within 1 HRC.',
  rows: () =>
    committedTable('as_quenched_vs_austenitise.csv').flatMap((row): ComparedRow[] => {
      const published = number(row, 'as_quenched_hrc')
      const degC = number(row, 'harden_c')
      if (Number.isNaN(published) || Number.isNaN(degC)) return []
      const name = text(row, 'steel')
      const steel = steelNamed(name)
      const holdMin = number(row, 'hold_min')
      const austenite = austeniteAt(steel, degC + ZERO_DEGC_K, 60 * (Number.isNaN(holdMin) ? USUAL_HOLD_MIN : holdMin))
      const hardHv = hardenedHv(austenite.composition, { bulk: steel.composition })
      return [
        {
          label: `${name} from ${degC} degC, ${text(row, 'quench')}`,
          group: name,
          family: steelFamily(steel.composition),
          provenance: text(row, 'provenance'),
          source: text(row, 'source'),
          alike: `${name} from ${degC} degC, ${text(row, 'quench')}`,
          published,
          forecast: hrcFromHv(austenite.fraction * hardHv + (1 - austenite.fraction) * ANNEALED_HV),
        },
      ]
    }),
}
