import { exp } from '#engine/arithmetic/elementary.ts'
import { randomStream } from '#engine/arithmetic/random.ts'
import type { Steel } from '#engine/materials/steel.ts'
import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { usualAustenite } from '#engine/metallurgy/jominy-estimate.ts'
import { temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import { BATHS, band, cooled, membersOf } from './as-quenched-rounds.ts'
import type { ComparedRow, Comparison } from './comparison.ts'
import { committedTable, number, text } from './data.ts'
import { steelFamily } from './families.ts'
import { steelNamed } from './steels.ts'
import { allTablesOf, parameterOf, printedHrc, samePrint, temperingRepeats, ungraded } from './tempering-rows.ts'

/** Hold that the old tables of constructional steel mean [h]. */
const USUAL_HOLD_H = 1
/** Where a tensile bar is cut from a round and a stockist's figure is read, as a share of the radius. */
const READ_AT = 0.5

/** Rounds of every size and depth, quenched and then tempered; `knows` gives the steel and the tables that the forecast may not look at. */
function roundRows(
  knows: (steel: Steel, caseId: string) => { readonly steel: Steel; readonly without: readonly string[] } | undefined,
): ComparedRow[] {
  const quenched = new Map<string, ReturnType<typeof cooled>>()
  const members = new Map<string, ReturnType<typeof membersOf>>()
  return committedTable('tempered_rounds.csv').flatMap((row): ComparedRow[] => {
    const name = text(row, 'grade')
    const quench = text(row, 'quench')
    const acrossMm = number(row, 'bar_mm')
    const caseId = text(row, 'case_id')
    const degC = number(row, 'temper_c')
    const known = knows(steelNamed(name, text(row, 'composition')), caseId)
    if (known === undefined) return []
    const { steel, without } = known
    const key = `${name} ${quench} ${acrossMm}`
    const found = quenched.get(key) ?? cooled(steel, BATHS[quench]!, acrossMm / 1000)
    quenched.set(key, found)
    const others = members.get(name) ?? membersOf(steel, found.fromK)
    members.set(name, others)
    const { lnBase, perSigma } = found.lnAt(READ_AT)
    const tempering = temperingResponse(steel, usualAustenite(steel.composition), { without })
    const parameterK = parameterOf(tempering.constant, { degC, holdH: USUAL_HOLD_H, tempers: 1 })
    const softened = ({ response }: Pick<(typeof others)[number], 'response'>, coolingS: number, spot: number): number => {
      const quenchedHrc = hrcFromHv(response.quenchedHv(coolingS)) + spot * response.scatterHrc
      return hrcFromHv(tempering.temperedHv(hvFromHrc(quenchedHrc), response.martensiteFraction(coolingS), parameterK))
    }
    const random = randomStream(11)
    return [
      {
        label: `${caseId} ${acrossMm} mm, ${degC} degC`,
        group: name,
        family: steelFamily(steel.composition),
        provenance: text(row, 'provenance'),
        source: text(row, 'source'),
        published: printedHrc(row),
        forecast: softened(found, exp(lnBase), 0),
        ...band(
          others.map((other) => {
            const coolingS = exp(lnBase + other.film * perSigma)
            const scatter = random.normal() * tempering.scatterHrc * other.response.martensiteFraction(coolingS)
            return softened(other, coolingS, other.spot) + scatter
          }),
        ),
      },
    ]
  })
}

const WHOLE =
  'Rounds of 13 to 152 mm, those that do not harden through among them: quench and temper together, half way to the middle, one hour. Five rows of 1030 and three of 1050 carry a Brinell that does not go with the strength beside it, and are kept. How fine pearlite softens was read off seven rows of 1080 and 1040, and the width of the band beside a table off these rounds.'

export const roundsFromOthers: Comparison = {
  name: 'Quenched and tempered rounds, from the other tables of the grade',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'Quenched and tempered rounds',
  aim: 3,
  tolerance: 0.1,
  committed: true,
  says: `${WHOLE} The table itself and others of its print are left out; grades without another do not appear.`,
  rows: () =>
    roundRows((steel, caseId) => {
      const without = samePrint(steel, caseId)
      return temperingResponse(steel, usualAustenite(steel.composition), { without }).basis === 'model'
        ? undefined
        : { steel, without }
    }),
  repeats: () => temperingRepeats(committedTable('tempered_rounds.csv').map((row) => text(row, 'grade'))),
}

export const roundsFromComposition: Comparison = {
  name: 'Quenched and tempered rounds, from composition alone',
  unit: 'HRC',
  scale: 'HRC',
  wish: 'Quenched and tempered rounds',
  aim: 3,
  tolerance: 0.1,
  committed: true,
  says: `${WHOLE} As if no table of the grade were known.`,
  inside: [0.7, 0.95],
  whyMissed:
    'Plain carbon steel, which is martensite at the skin of a 25 mm bar and pearlite inside: where in the bar the figure was read decides, and the tables do not say. Eight rows of 1030 and 1050 are a hardened skin beside the strength of a soft inside. Low-alloy steel by itself meets the aim; sources on one steel differ by more than it.',
  whyOutside: 'The same rows: a band for one place does not hold figures of another. Low-alloy steel by itself is held.',
  rows: () => roundRows((steel) => ({ steel: ungraded(steel), without: allTablesOf(steel) })),
  repeats: () => temperingRepeats(committedTable('tempered_rounds.csv').map((row) => text(row, 'grade'))),
}
