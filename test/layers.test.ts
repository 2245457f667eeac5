import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'

const root = join(import.meta.dirname, '..')
let copy = ''

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'layers-'))
  for (const each of ['biome.json', 'package.json', 'tsconfig.base.json', 'tsconfig.json'])
    cpSync(join(root, each), join(copy, each))
  cpSync(join(root, 'src'), join(copy, 'src'), { recursive: true })
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'))
})
afterAll(() => rmSync(copy, { recursive: true, force: true }))

/** Lints one planted file in the copy; returns what Biome printed and whether it refused. */
function lint(path: string, text: string): { refused: boolean; printed: string } {
  writeFileSync(join(copy, path), text)
  const run = spawnSync(join(root, 'node_modules', '.bin', 'biome'), ['lint', path], { cwd: copy, encoding: 'utf8' })
  rmSync(join(copy, path))
  return { refused: run.status !== 0, printed: run.stdout + run.stderr }
}

const faults: readonly (readonly [fault: string, path: string, text: string, rule: string])[] = [
  [
    'a lower engine folder reaches up',
    'src/engine/geometry/planted.ts',
    "import '#engine/simulation/job.ts'\n",
    'noRestrictedImports',
  ],
  [
    'metallurgy reaches conduction',
    'src/engine/metallurgy/planted.ts',
    "import '#engine/conduction/surroundings.ts'\n",
    'noRestrictedImports',
  ],
  [
    'metallurgy reaches the kinetics that stand on it',
    'src/engine/metallurgy/planted.ts',
    "import '#engine/kinetics/transformation.ts'\n",
    'noRestrictedImports',
  ],
  [
    'the kinetics reach the simulation',
    'src/engine/kinetics/planted.ts',
    "import '#engine/simulation/job.ts'\n",
    'noRestrictedImports',
  ],
  [
    'the skin reaches the simulation',
    'src/engine/skin/planted.ts',
    "import '#engine/simulation/job.ts'\n",
    'noRestrictedImports',
  ],
  [
    'a bath reaches the skin',
    'src/engine/surface-heat/planted.ts',
    "import '#engine/skin/fired-skin.ts'\n",
    'noRestrictedImports',
  ],
  ['the engine knows a job file', 'src/engine/findings/planted.ts', "import '#contract/answers.ts'\n", 'noRestrictedImports'],
  ['units import the engine', 'src/units/planted.ts', "import '#engine/arithmetic/table.ts'\n", 'noRestrictedImports'],
  ['a page looks inside the engine', 'src/report/planted.ts', "import '#engine/simulation/job.ts'\n", 'noRestrictedImports'],
  ['the contract knows a command', 'src/contract/planted.ts', "import '#cli/main.ts'\n", 'noRestrictedImports'],
  [
    'a crossing hidden in a relative path',
    'src/engine/ensemble/planted.ts',
    "import '../simulation/job.ts'\n",
    'noRestrictedImports',
  ],
  [
    'the engine reads a file',
    'src/engine/materials/planted.ts',
    "import { readFileSync } from 'node:fs'\nexport const x = readFileSync\n",
    'noNodejsModules',
  ],
  ['the engine reads the clock', 'src/engine/simulation/planted.ts', 'export const x = Date.now()\n', 'noRestrictedGlobals'],
  ['the page runs the engine itself', 'src/web/planted.ts', "import '#engine/simulation/job.ts'\n", 'noRestrictedImports'],
  ['a view reads the metallurgy', 'src/web/steel/planted.tsx', "import '#engine/metallurgy/ac.ts'\n", 'noRestrictedImports'],
  ['the page knows a command', 'src/web/carry/planted.ts', "import '#cli/files.ts'\n", 'noRestrictedImports'],
  ['the page knows its server', 'src/web/app/planted.tsx', "import '#server/serve.ts'\n", 'noRestrictedImports'],
  [
    'a crossing of the page hidden in a relative path',
    'src/web/app/planted.ts',
    "import '../bench/bench.ts'\n",
    'noRestrictedImports',
  ],
  ['the server works something out', 'src/server/planted.ts', "import '#engine/simulation/job.ts'\n", 'noRestrictedImports'],
  ['the server knows the page inside', 'src/server/planted.ts', "import '#web/main.tsx'\n", 'noRestrictedImports'],
  ['a command knows the page', 'src/cli/planted.ts', "import '#web/bench/bench.ts'\n", 'noRestrictedImports'],
  ['a command looks inside the server', 'src/cli/planted.ts', "import '#server/page-server.ts'\n", 'noRestrictedImports'],
  ['the contract knows the page', 'src/contract/planted.ts', "import '#web/job/job-text.ts'\n", 'noRestrictedImports'],
  ['a library that package.json does not name', 'src/contract/planted.ts', "import 'lodash'\n", 'noUndeclaredDependencies'],
]

describe('a planted fault is refused', () => {
  test.each(faults)('%s', (_, path, text, rule) => {
    const { refused, printed } = lint(path, text)
    expect(printed).toContain(rule)
    expect(refused).toBe(true)
  })

  test('a file without a fault passes, so the refusals above mean something', () => {
    expect(
      lint(
        'src/engine/simulation/planted.ts',
        "import type { Profile } from '#engine/geometry/profile.ts'\nexport type Shape = Profile\n",
      ).refused,
    ).toBe(false)
  })

  test.each([
    ['src/web/planted.ts', "import { outlineOf } from '#engine/geometry/outline.ts'\nexport const shape = outlineOf\n"],
    ['src/cli/planted.ts', "import { serve } from '#server/serve.ts'\nexport const page = serve\n"],
  ])('%s: what is allowed passes', (path, text) => {
    expect(lint(path, text).refused).toBe(false)
  })

  test('the engine does not compile against a page or against Node', () => {
    writeFileSync(
      join(copy, 'src/engine/simulation/planted.ts'),
      'export const a = document.title\nexport const b = process.pid\n',
    )
    const run = spawnSync(join(root, 'node_modules', '.bin', 'tsc'), ['-p', 'src/engine/tsconfig.json', '--noEmit'], {
      cwd: copy,
      encoding: 'utf8',
    })
    rmSync(join(copy, 'src/engine/simulation/planted.ts'))
    expect(run.stdout).toContain("Cannot find name 'document'")
    expect(run.stdout).toContain("Cannot find name 'process'")
  })
})

test('the engine takes exp, ln, pow and chance from its own modules', () => {
  const sources = readdirSync(join(root, 'src/engine'), { recursive: true, encoding: 'utf8' }).filter(
    (name) => name.endsWith('.ts') && !name.endsWith('.test.ts'),
  )
  expect(sources.length).toBeGreaterThan(50)
  const strays = sources.filter((name) =>
    /Math\.(random|exp|log|log10|log2|pow|expm1|log1p|cbrt|sinh|cosh|tanh)\b|\*\*/.test(code(name)),
  )
  expect(strays).toEqual([])
})

/** Source without its comments. */
function code(name: string): string {
  return readFileSync(join(root, 'src/engine', name), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')
}
