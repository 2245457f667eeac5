import { expect, test } from 'vitest'
import { colourWords, structureWords } from './words-on-metal.ts'

/** A piece 120 px wide and 200 px long: the upper half as it was, the lower hardened, with a thin part-hardened rim between. */
const width = 120
const height = 200
const values = Float32Array.from({ length: width * height }, (_, i) => {
  const y = Math.floor(i / width)
  return y < 95 ? 0 : y < 105 ? 3 : 4
})

test('what the metal has become stands once in each part that is large enough', () => {
  const words = structureWords({ width, height, values }, 1)
  expect(words.map(({ text }) => text).toSorted()).toEqual(['as it was', 'hardened'])
  for (const { xPx } of words) expect(xPx).toBeCloseTo(60)
})

test('temper colours stand at the middle of their stretch, where the metal is wide enough', () => {
  const skin = {
    xMm: Float32Array.from([0, 20, 40, 60, 80, 100]),
    hottestC: new Float32Array(6),
    colour: ['none', 'none', 'none', 'dark blue', 'dark blue', 'dark blue'].map((name) => ({ name, srgb: '#000000' })),
  }
  const words = colourWords(
    skin,
    (xMm) => 200 - 2 * xMm,
    () => 80,
  )
  expect(words.map(({ text, yPx }) => [text, yPx])).toEqual([
    ['no colour', 160],
    ['dark blue', 40],
  ])
  expect(
    colourWords(
      skin,
      (xMm) => 200 - 2 * xMm,
      () => 20,
    ),
  ).toEqual([])
})
