import { describe, expect, it } from 'vitest'
import { partLengths, takesWhole } from './hard-lengths.ts'
import { METRIC_ROUNDING } from './rounding.ts'
import { hardZonesOf, type Layout, tooNear } from './zones.ts'

const EDGE = { name: 'edge', fromM: 0, toM: 0.03, aim: { lowHrc: 54, highHrc: 58 }, assumed: false }
const STRUCK = { name: 'struck end', fromM: 0.145, toM: 0.165, aim: { highHrc: 45 }, assumed: true }
const CHISEL: Layout = {
  hard: [EDGE],
  soft: [STRUCK],
  lengthM: 0.165,
  hardToM: 0.03,
  softFromM: 0.145,
  acrossM: 0.012,
  thickestM: 0.016,
  shouldersM: [0.04],
}
const TUB = { name: 'slack tub', kind: 'water', depthM: 0.4, temperatureK: 293 } as const

describe('how much is heated and dipped', () => {
  it('ends no line within 8 mm of a shoulder, nor inside a zone', () => {
    const lines = partLengths(CHISEL, TUB, false, METRIC_ROUNDING).flatMap(({ depthM, heatToM }) =>
      [depthM ?? [], heatToM ?? []].flat(),
    )
    expect(lines.length).toBeGreaterThanOrEqual(2)
    for (const m of lines) {
      expect(Math.abs(m - 0.04)).toBeGreaterThanOrEqual(0.008 - 1e-9)
      expect(m).toBeGreaterThan(EDGE.toM)
      expect(m).toBeLessThanOrEqual(STRUCK.fromM)
    }
  })

  it('dips no deeper than the bath has room for', () => {
    const shallow = { ...TUB, depthM: 0.06 }
    expect(takesWhole(shallow, CHISEL.lengthM)).toBe(false)
    for (const { depthM } of partLengths({ ...CHISEL, shouldersM: [] }, shallow, false, METRIC_ROUNDING))
      expect(depthM ?? 1).toBeLessThanOrEqual(0.035 + 1e-9)
  })

  it('has no part dip in air, only part heats', () => {
    const ways = partLengths(CHISEL, TUB, true, METRIC_ROUNDING)
    expect(ways.map(({ kind }) => kind)).toEqual(['end heated'])
  })
})

describe('which zones are hardened', () => {
  it('keeps a struck end of 30..45 HRC soft beside an edge of 54', () => {
    const struck = { ...STRUCK, aim: { lowHrc: 30, highHrc: 45 } }
    expect(hardZonesOf([EDGE, struck])).toEqual([EDGE])
    expect(hardZonesOf([struck])).toEqual([struck])
  })

  it('says when hard and soft leave no room between', () => {
    expect(tooNear(CHISEL)).toBeUndefined()
    expect(tooNear({ ...CHISEL, soft: [{ ...STRUCK, fromM: 0.032 }] })?.gapM).toBeCloseTo(0.002, 6)
  })
})
