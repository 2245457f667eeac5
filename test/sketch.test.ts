import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { type Forecast, forecast, forecastSchema, readJobText } from '#contract/index.ts'

const folder = join(import.meta.dirname, '..', 'examples')
const read = (name: string): unknown => readJobText(readFileSync(join(folder, name), 'utf8'), name)
const ask = (name: string, options: object): Forecast => forecast(read(name), { readFile: read, ...options })

/** A zone out of the oil with a step beside it, a steep one in water with a struck end, and an air-hardening one heated in part. */
const EXAMPLES = ['stepped-bottom-tool.yaml', 'cold-chisel.yaml', 'hot-slot-punch.yaml']

describe.each(EXAMPLES)('the sketch of %s', (name) => {
  const sketch = ask(name, { grade: 'sketch' })
  const full = ask(name, { grade: 'normal', members: 120, remedies: false })
  /** A sketch solves no true sections: where the full answer judges by corners (the chisel's octagon in water), it reads softer. */
  const cornered = (full.crossSections ?? []).filter(({ judged }) => judged).map(({ name: zone }) => zone)
  const round = full.zones.map((_, i) => i).filter((i) => !cornered.includes(full.zones[i]!.name))

  test('is a forecast by its schema, and says what it is', () => {
    expect(forecastSchema.parse(sketch)).toEqual(sketch)
    expect(sketch).toMatchObject({ grade: 'sketch', members: 0 })
  })

  test('gives each zone within 2 HRC, and places along the piece within 2 HRC on average', () => {
    expect(round.length).toBeGreaterThan(0)
    for (const i of round) {
      const zone = sketch.zones[i]!
      expect(Math.abs(zone.quenched_HRC.value - full.zones[i]!.quenched_HRC.value), zone.name).toBeLessThan(2)
      expect(Math.abs(zone.tempered_HRC.value - full.zones[i]!.tempered_HRC.value), zone.name).toBeLessThan(2)
    }
    for (const of of ['skin_quenched_HRC', 'skin_tempered_HRC', 'centre_quenched_HRC', 'centre_tempered_HRC'] as const) {
      const off = sketch.along.map((at, i) => Math.abs(at[of].value - full.along[i]![of].value))
      expect(off.reduce((sum, each) => sum + each, 0) / off.length, of).toBeLessThan(2)
    }
  })

  test('gives bands within 3 HRC of those of an ensemble, and chances within 0.2', () => {
    for (const i of round) {
      const zone = sketch.zones[i]!
      const { tempered_HRC: band, chance } = full.zones[i]!
      expect(Math.abs(zone.tempered_HRC.low - band.low), zone.name).toBeLessThan(3)
      expect(Math.abs(zone.tempered_HRC.high - band.high), zone.name).toBeLessThan(3)
      expect(Math.abs(zone.chance - chance), zone.name).toBeLessThan(0.2)
    }
  })

  test('reads no harder than the forecast where that goes by corners, and less than a hardened skin softer', () => {
    for (const [i, zone] of sketch.zones.entries()) {
      if (round.includes(i)) continue
      expect(zone.quenched_HRC.value, zone.name).toBeLessThan(full.zones[i]!.quenched_HRC.value + 2)
      expect(zone.quenched_HRC.value, zone.name).toBeGreaterThan(full.zones[i]!.quenched_HRC.value - 12)
    }
  })

  test('raises what stops the work as the forecast does, and without corners the same findings', () => {
    const ids = ({ findings }: Forecast, stops: boolean): string[] =>
      [...new Set(findings.filter(({ severity }) => !stops || severity === 'stop').map(({ id }) => id))].sort()
    expect(ids(sketch, true)).toEqual(ids(full, true))
    if (cornered.length === 0) expect(ids(sketch, false)).toEqual(ids(full, false))
  })

  test('comes out the same to the last digit', () => {
    expect(JSON.stringify(ask(name, { grade: 'sketch' }))).toBe(JSON.stringify(sketch))
  })
})
