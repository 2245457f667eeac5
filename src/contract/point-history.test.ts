import { describe, expect, test } from 'vitest'
import type { Picture } from './picture-fields.ts'
import { historyOf } from './point-history.ts'

const none = Number.NaN

/** Two triangles, two instants: a cut square of 10 mm whose values are easily told. */
const picture: Picture = {
  xMm: Float32Array.of(0, 10, 10, 0),
  rMm: Float32Array.of(0, 0, 10, 10),
  triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
  surfaceNodes: Uint32Array.of(0, 3, 2, 1),
  timeS: Float64Array.of(0, 5),
  step: Uint16Array.of(0, 0),
  temperatureC: Float32Array.of(20, 20, 20, 20, 100, 200, 300, 200),
  levelMm: Float32Array.of(none, none),
  quenchedHrc: Float32Array.of(60, 50, 40, 50),
  temperedHrc: Float32Array.of(56, 48, 40, 48),
  bandHrc: Float32Array.of(6, 8, 10, 8),
  structure: Uint8Array.of(4, 3, 0, 2),
  martensiteShare: Float32Array.of(1, 0.5, 0, 0.05),
  ferriteShare: Float32Array.of(0, 0, 0, 0.2),
  pearliteShare: Float32Array.of(0, 0.2, 0, 0.75),
  bainiteShare: Float32Array.of(0, 0.3, 0, 0),
  peakC: Float32Array.of(845, 800, 620, 800),
  cooling800To500S: Float32Array.of(4, 8, none, 60),
  skin: { xMm: Float32Array.of(0, 10), hottestC: Float32Array.of(220, 220), colour: [] },
}

describe('the history of a place', () => {
  test('is that of the node where it is one', () => {
    for (let node = 0; node < 4; node++) {
      const found = historyOf(picture, picture.xMm[node] as number, picture.rMm[node] as number)
      expect(Array.from(found.temperatureC)).toEqual([picture.temperatureC[node], picture.temperatureC[4 + node]])
      expect(found.temperedHrc).toBe(picture.temperedHrc[node])
      expect(found.peakC).toBe(picture.peakC[node])
      expect(found.cooling800To500S).toEqual(picture.cooling800To500S[node])
    }
  })

  test('is linear within the triangle, and takes the structure of the nearest node', () => {
    const { temperatureC, quenchedHrc, temperedHrc, bandHrc, structure, peakC } = historyOf(picture, 2, 1)
    // Weights 0.8, 0.1, 0.1 of the nodes at (0, 0), (10, 0) and (10, 10).
    expect(temperatureC[1]).toBeCloseTo(130, 4)
    expect(quenchedHrc).toBeCloseTo(57, 5)
    expect(temperedHrc).toBeCloseTo(53.6, 5)
    expect(bandHrc).toBeCloseTo(6.6, 5)
    expect(peakC).toBeCloseTo(818, 3)
    expect(structure).toBe('hardened')
  })

  test('a cooling time is that of the nodes which have one, and none beside a nearer node without', () => {
    expect(historyOf(picture, 2, 1).cooling800To500S).toBeCloseTo((0.8 * 4 + 0.1 * 8) / 0.9, 5)
    expect(historyOf(picture, 9.5, 9).cooling800To500S).toBeNaN()
  })

  test('outside the metal it is that of the nearest place on the surface', () => {
    expect(historyOf(picture, 14, 4)).toEqual(historyOf(picture, 10, 4))
    expect(historyOf(picture, -3, 12)).toEqual(historyOf(picture, 0, 10))
  })

  test('is said in words, in the degrees asked for, and soft steel gets no figure of the C scale', () => {
    expect(historyOf(picture, 0, 0).says).toEqual([
      'Came to 845 °C in the fire.',
      'Cooled at a pace of 4.0 s from 800 °C to 500 °C.',
      'Hardened.',
      '60 HRC as quenched, 56 HRC after tempering.',
      'Nine in ten such pieces lie within 6 HRC from softest to hardest here.',
    ])
    expect(historyOf(picture, 0, 0, 'inch').says[0]).toBe('Came to 1553 °F in the fire.')
    expect(historyOf(picture, 10, 0).says).toContain('About 5 in 10 martensite, 3 in 10 bainite, 2 in 10 pearlite.')
    expect(historyOf(picture, picture.xMm[3] as number, picture.rMm[3] as number).says).toContain(
      'About 8 in 10 pearlite, 2 in 10 ferrite, 1 in 10 martensite.',
    )
    const soft = { ...picture, quenchedHrc: Float32Array.of(9, 9, 9, 9), temperedHrc: Float32Array.of(9, 9, 9, 9) }
    expect(historyOf(soft, 10, 10).says).toContain('under 20 HRC.')
  })
})
