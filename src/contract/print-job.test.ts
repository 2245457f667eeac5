import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { ProcessStep } from '#engine/simulation/process.ts'
import { parseJob } from './parse-job.ts'
import { processInWords } from './print-job.ts'

const job = {
  piece: 'hand tool',
  steel: { grade: '5160' },
  profile: [{ shape: 'round', across: '30 mm', length: '500 mm' }],
  shop: {
    fires: [{ name: 'gas fire', kind: 'gas' }],
    baths: [{ name: 'tank', kind: 'fast oil', volume: '40 L', temperature: '55 °C' }],
    ovens: [{ name: 'oven', max: '600 °C', reads: 'true', swing: '5 °C' }],
  },
}

function stepsFrom(process: readonly Record<string, unknown>[]): readonly ProcessStep[] {
  return parseJob({ ...job, process }).job.process
}

// Figures as a smith types them: whole degrees on either scale, sixteenths or tenths of a millimetre, whole seconds.
const heatK = (lowC: number, highC: number) =>
  fc.oneof(
    fc.integer({ min: lowC, max: highC }).map((celsius) => celsius + 273.15),
    fc.integer({ min: lowC, max: highC }).map((celsius) => ((Math.round(celsius * 1.8) + 32 + 459.67) * 5) / 9),
  )
const lengthM = fc.oneof(
  fc.integer({ min: 1, max: 4000 }).map((tenths) => tenths / 10000),
  fc.integer({ min: 1, max: 1000 }).map((sixtyFourths) => (sixtyFourths * 0.0254) / 64),
)
const seconds = (least: number, most: number) =>
  fc.oneof(
    fc.integer({ min: least, max: most }),
    fc.integer({ min: least * 10, max: 500 }).map((tenths) => tenths / 10),
  )
const part = fc
  .tuple(lengthM, lengthM)
  .filter(([a, b]) => Math.abs(a - b) > 1e-4)
  .map(([a, b]) => ({ fromM: Math.min(a, b), toM: Math.max(a, b) }))
const maybe = <Key extends string, Value>(key: Key, arbitrary: fc.Arbitrary<Value>) =>
  fc.oneof(
    fc.constant({}),
    arbitrary.map((value) => ({ [key]: value }) as { [Name in Key]: Value }),
  )

const before = fc.oneof(
  fc.record({
    do: fc.constant('normalise' as const),
    in: fc.constant('gas fire'),
    toK: heatK(700, 1100),
    holdS: seconds(0, 9000),
    times: fc.integer({ min: 1, max: 5 }),
  }),
  fc
    .tuple(
      heatK(600, 900),
      seconds(1, 90000),
      maybe(
        'coolKPerS',
        fc.integer({ min: 1, max: 100 }).map((perHour) => perHour / 3600),
      ),
    )
    .map(([toK, holdS, cool]) => ({ do: 'anneal' as const, in: 'oven', toK, holdS, ...cool })),
  fc.record({
    do: fc.constant('stress-relieve' as const),
    in: fc.constant('oven'),
    toK: heatK(500, 700),
    holdS: seconds(0, 9000),
  }),
  fc
    .record({ acrossM: lengthM.filter((m) => m < 0.3), lengthM, atK: heatK(300, 1000) })
    .map((bar) => ({ do: 'warm-bath' as const, in: 'tank', with: bar })),
)
const hardening = fc
  .tuple(
    heatK(750, 1050),
    seconds(0, 5000),
    fc.boolean(),
    maybe('part', part),
    seconds(1, 60),
    maybe('depthM', lengthM),
    fc.constantFrom('still', 'mild', 'moderate', 'strong'),
  )
  .map(([toK, holdS, even, partly, forS, depth, agitation]) => [
    { do: 'heat', in: 'gas fire', toK, holdS, even, ...partly },
    { do: 'carry', forS },
    { do: 'quench', in: 'tank', ...depth, forS: forS * 10, agitation },
  ])
const after = fc.oneof(
  fc
    .tuple(heatK(150, 600), seconds(0, 20000), fc.integer({ min: 1, max: 4 }), maybe('part', part))
    .map(([atK, holdS, times, partly]) => [{ do: 'temper', in: 'oven', atK, holdS, times, ...partly }]),
  fc
    .tuple(heatK(180, 340), maybe('depthM', lengthM))
    .map(([stopAtK, depth]) => [{ do: 'run-colours', stopAtK, in: 'tank', ...depth }]),
)
const anyProcess = fc
  .tuple(fc.array(before, { maxLength: 3 }), hardening, after)
  .map(([first, middle, last]) => [...first, ...middle, ...last] as ProcessStep[])

test.each(['metric', 'inch'] as const)('steps in words (%s) are read back as the same steps', (units) => {
  fc.assert(
    fc.property(anyProcess, (process) => {
      const words = processInWords(process, units)
      const back = stepsFrom(words)
      expect(back.length).toBe(process.length)
      back.forEach((step, i) => {
        expectSame(step, process[i])
      })
      // Written again they are the same words to the letter: nothing creeps.
      expect(processInWords(back, units)).toEqual(words)
    }),
    { numRuns: 150 },
  )
})

/** The same step, numbers to a part in a thousand million. */
function expectSame(step: unknown, expected: unknown): void {
  if (typeof expected === 'number') expect(Math.abs((step as number) - expected)).toBeLessThanOrEqual(1.1e-9 * Math.abs(expected))
  else if (typeof expected === 'object' && expected !== null) {
    expect(Object.keys(step as object).sort()).toEqual(Object.keys(expected).sort())
    for (const [key, value] of Object.entries(expected)) expectSame((step as Record<string, unknown>)[key], value)
  } else expect(step).toBe(expected)
}

test('words are those of a job file', () => {
  const process: ProcessStep[] = [
    { do: 'heat', in: 'gas fire', toK: 1118.15, holdS: 600, even: true, part: { fromM: 0, toM: 0.0508 } },
    { do: 'carry', forS: 3.5 },
    { do: 'quench', in: 'tank', depthM: 0.022225, forS: 180, agitation: 'strong' },
    { do: 'temper', in: 'oven', atK: 477.59444444444443, holdS: 5400, times: 2 },
  ]
  expect(processInWords(process, 'inch')).toEqual([
    { do: 'heat', in: 'gas fire', to: '1553 °F', hold: '10 min', part: { from: '0 in', to: '2 in' } },
    { do: 'carry', for: '3.5 s' },
    { do: 'quench', in: 'tank', depth: '7/8 in', for: '3 min', agitation: 'strong' },
    { do: 'temper', in: 'oven', at: '400 °F', hold: '1 h 30 min', times: 2 },
  ])
  expect(processInWords(process, 'metric')[2]).toEqual({
    do: 'quench',
    in: 'tank',
    depth: '22.225 mm',
    for: '3 min',
    agitation: 'strong',
  })
})
