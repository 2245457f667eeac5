import { describe, expect, test } from 'vitest'
import { airContact, crossFlowFilm, naturalFilm } from './air.ts'

const ROOM_K = 293.15

describe('[SH5] film of air on a bar of 20 mm', () => {
  // Worked beside the correlations of Churchill & Chu (1975) and Churchill & Bernstein (1977) with the same properties of air.
  test.each([
    [100, 8.7],
    [205, 10.3],
    [400, 11.5],
    [700, 12.4],
    [850, 12.6],
  ])('still air, surface at %d degC: %d W/(m2 K)', (degC, expected) => {
    expect(Math.abs(naturalFilm(degC + 273.15, ROOM_K, 0.02) - expected)).toBeLessThan(0.15)
  })

  test.each([
    [1, 24],
    [2, 34],
    [5, 52],
    [10, 75],
  ])('air across it at %d m/s: %d W/(m2 K)', (speed, expected) => {
    expect(Math.abs(crossFlowFilm(1123.15, ROOM_K, 0.02, speed) / expected - 1)).toBeLessThan(0.05)
  })
})

test('[SH5] a bar at 850 degC loses some 3.3 K/s at 20 mm and twice that at 10 mm on its way to the tank', () => {
  const loss = (acrossM: number): number => {
    const { film, emissivity } = airContact(ROOM_K, { acrossM })
    const h = film.find(([surfaceK]) => surfaceK >= 1100)![1]
    const flux = h * (1123 - ROOM_K) + emissivity * 5.67e-8 * (1123 ** 4 - ROOM_K ** 4)
    return (4 * flux) / (7700 * 640 * acrossM)
  }
  expect(loss(0.02)).toBeGreaterThan(2.9)
  expect(loss(0.02)).toBeLessThan(3.7)
  expect(loss(0.01) / loss(0.02)).toBeGreaterThan(1.9)
})

test('[SH5] moving air takes more than still air at every temperature, and a section of nothing is refused', () => {
  const still = airContact(ROOM_K, { acrossM: 0.03 })
  const moving = airContact(ROOM_K, { acrossM: 0.03, moving: true })
  for (const [i, [, h]] of still.film.entries()) expect(moving.film[i]![1]).toBeGreaterThan(2 * h)
  expect(() => airContact(ROOM_K, { acrossM: 0 })).toThrow(/acrossM 0 m/)
})
