import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { figureSchema, forecastSchema, routesSchema, steelAnswerSchema } from '#contract/index.ts'

const root = join(import.meta.dirname, '..')
const user = mkdtempSync(join(tmpdir(), 'library-user-'))
const installed = join(user, 'node_modules', 'quenchwright')

/** A short bar of plain steel, one oven, one bath: as little as a job can be and still be hardened and drawn. */
const USER_PROGRAM = `
import { convertHardness, describeSteel, forecast, InputProblems, proposeRoutes } from 'quenchwright'

const job = {
  piece: 'short bar',
  steel: { analysis: { C: 0.84, Mn: 0.75, Si: 0.22 } },
  profile: [{ shape: 'round', across: '10 mm', length: '40 mm' }],
  zones: [{ name: 'all', from: '5 mm', to: '35 mm', aim: '50..60 HRC' }],
  shop: {
    fires: [{ name: 'gas forge', kind: 'gas' }],
    baths: [{ name: 'oil drum', kind: 'fast oil', volume: '20 L', depth: '300 mm', temperature: '50 °C' }],
    ovens: [{ name: 'oven', max: '600 °C', swing: '5 °C' }],
  },
}
const process = [
  { do: 'heat', in: 'gas forge', to: '815 °C', hold: '5 min' },
  { do: 'quench', in: 'oil drum', depth: 'whole', for: '2 min', agitation: 'moderate' },
  { do: 'temper', in: 'oven', at: '230 °C', hold: '1 h' },
]
let refusal
try {
  forecast({ ...job, profile: [{ shape: 'round', across: 'thick', length: '40 mm' }], process })
} catch (error) {
  refusal = { isInputProblems: error instanceof InputProblems, fields: error.problems.map(({ field }) => field) }
}
console.log(JSON.stringify({
  hardness: convertHardness('52 HRC', 'HV'),
  steel: describeSteel('O1'),
  forecast: forecast({ ...job, process }, { grade: 'draft', members: 40 }),
  routes: proposeRoutes(job, { members: 40 }),
  refusal,
}))
`

/** Runs plain node where the package is installed: no loader, no conditions, nothing of this tree's settings. */
function node(...args: string[]): string {
  const { NODE_OPTIONS: _, ...env } = process.env
  return execFileSync(process.execPath, args, { cwd: user, env, encoding: 'utf8', maxBuffer: 64e6 })
}

beforeAll(() => {
  execFileSync(process.execPath, [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '-b'], { cwd: root })
  const packed = execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--offline', '--pack-destination', user], {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  })
  const [{ filename }] = JSON.parse(packed) as [{ filename: string }]
  mkdirSync(installed, { recursive: true })
  execFileSync('tar', ['-xzf', join(user, filename), '-C', installed, '--strip-components=1'])
  const { dependencies } = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8')) as { dependencies: object }
  for (const name of Object.keys(dependencies)) {
    const link = join(user, 'node_modules', name)
    mkdirSync(dirname(link), { recursive: true })
    symlinkSync(join(root, 'node_modules', name), link)
  }
  writeFileSync(join(user, 'use.mjs'), USER_PROGRAM)
}, 60_000)

afterAll(() => rmSync(user, { recursive: true }))

describe('the package as another program has it', () => {
  test('answers every question of the contract', () => {
    const answers = JSON.parse(node('use.mjs'))
    expect(figureSchema.parse(answers.hardness).value).toBeCloseTo(544, -1)
    const steel = steelAnswerSchema.parse(answers.steel)
    expect(steel.name).toMatch(/O1/)
    expect(steel.critical.ms_C.value).toBeLessThan(steel.critical.ac1_C.value)

    const cast = forecastSchema.parse(answers.forecast)
    expect(cast.zones).toHaveLength(1)
    const [zone] = cast.zones
    expect(zone?.quenched_HRC.value).toBeGreaterThan(60)
    expect(zone?.tempered_HRC.value).toBeLessThan(zone?.quenched_HRC.value ?? 0)
    expect(zone?.tempered_HRC.value).toBeGreaterThan(52)

    const plan = routesSchema.parse(answers.routes)
    expect(plan.routes[0]?.chance).toBeGreaterThan(0.2)
    expect(plan.routes[0]?.process.map((step) => step.do)).toEqual(expect.arrayContaining(['heat', 'quench', 'temper']))

    expect(answers.refusal).toEqual({ isInputProblems: true, fields: ['profile[0].across'] })
  })

  test('its command converts a hardness', () => {
    const { bin } = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8')) as { bin: { quenchwright: string } }
    const answer = figureSchema.parse(JSON.parse(node(join(installed, bin.quenchwright), 'convert', '52 HRC', 'HV', '--json')))
    expect(answer.value).toBeCloseTo(544, -1)
    expect(answer.low).toBeLessThan(answer.value)
  })
})
