import { analysisProblems, steelOfAnalysis } from '#engine/materials/analysed-steel.ts'
import { steelOf } from '#engine/materials/grade-heats.ts'
import type { Steel } from '#engine/materials/steel.ts'
import { findSteel } from '#engine/materials/steel-names.ts'
import { shown } from '#units/reading.ts'
import type { Assumption } from './assumption.ts'
import { fieldPath, type Problem } from './problems.ts'
import { isFields, taken } from './schema-problems.ts'
import { steelSchema, type TypedSteel } from './steel-schema.ts'

const MEND = 'write { grade: S7 } or { analysis: { C: 0.40, Mn: 0.85, ... } }'

export interface SteelTaken {
  readonly steel: Steel
  readonly typed: TypedSteel
}

/** The steel of a job, or undefined with its problems added. */
export function takeSteel(
  input: unknown,
  outerGrainSize: number | undefined,
  problems: Problem[],
  assumptions: Assumption[],
): SteelTaken | undefined {
  if (input === undefined || input === null) {
    problems.push({ field: 'steel', says: `missing: ${MEND}` })
    return undefined
  }
  if (!isFields(input)) {
    problems.push({ field: 'steel', says: `${shown(input)}: the steel stands in a group of fields; ${MEND}` })
    return undefined
  }
  const known = elementProblems(input, problems)
  const typed = taken(steelSchema, known ? input : { ...input, analysis: undefined }, 'steel', problems)
  if (typed === undefined && typeof input.grade === 'string') gradeNamed(input.grade.slice(0, 100), {}, problems, [])
  if (typed === undefined || !known) return undefined
  const given = (['grade', 'analysis', 'unknown'] as const).filter((key) => typed[key] !== undefined)
  if (given.length !== 1) {
    const says =
      given.length === 0 ? 'no grade, analysis or evidence' : `${given.join(' and ')} together: only one of them can hold`
    problems.push({ field: 'steel', says: `${says}; ${MEND}` })
    return undefined
  }
  if (typed.grainSize !== undefined && outerGrainSize !== undefined && typed.grainSize !== outerGrainSize) {
    problems.push({ field: 'grainSize', says: `${outerGrainSize} here and ${typed.grainSize} in the steel; write it once` })
    return undefined
  }
  const grainSize = typed.grainSize ?? outerGrainSize
  const options = grainSize === undefined ? {} : { grainSize }
  if (grainSize === undefined)
    assumptions.push({ says: 'Grain size 7 (ASTM E112).', because: 'none was given; it is the usual grain at the usual heat' })
  if (typed.unknown !== undefined) {
    problems.push({
      field: 'steel.unknown',
      says: 'telling an unknown bar from its evidence is not built yet, so nothing can be forecast for it; name the grade it is believed to be, or give an analysis',
    })
    return undefined
  }
  if (typed.analysis !== undefined) {
    const analysis = Object.fromEntries(Object.entries(typed.analysis).filter(([, share]) => share !== undefined))
    return { steel: steelOfAnalysis(analysis, options), typed }
  }
  const steel = gradeNamed(typed.grade ?? '', options, problems, assumptions)
  return steel === undefined ? undefined : { steel, typed }
}

/** Says what is wrong with an analysis; true when it can stand. */
function elementProblems(input: Record<string, unknown>, problems: Problem[]): boolean {
  const { analysis } = input
  if (!isFields(analysis)) return true
  const found = analysisProblems(Object.fromEntries(Object.entries(analysis).filter(([, share]) => share !== null)))
  for (const { field, says } of found)
    problems.push({ field: fieldPath('steel.analysis', field === '' ? [] : [field]), says: says.slice(0, 300) })
  return found.length === 0
}

function gradeNamed(
  name: string,
  options: { readonly grainSize?: number },
  problems: Problem[],
  assumptions: Assumption[],
): Steel | undefined {
  const match = findSteel(name)
  if (!match.found) {
    const near = match.nearest.map((each) => each.name)
    const mend = near.length === 0 ? 'write a grade as S7, O1 or 4140, or its analysis' : `did you mean ${near.join(', ')}?`
    problems.push({ field: 'steel.grade', says: `${shown(name)}: no steel that I know by this name; ${mend}` })
    return undefined
  }
  if (match.matched.near)
    assumptions.push({
      says: `${name} is taken as ${match.grade.id}.`,
      because: `they are near equivalents, not the same steel${match.others.length === 0 ? '' : `; ${match.others.map(({ grade }) => grade.id).join(', ')} stands near too`}`,
    })
  else if (match.matched.warning !== undefined)
    assumptions.push({ says: `${name} is taken as ${match.grade.id}.`, because: match.matched.warning })
  return steelOf(match.grade, options)
}
