import { describe, expect, test } from 'vitest'
import { FINDING_IDS } from '#engine/findings/finding.ts'
import type { Finding, Forecast } from './answers.ts'
import { forecast } from './forecast-answer.ts'
import { applyEdits, type JobEdit } from './job-edits.ts'
import { parseJob } from './parse-job.ts'
import { FAULTY_JOBS, pin, punch, WELL_FURNISHED } from './remedy-jobs.test-data.ts'

const sketched = (job: unknown, units: 'metric' | 'inch' = 'metric'): Forecast =>
  forecast(job, { grade: 'sketch', remedies: true, units })
const raised = (id: string, { findings }: Forecast): Finding[] => findings.filter((finding) => finding.id === id)
const WEIGHT = { stop: 3, warn: 2, note: 1 } as const
const weight = (findings: readonly Finding[]): number => findings.reduce((sum, { severity }) => sum + WEIGHT[severity], 0)
const editsOf = (finding: Finding | undefined, which = 0): readonly JobEdit[] => finding?.try?.[which]?.edits ?? []
const changed = (job: unknown, ...edits: JobEdit[]): unknown => applyEdits(job, edits)

/** Nothing in the job mends these: a coat, a fire, smoke, which way up a hollow goes in, water in the oil, and a steel that nobody knows. */
const WITHOUT = new Set(['galvanised-fume', 'oil-fire', 'oil-smoke', 'steam-in-hollow', 'water-in-oil', 'unknown-steel-spread'])

describe('the first thing to try', () => {
  const one = FINDING_IDS.filter((id) => !WITHOUT.has(id)).map((id) => ({ id, faulty: FAULTY_JOBS.find((job) => job.id === id) }))

  test.each(one)('mends $id: $faulty.says', ({ id, faulty }) => {
    const before = sketched(faulty?.job)
    const found = raised(id, before)
    expect(found.length).toBeGreaterThan(0)
    const edits = editsOf(found[0])
    expect(edits.length).toBeGreaterThan(0)
    const after = sketched(applyEdits(faulty?.job, edits))
    expect(weight(raised(id, after))).toBeLessThan(weight(found))
  })

  test('is undone by taking the document as it was', () => {
    const job = FAULTY_JOBS[0]?.job
    const copy = structuredClone(job)
    applyEdits(job, editsOf(sketched(job).findings[0]))
    expect(job).toEqual(copy)
  })
})

test('a caution alone has nothing to try', () => {
  const job = changed(
    pin,
    { path: ['piece'], value: 'pin of galvanised bar' },
    { path: ['shop', 'baths', 0, 'temperature'], value: '170 °C' },
  )
  const { findings } = sketched(job)
  const cautions = findings.filter(({ id }) => WITHOUT.has(id))
  expect(cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(['galvanised-fume', 'oil-fire', 'oil-smoke']))
  expect(cautions.flatMap((finding) => finding.try ?? [])).toEqual([])
})

test('everything that is offered can be read again, and three things at most are', () => {
  for (const { job } of FAULTY_JOBS.filter((_, i) => i % 5 === 0))
    for (const finding of sketched(job).findings) {
      expect(finding.try?.length ?? 1).toBeLessThanOrEqual(3)
      for (const { edits } of finding.try ?? []) expect(() => parseJob(applyEdits(job, edits))).not.toThrow()
    }
})

test('a smith who works in inches hears and gets inches and Fahrenheit', () => {
  const short = changed(
    punch,
    { path: ['process', 0, 'part', 'to'], value: '18 mm' },
    { path: ['process', 0, 'to'], value: '745 °C' },
  )
  const tries = sketched(short, 'inch').findings.flatMap((finding) => finding.try ?? [])
  expect(tries.length).toBeGreaterThan(0)
  expect(tries.map(({ says }) => says).join()).toMatch(/°F instead of \d+ °F/u)
  expect(JSON.stringify(tries)).not.toMatch(/mm|°C/u)
})

test('a walk that nobody wrote is written, and the steps after it keep their place', () => {
  const { process } = punch as { process: readonly unknown[] }
  const job = changed(
    punch,
    { path: ['process'], value: process.filter((_, i) => i !== 1) },
    { path: ['process', 2, 'at'], value: '370 °C' },
  )
  const { findings } = sketched(
    changed(job, { path: ['shop'], value: WELL_FURNISHED }, { path: ['process', 2, 'in'], value: 'kiln' }),
  )
  const retempered = findings.find(({ id }) => id === 'temper-too-hot-for-aim' || id === 'embrittling-range')
  expect(editsOf(retempered).map(({ path }) => path)).toEqual([['process', 2, 'at']])
  const slow = changed(
    punch,
    { path: ['process', 1] },
    { path: ['profile', 1, 'across'], value: '5 mm' },
    { path: ['profile', 0, 'to'], value: '4 mm' },
  )
  const cold = sketched(slow).findings.find(({ id }) => id === 'underheated')
  expect(cold?.says).toMatch(/too cold when it goes into/u)
  expect(editsOf(cold)).toEqual([
    { path: ['process', 1], insert: { do: 'carry', for: expect.stringMatching(/^[12](?:\.5)? s$/u) } },
  ])
})

test('the shop is only changed where it stands in the document', () => {
  const cold = changed(pin, { path: ['shop', 'baths', 0, 'temperature'], value: '6 °C' })
  const shop = (cold as { shop: unknown }).shop
  const inFile = changed(cold, { path: ['shop'], value: 'shop.yaml' })
  const found = forecast(inFile, { grade: 'sketch', remedies: true, readFile: () => shop })
  const tries = raised('bath-too-cold', found).flatMap((finding) => finding.try ?? [])
  expect(tries.map(({ edits }) => edits[0]?.path[0])).toEqual(['process'])
  expect(raised('bath-too-cold', sketched(cold))[0]?.try?.map(({ edits }) => edits[0]?.path[0])).toEqual(['process', 'shop'])
})

test('a sketch is quick, and leaves what to try to the answer at rest', () => {
  expect(forecast(FAULTY_JOBS[0]?.job, { grade: 'sketch' }).findings.flatMap((finding) => finding.try ?? [])).toEqual([])
})
