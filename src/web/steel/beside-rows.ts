import type { SteelAnswer } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { criticalFacts, type Fact, hardnessFacts, roundDegrees, treatmentFacts } from './steel-facts.ts'

export interface BesideRow {
  readonly what: string
  readonly first: string
  readonly second: string
}

/** The facts that decide between two steels, line by line; a fact that only one has leaves the other side empty. */
export function besideRows(first: SteelAnswer, second: SteelAnswer, units: System): BesideRow[] {
  const facts = (steel: SteelAnswer): readonly Fact[] => [
    ...treatmentFacts(steel, units),
    ...hardnessFacts(steel, units),
    ...criticalFacts(steel, units).filter(({ what }) => what.includes('Ms') || what.includes('Ac1')),
    ...temperAt(steel, units),
  ]
  const [a, b] = [facts(first), facts(second)]
  const whats = [...new Set([...a, ...b].map(({ what }) => what))]
  const figure = (list: readonly Fact[], what: string): string => list.find((fact) => fact.what === what)?.figure ?? ''
  return whats.map((what) => ({ what, first: figure(a, what), second: figure(b, what) }))
}

/** Tempers that kitchen ovens and small furnaces hold [degC]. */
const TEMPERS_C = [205, 260, 425]

function temperAt({ temper }: SteelAnswer, units: System): Fact[] {
  return TEMPERS_C.flatMap((wanted) => {
    const row = temper.find(({ temperature_C }) => Math.abs(temperature_C - wanted) <= 12)
    if (row === undefined) return []
    return [
      {
        what: `Tempered near ${roundDegrees(wanted, units)}`,
        figure: `${Math.round(row.hardness_HRC.value)} HRC`,
        from: row.hardness_HRC.source,
      },
    ]
  })
}
