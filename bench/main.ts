import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { InputProblems } from '#contract/problems.ts'
import type { MeshGrade } from '#engine/geometry/mesh.ts'
import { solveThermalCase } from './solve-case.ts'
import { runSuite } from './suite.ts'
import { parseThermalCase } from './thermal-case.ts'
import { solveOnTwoMeshes } from './two-meshes.ts'
import { sayForecasts } from './whole-forecasts.ts'

const GRADES = ['sketch', 'draft', 'normal', 'fine', 'extrapolated', 'extrapolated-fine'] as const
const USAGE = `npm run bench                                    measure and write docs/bench.md
npm run bench -- --forecasts                     measure whole forecasts only, on standard output
npm run bench -- --case FILE --probes            solve one case; JSON on standard output
    --grade sketch|draft|normal|fine             one mesh
            extrapolated|extrapolated-fine       carried on from two
                                                 (unless said: extrapolated for a bath, normal for a fire)
    --tolerance K                                error allowed in a step (unless said: 0.3 for a bath, 0.5 for a fire)
`

/** One case to JSON; gives the exit code. */
function solveFile(file: string, asked: string | undefined, tolerance: string | undefined): number {
  if (asked !== undefined && !GRADES.some((each) => each === asked))
    throw new InputProblems([{ field: '--grade', says: `${asked}: one of ${GRADES.join(', ')}` }])
  const given = parseThermalCase(JSON.parse(readFileSync(file, 'utf8')))
  // A fire is slow and smooth: there a second mesh mends hundredths of a kelvin.
  const grade = asked ?? (given.kind === 'fire' ? 'normal' : 'extrapolated')
  const toleranceK = tolerance === undefined ? (given.kind === 'fire' ? 0.5 : 0.3) : Number(tolerance)
  if (!(toleranceK > 0)) throw new InputProblems([{ field: '--tolerance', says: `${tolerance}: a number of kelvin above 0` }])
  const answer =
    grade === 'extrapolated' || grade === 'extrapolated-fine'
      ? solveOnTwoMeshes(given, toleranceK, grade)
      : solveThermalCase(given, { grade: grade as MeshGrade, toleranceK })
  process.stdout.write(`${JSON.stringify(answer, null, 1)}\n`)
  return 0
}

/** Exit 0: answered. 1: the program failed. 2: the input is at fault, said on standard error. */
function main(): number {
  const { values } = parseArgs({
    options: {
      case: { type: 'string' },
      probes: { type: 'boolean', default: false },
      grade: { type: 'string' },
      tolerance: { type: 'string' },
      forecasts: { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  })
  if (values.help) {
    process.stdout.write(USAGE)
    return 0
  }
  if (values.forecasts) {
    sayForecasts((line) => process.stdout.write(`${line}\n`))
    return 0
  }
  if (values.case === undefined) return runSuite()
  return solveFile(values.case, values.grade, values.tolerance)
}

/** Wrong options, a file that can't be read or isn't JSON, a case without sense: the caller's to mend. */
function isInputFault(error: unknown): error is Error {
  if (error instanceof InputProblems || error instanceof RangeError || error instanceof SyntaxError) return true
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  return code.startsWith('ERR_PARSE_ARGS') || ['ENOENT', 'EISDIR', 'EACCES'].includes(code)
}

try {
  process.exitCode = main()
} catch (error) {
  const atFault = isInputFault(error)
  process.stderr.write(`${atFault ? error.message : error instanceof Error ? error.stack : String(error)}\n`)
  process.exitCode = atFault ? 2 : 1
}
