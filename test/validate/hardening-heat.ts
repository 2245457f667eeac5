import { austeniteAt } from '#engine/metallurgy/austenite.ts'
import { hardenedHv } from '#engine/metallurgy/hardened-hardness.ts'
import { hrcFromHv } from '#engine/metallurgy/hardness-scales.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { committedTable, number, text } from './data.ts'
import { steelNamed } from './steels.ts'

const ZERO_DEGC_K = 273.15
/** Hold where the source gives none: a salt bath heats high-speed steel for minutes only. */
const USUAL_HOLD_MIN = 5
/** What is left of the annealed structure between the austenite [HV]. */
const ANNEALED_HV = 200

export const hardeningHeat: Comparison = {
  name: 'Hardness as quenched by hardening heat',
  unit: 'HRC',
  aim: 3,
  committed: true,
  says: 'Small pieces, fully quenched: what the heat dissolved, the austenite that is retained and the carbides that are left.',
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
          provenance: text(row, 'provenance'),
          published,
          forecast: hrcFromHv(austenite.fraction * hardHv + (1 - austenite.fraction) * ANNEALED_HV),
        },
      ]
    }),
}
