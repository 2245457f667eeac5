import { shown } from '#units/reading.ts'
import type { Problem } from './problems.ts'
import type { TypedStep } from './process-schema.ts'

/** What the piece is after a step: `unknown` follows a step that could not be read. */
type Piece = 'cold' | 'hot' | 'quenched' | 'unknown'

/** A walk from the fire to the bath longer than this is none [s]: common practice, no source. */
const LONGEST_WALK_S = 600

/** Steps that cannot follow what went before: nothing is quenched that was not heated, nothing tempered that is still red. */
export function orderProblems(steps: readonly (TypedStep | undefined)[]): Problem[] {
  const problems: Problem[] = []
  let piece: Piece = 'cold'
  for (const [i, step] of steps.entries()) {
    const wrong = (says: string): void => {
      problems.push({ field: `process[${i}]`, says })
    }
    switch (step?.do) {
      case undefined:
        piece = 'unknown'
        break
      case 'normalise':
      case 'anneal':
      case 'stress-relieve':
        piece = 'cold'
        break
      case 'heat':
        piece = 'hot'
        break
      case 'carry':
        if (piece === 'cold') wrong('carry: nothing has been heated; put a heat before it')
        // After the quench it may lie as long as somebody leaves it.
        if (piece === 'hot' && step.for.durationS > LONGEST_WALK_S)
          problems.push({
            field: `process[${i}].for`,
            says: `${shown(step.for.typed)}: a piece carried for more than 10 min is cold; write quench in: still air`,
          })
        break
      case 'quench':
        if (piece === 'cold') wrong('quench: nothing has been heated; put a heat before it')
        piece = 'quenched'
        break
      case 'run-colours':
        if (steps[i - 1] !== undefined && steps[i - 1]?.do !== 'quench')
          wrong('run-colours: the colours run from the heat that a quench leaves in the body; put it straight after the quench')
        else if (i === 0) wrong('run-colours: nothing has been quenched; put a heat and a quench before it')
        piece = 'cold'
        break
      case 'temper':
        if (piece === 'hot')
          wrong('temper: the piece is still hot from the heat; put a quench between them (in: still air is one)')
        piece = 'cold'
        break
      case 'warm-bath':
        if (piece === 'hot') wrong('warm-bath: the hot piece would wait for five minutes; warm the bath before the heat')
        break
    }
  }
  if (piece === 'hot')
    problems.push({
      field: `process[${steps.length - 1}]`,
      says: 'the piece is left hot; say how it cools, as { do: quench, in: still air }',
    })
  return problems
}
