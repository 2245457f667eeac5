import { describe, expect, test } from 'vitest'
import type { Profile, Section } from './profile.ts'
import { profileProblems, shapeFeatures } from './shape-features.ts'

const MM = 1e-3

function round(fromMm: number, toMm: number, lengthMm: number, more: Partial<Section> = {}): Section {
  return { shape: 'round', from: { acrossM: fromMm * MM }, to: { acrossM: toMm * MM }, lengthM: lengthMm * MM, ...more }
}

const of = (...sections: Section[]): Profile => ({ sections })
const dish = (acrossMm: number, depthMm: number) => ({ dish: { acrossM: acrossMm * MM, depthM: depthMm * MM } })
const bore = (acrossMm: number, depthMm: number) => ({ bore: { acrossM: acrossMm * MM, depthM: depthMm * MM } })
const tip = (radiusMm: number) => ({ tip: { radiusM: radiusMm * MM } })

describe('[GE5] features', () => {
  test('a step is an inner corner and a jump, sharp unless it has a radius', () => {
    const { innerCorners, sectionJumps } = shapeFeatures(
      of(round(38, 38, 40), round(19, 19, 60, { filletM: 6 * MM }), round(25, 25, 20)),
    )
    expect(innerCorners.map(({ xM, filletM }) => [xM, filletM])).toEqual([
      [0.04, 0.006],
      [0.1, 0],
    ])
    expect(innerCorners[0]!.smallerAcrossM).toBeCloseTo(0.019, 12)
    expect(innerCorners[0]!.largerAcrossM).toBeCloseTo(0.038, 12)
    expect(sectionJumps.map(({ ratio }) => Math.round(100 * ratio))).toEqual([200, 132])
  })

  test('small steps, outer corners and gentle bends are none', () => {
    const even = of(round(20, 20, 30), round(20.6, 20.6, 30), round(20.6, 12, 60))
    expect(shapeFeatures(even).innerCorners).toEqual([])
    expect(shapeFeatures(even).sectionJumps).toEqual([])
  })

  test('a steep cone that meets a neck makes an inner corner', () => {
    const [corner] = shapeFeatures(of(round(14, 14, 40), round(14, 34, 13), round(34, 34, 20))).innerCorners
    expect(corner?.xM).toBeCloseTo(0.04, 12)
    expect(corner!.largerAcrossM).toBeGreaterThan(0.03)
  })

  test('a collar is thin beside its body; a long taper is not', () => {
    const collar = shapeFeatures(of(round(20, 20, 40), round(46, 46, 3), round(20, 20, 40))).thinBesideThick
    expect(collar).toHaveLength(1)
    expect(collar[0]!.thinM).toBeCloseTo(0.003, 9)
    expect(collar[0]!.thickM).toBeCloseTo(0.02, 9)
    expect(shapeFeatures(of(round(6, 24, 150))).thinBesideThick).toEqual([])
    expect(shapeFeatures(of(round(1, 24, 20), round(24, 24, 60))).thinBesideThick).toHaveLength(1)
  })

  test('lips and holes come with their metal', () => {
    const { dishLips, holes } = shapeFeatures(of(round(38, 38, 40, dish(2 * Math.sqrt(72), 6)), round(24, 24, 60, bore(10, 30))))
    expect(dishLips).toHaveLength(1)
    expect(dishLips[0]!.landM).toBeCloseTo(0.019 - 0.00848528, 7)
    // 1 mm below the rim the ball of radius 9 about x = -3 is sqrt(81 - 16) wide.
    expect(dishLips[0]!.lipThicknessM).toBeCloseTo(0.019 - Math.sqrt(65) * MM, 9)
    expect(dishLips[0]!.angleDeg).toBeCloseTo(90 - (Math.asin(Math.sqrt(72) / 9) * 180) / Math.PI, 6)
    expect(holes).toHaveLength(1)
    expect(holes[0]!.bottomXM).toBeCloseTo(0.07, 12)
    expect(holes[0]!.wallM).toBeCloseTo(0.007, 12)
  })
})

describe('problems', () => {
  test('a sound profile has none', () => {
    const flat: Section = {
      shape: 'flat',
      from: { acrossM: 5 * MM, widthM: 12 * MM },
      to: { acrossM: 19 * MM, widthM: 25 * MM },
      lengthM: 60 * MM,
    }
    expect(profileProblems(of(flat, round(22, 22, 110, { filletM: 3 * MM }), round(22, 16, 12, tip(2))))).toEqual([])
    expect(profileProblems(of(round(20, 20, 30, dish(20, 10)), round(12, 12, 50)))).toEqual([])
    expect(profileProblems(of(round(0, 12, 30, tip(1)), round(12, 12, 90, { ...dish(8, 2), ...bore(4, 20) })))).toEqual([])
  })

  test.each<[string, Profile, string]>([
    ['no sections', of(), 'profile'],
    ['no length', of(round(20, 20, 0)), 'profile[0].length'],
    ['a negative size', of(round(20, 20, 30), round(-3, 20, 30)), 'profile[1].from'],
    ['a size that is no number', of(round(20, Number.NaN, 30)), 'profile[0].to'],
    ['nothing within the piece', of(round(20, 0, 30), round(20, 20, 30)), 'profile[0].to'],
    ['nothing at both ends', of(round(0, 0, 30)), 'profile[0].to'],
    ['an end too fine', of(round(0.05, 20, 30)), 'profile[0].from'],
    ['a width on a round', of({ ...round(20, 20, 30), from: { acrossM: 0.02, widthM: 0.03 } }), 'profile[0].from'],
    [
      'a flat thicker than wide',
      of({ shape: 'flat', from: { acrossM: 0.02, widthM: 0.01 }, to: { acrossM: 0.01, widthM: 0.02 }, lengthM: 0.03 }),
      'profile[0].from',
    ],
    ['a flat without width', of({ ...round(20, 20, 30), shape: 'flat' }), 'profile[0].from'],
    ['a fillet on the first section', of(round(20, 20, 30, { filletM: 0.002 })), 'profile[0].fillet'],
    ['a negative fillet', of(round(20, 20, 30), round(30, 30, 30, { filletM: -0.002 })), 'profile[1].fillet'],
    ['a fillet beyond all room', of(round(20, 20, 30), round(30, 30, 10, { filletM: 0.05 })), 'profile[1].fillet'],
    ['a dish in the middle', of(round(20, 20, 30), round(20, 20, 30, dish(9, 2)), round(20, 20, 30)), 'profile[1].dish'],
    ['a dish wider than its end', of(round(20, 20, 30, dish(21, 2))), 'profile[0].dish.across'],
    ['a dish deeper than half its width', of(round(20, 20, 30, dish(10, 6))), 'profile[0].dish.depth'],
    ['a dish through its section', of(round(20, 20, 3, dish(18, 4)), round(30, 30, 30)), 'profile[0].dish.depth'],
    ['a dish out through a leaning side', of(round(21.6, 2, 6.8, dish(21.6, 5)), round(30, 30, 30)), 'profile[0].dish.across'],
    ['a hole with no wall', of(round(20, 20, 30), round(20, 20, 30, bore(19.5, 8))), 'profile[1].bore.across'],
    [
      'a hole with no wall deeper in',
      of(round(20, 20, 30), round(8, 8, 30), round(20, 20, 30, bore(10, 40))),
      'profile[2].bore.across',
    ],
    ['a hole through', of(round(20, 20, 30, bore(6, 30))), 'profile[0].bore.depth'],
    ['holes that meet', of(round(20, 20, 30, bore(6, 25)), round(20, 20, 30, bore(6, 36))), 'profile[0].bore.depth'],
    ['a hole that ends in its dish', of(round(20, 20, 30, { ...dish(16, 5), ...bore(6, 4) })), 'profile[0].bore.depth'],
    ['a tip that eats its dish', of(round(20, 20, 30, { ...dish(16, 5), ...tip(4) })), 'profile[0].tip.radius'],
    ['a point blunter than its section', of(round(0, 10, 20, tip(6))), 'profile[0].tip.radius'],
    ['a dome longer than its section', of(round(20, 20, 3, tip(11)), round(30, 30, 30)), 'profile[0].tip.radius'],
    ['no tip radius', of(round(20, 20, 30, tip(0))), 'profile[0].tip.radius'],
  ])('%s is named', (_, profile, field) => {
    const problems = profileProblems(profile)
    expect(problems.map((problem) => problem.field)).toContain(field)
    for (const { says } of problems) expect(says.length).toBeGreaterThan(20)
  })
})
