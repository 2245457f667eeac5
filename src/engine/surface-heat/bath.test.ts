import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { interpolate } from '#engine/arithmetic/table.ts'
import { bathContact, bathHeatCapacityJPerK } from './bath.ts'
import { AGITATIONS, BATH_KINDS, type Bath } from './gear.ts'
import { PROBE_FILMS, probeFilm } from './probe-films.ts'

const liquids = BATH_KINDS.filter((kind) => kind !== 'still air' && kind !== 'moving air')

function bath(kind: Bath['kind'], degC: number): Bath {
  return { name: 'tub', kind, volumeM3: 0.031, temperatureK: degC + 273.15 }
}

describe.each(liquids)('%s', (kind) => {
  const at = (degC: number, acrossM: number, agitation: (typeof AGITATIONS)[number] = 'moderate') =>
    bathContact(bath(kind, degC), { agitation, acrossM })

  test('[SH3] takes more the more it moves and the thinner the piece is', () => {
    const surfaceK = 820
    const byMotion = AGITATIONS.map((agitation) => interpolate(at(35, 0.03, agitation).film, surfaceK))
    for (let i = 1; i < byMotion.length; i++) expect(byMotion[i]!).toBeGreaterThan(byMotion[i - 1]!)
    const bySize = [0.012, 0.025, 0.05, 0.1].map((acrossM) => interpolate(at(35, acrossM).film, surfaceK))
    for (let i = 1; i < bySize.length; i++) expect(bySize[i]!).toBeLessThan(bySize[i - 1]!)
  })

  test('[HC6] is a liquid: it does not shine, and warms by what it takes', () => {
    const contact = at(35, 0.02)
    expect(contact.emissivity).toBe(0)
    expect(contact.capacityJPerK).toBe(bathHeatCapacityJPerK(bath(kind, 35)))
    expect(contact.fluid).toEqual([[0, 308.15]])
  })

  test('its film is positive over every surface that a smith can make', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 95, noNaN: true }),
        fc.double({ min: 0.002, max: 0.2, noNaN: true }),
        (degC, acrossM) => {
          for (const [, h] of at(degC, acrossM).film) {
            expect(h).toBeGreaterThan(30)
            expect(h).toBeLessThan(60000)
          }
        },
      ),
      { numRuns: 50 },
    )
  })
})

test('[SH1] warm water keeps its blanket: half way between two tables it does the mean of both', () => {
  const [, warm, hot] = PROBE_FILMS.water
  const between = probeFilm('water', 323.15)
  for (const [i, [, h]] of between.entries()) expect(h).toBeCloseTo((warm!.film[i]![1] + hot!.film[i]![1]) / 2, 6)
  expect(interpolate(probeFilm('water', 353.15), 900)).toBe(interpolate(probeFilm('water', 333.15), 900))
  expect(interpolate(between, 873)).toBeLessThan(interpolate(probeFilm('water', 293.15), 873) / 2.5)
})

test('[SH2] oil at 20 degC is slower than at 60, and 80 a little faster', () => {
  const film = (degC: number): number =>
    interpolate(bathContact(bath('medium oil', degC), { agitation: 'mild', acrossM: 0.02 }).film, 800)
  expect(film(20) / film(60)).toBeCloseTo(0.83, 2)
  expect(film(80)).toBeGreaterThan(film(60))
})

test('the factor of an ensemble multiplies the film, of air as well', () => {
  for (const kind of ['fast oil', 'moving air'] as const) {
    const base = bathContact(bath(kind, 25), { agitation: 'still', acrossM: 0.015 })
    const more = bathContact(bath(kind, 25), { agitation: 'still', acrossM: 0.015, factor: 1.3 })
    for (const [i, [, h]] of base.film.entries()) expect(more.film[i]![1]).toBeCloseTo(1.3 * h, 9)
  }
})

test('[SH8] a bath of unknown volume is a five-gallon bucket; a section of nothing is refused by the bath name', () => {
  const { volumeM3: _, ...unknown } = bath('water', 20)
  expect(bathHeatCapacityJPerK(unknown)).toBeCloseTo(0.02 * 998 * 4180, 6)
  expect(() => bathContact(unknown, { agitation: 'still', acrossM: Number.NaN })).toThrow(/bath "tub": acrossM NaN/)
})
