import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import type { MeshGrade } from '#engine/geometry/mesh.ts'
import { solveThermalCase } from './solve-case.ts'
import { parseThermalCase } from './thermal-case.ts'
import { runSuite } from './suite.ts'

const { values } = parseArgs({
  options: {
    case: { type: 'string' },
    probes: { type: 'boolean', default: false },
    grade: { type: 'string' },
    tolerance: { type: 'string' },
    quick: { type: 'boolean', default: false },
  },
})

if (values.case === undefined) await runSuite()
else {
  const given = parseThermalCase(JSON.parse(readFileSync(values.case, 'utf8')))
  const answer = solveThermalCase(given, {
    grade: (values.grade ?? 'fine') as MeshGrade,
    toleranceK: values.tolerance === undefined ? 0.1 : Number(values.tolerance),
  })
  process.stdout.write(`${JSON.stringify(answer, null, 1)}\n`)
}
