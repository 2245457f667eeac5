import fc from 'fast-check'
import { expect, test } from 'vitest'
import { acos, asin, atan2, cos, sin, tan } from './angles.ts'

const LAST_PLACE = 2 ** -52

test('within a ten-thousandth of a millionth of the true value', () => {
  fc.assert(
    fc.property(fc.double({ min: -1.5, max: 1.5, noNaN: true }), (x) => {
      for (const [ours, theirs] of [
        [sin(x), Math.sin(x)],
        [cos(x), Math.cos(x)],
        [tan(x), Math.tan(x)],
        [asin(x / 2), Math.asin(x / 2)],
        [acos(x / 2), Math.acos(x / 2)],
        [atan2(x, 0.7), Math.atan2(x, 0.7)],
      ] as const)
        expect(Math.abs(ours - theirs)).toBeLessThan(3e-11)
    }),
  )
})

test('a last place more or less in what the runtime gives changes nothing, but once in a great many', () => {
  let parted = 0
  for (let i = 0; i < 20000; i++) {
    const x = 0.0003 * i - 3
    const steps = 2 ** 34
    const near = Math.sin(x) * (1 + LAST_PLACE)
    if (Math.round(near * steps) / steps !== sin(x)) parted++
  }
  expect(parted).toBeLessThan(3)
})
