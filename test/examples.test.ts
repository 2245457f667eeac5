import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { forecast, forecastSchema, proposeRoutes, readJobText, routesSchema } from '#contract/index.ts'

const folder = join(import.meta.dirname, '..', 'examples')
const jobs = readdirSync(folder).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
const plans = readdirSync(join(folder, 'plans'))

function job(...path: string[]): unknown {
  const file = join(folder, ...path)
  return readJobText(readFileSync(file, 'utf8'), file)
}
const readFile = (name: string): unknown => readJobText(readFileSync(join(folder, name.replace('../', '')), 'utf8'), name)

/** What a toolsmith would say of each piece: findings that must be there, and findings that would be wrong. */
const traps: Record<string, { caught: readonly string[]; silent: readonly string[] }> = {
  'stepped-bottom-tool.yaml': {
    caught: ['section-jump'],
    silent: [
      'bath-too-slow',
      'underheated',
      'overheated',
      'sharp-inner-corner',
      'aim-out-of-reach',
      'steel-will-not-harden',
      'oil-fire',
      'oven-cannot-reach',
    ],
  },
  'cold-chisel.yaml': {
    caught: ['struck-end-hard'],
    silent: ['steel-will-not-harden', 'bath-too-slow', 'overheated', 'oil-fire'],
  },
  'hot-slot-punch.yaml': {
    caught: [],
    silent: [
      'struck-end-hard',
      'more-than-one-temper',
      'underheated',
      'bath-too-slow',
      'embrittling-range',
      'oil-fire',
      'steel-will-not-harden',
    ],
  },
  'eye-drift.yaml': {
    caught: ['steel-will-not-harden'],
    silent: ['struck-end-hard', 'retained-austenite', 'temper-too-cool-for-aim'],
  },
  'flat-spring.yaml': { caught: ['oven-cannot-reach'], silent: ['bath-too-slow', 'struck-end-hard', 'steel-will-not-harden'] },
  'hammer-head.yaml': {
    caught: ['bath-too-slow'],
    silent: ['steel-will-not-harden', 'temper-too-cool-for-aim', 'embrittling-range'],
  },
  'centre-punch.yaml': {
    caught: [],
    silent: [
      'struck-end-hard',
      'underheated',
      'bath-too-slow',
      'bath-too-fast',
      'oil-fire',
      'aim-out-of-reach',
      'retained-austenite',
    ],
  },
}

describe('the example shop', () => {
  test('every example has its expectation', () => expect(Object.keys(traps).sort()).toEqual(jobs.sort()))

  test.each(jobs)('%s: its traps are caught and nothing else is cried', (name) => {
    const answer = forecast(job(name), { grade: 'draft', readFile })
    expect(forecastSchema.safeParse(answer).error).toBeUndefined()
    const ids = answer.findings.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining([...(traps[name]?.caught ?? [])]))
    expect(ids.filter((id) => traps[name]?.silent.includes(id))).toEqual([])
    for (const zone of answer.zones) {
      expect(zone.chance).toBeGreaterThanOrEqual(0)
      expect(zone.chance).toBeLessThanOrEqual(1)
      expect(zone.tempered_HRC.low).toBeLessThanOrEqual(zone.tempered_HRC.value)
      expect(zone.tempered_HRC.high).toBeGreaterThanOrEqual(zone.tempered_HRC.value)
    }
  })

  test('the bottom tool comes out where such tools are used: 48 to 54 HRC at the face (common practice, no source)', () => {
    const answer = forecast(job('stepped-bottom-tool.yaml'), { grade: 'normal', readFile })
    const face = answer.zones[0]
    expect(face?.tempered_HRC.value).toBeGreaterThan(48)
    expect(face?.tempered_HRC.value).toBeLessThan(54)
    expect(face?.chance).toBeGreaterThan(0.5)
  })

  test('the same job gives the same bytes twice', () => {
    const once = () => JSON.stringify(forecast(job('hammer-head.yaml'), { grade: 'draft', readFile, field: true }))
    expect(once()).toBe(once())
  })

  test.each(plans)('a plan for %s', (name) => {
    const answer = proposeRoutes(job('plans', name), { readFile })
    expect(routesSchema.safeParse(answer).error).toBeUndefined()
    if (name === 'latch-spring.yaml') {
      expect(answer.routes).toEqual([])
      expect(answer.none?.because).toContain('oven')
      return
    }
    const [best] = answer.routes
    expect(best?.holdsGear).toBe(true)
    expect(best?.chance).toBeGreaterThan(0.3)
    const did = best?.process.map((step) => step.do) ?? []
    // A proposed process is a process: it forecasts as it stands.
    const again = forecast({ ...(job('plans', name) as object), process: best?.process }, { grade: 'draft', readFile })
    expect(again.zones.length).toBeGreaterThan(0)
    if (name === 'hot-slot-punch.yaml') {
      expect(did).not.toContain('normalise')
      expect(best?.forecast.zones.find(({ assumed }) => assumed)?.chance).toBeGreaterThan(0.9)
    }
  })
})
