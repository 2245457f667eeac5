import { describe, expect, test } from 'vitest'
import { outlineFrom, outlineOf, polylineOf, radiusAt, surfaceM2Of, volumeM3Of } from './outline.ts'
import type { Profile, Section } from './profile.ts'

const MM = 1e-3

function round(fromMm: number, toMm: number, lengthMm: number, more: Partial<Section> = {}): Section {
  return { shape: 'round', from: { acrossM: fromMm * MM }, to: { acrossM: toMm * MM }, lengthM: lengthMm * MM, ...more }
}

/** Head 38 with a dished face, shank 19, fillet 6: a body of revolution with every kind of piece. */
const dishedTool: Profile = {
  sections: [
    round(38, 38, 40, { dish: { acrossM: 2 * Math.sqrt(72) * MM, depthM: 6 * MM } }),
    round(19, 19, 60, { filletM: 6 * MM }),
  ],
}

describe('[GE2] outline of a profile', () => {
  test('the dished tool has the arcs that its drawing gives', () => {
    const { pieces, lengthM, reducedFillets } = outlineOf(dishedTool)
    expect(lengthM).toBe(0.1)
    expect(reducedFillets).toEqual([])
    expect(pieces.map(({ kind }) => kind)).toEqual(['arc', 'line', 'line', 'line', 'arc', 'line', 'line'])
    const [dish, , , , fillet] = pieces
    if (dish?.kind !== 'arc' || fillet?.kind !== 'arc') throw new Error('the first and the fifth piece are arcs')
    expect(dish.radiusM).toBeCloseTo(0.009, 9)
    expect(dish.centre.xM).toBeCloseTo(-0.003, 9)
    expect(dish.from).toEqual({ xM: 0.006, rM: 0 })
    expect(dish.to.rM).toBeCloseTo(0.008485281374, 9)
    expect(fillet.radiusM).toBeCloseTo(0.006, 9)
    expect(fillet.centre.xM).toBeCloseTo(0.046, 9)
    expect(fillet.centre.rM).toBeCloseTo(0.0155, 9)
    expect(fillet.to.xM).toBeCloseTo(0.046, 9)
    expect(fillet.to.rM).toBeCloseTo(0.0095, 9)
  })

  test('it is the same body as its explicit outline', () => {
    const lip = Math.sqrt(72)
    const explicit = outlineFrom(
      [
        [6, 0],
        { arc: { to: [0, lip], centre: [-3, 0] } },
        [0, 19],
        [40, 19],
        [40, 15.5],
        { arc: { to: [46, 9.5], radius: 6, bulge: 'in' } },
        [100, 9.5],
        [100, 0],
      ],
      MM,
    )
    expect(volumeM3Of(explicit)).toBeCloseTo(volumeM3Of(outlineOf(dishedTool)), 12)
    expect(surfaceM2Of(explicit)).toBeCloseTo(surfaceM2Of(outlineOf(dishedTool)), 10)
  })

  test('a shoulder stands at its joint, with the larger radius counting there', () => {
    const outline = outlineOf({ sections: [round(30, 30, 20), round(16, 16, 50)] })
    expect(radiusAt(outline, 0.0199)).toBeCloseTo(0.015, 9)
    expect(radiusAt(outline, 0.02)).toBeCloseTo(0.015, 9)
    expect(radiusAt(outline, 0.0201)).toBeCloseTo(0.008, 9)
    expect(radiusAt(outline, 0.08)).toBe(0)
  })

  test('[GE1] sections that are not round become equivalent rounds at both ends', () => {
    const outline = outlineOf({
      sections: [{ shape: 'flat', from: { acrossM: 0.005, widthM: 0.02 }, to: { acrossM: 0.02, widthM: 0.02 }, lengthM: 0.06 }],
    })
    expect(radiusAt(outline, 0)).toBeCloseTo((1.575 * 0.005) / 2, 9)
    expect(radiusAt(outline, 0.06)).toBeCloseTo((1.05 * 0.02) / 2, 9)
  })

  test('a fillet between a cone and a cylinder touches both', () => {
    const outline = outlineOf({ sections: [round(40, 20, 20), round(20, 20, 50, { filletM: 8 * MM })] })
    const arc = outline.pieces.find((piece) => piece.kind === 'arc')
    if (arc?.kind !== 'arc') throw new Error('there is a fillet')
    expect(arc.radiusM).toBeCloseTo(0.008, 9)
    // Its centre stands off the cylinder by its own radius, and off the cone too.
    expect(arc.centre.rM - 0.01).toBeCloseTo(0.008, 9)
    const offCone = ((arc.centre.xM - 0) * 0.01 + (arc.centre.rM - 0.02) * 0.02) / Math.sqrt(0.01 ** 2 + 0.02 ** 2)
    expect(offCone).toBeCloseTo(0.008, 9)
  })

  test('[GE2] a fillet that does not fit is made smaller, and said', () => {
    const { reducedFillets } = outlineOf({ sections: [round(30, 30, 20), round(24, 24, 50, { filletM: 7 * MM })] })
    expect(reducedFillets).toHaveLength(1)
    expect(reducedFillets[0]!.joint).toBe(0)
    expect(reducedFillets[0]!.askedM).toBe(7 * MM)
    expect(reducedFillets[0]!.usedM).toBeCloseTo(3 * MM, 9)
  })

  test('where there is no inner corner a fillet has no place', () => {
    const { reducedFillets } = outlineOf({ sections: [round(10, 30, 20), round(30, 30, 50, { filletM: 2 * MM })] })
    expect(reducedFillets).toEqual([{ joint: 0, askedM: 2 * MM, usedM: 0 }])
  })
})

describe('ends', () => {
  const volumeOf = (section: Section) => volumeM3Of(outlineOf({ sections: [section] }))

  test('a tip of half the diameter makes a half ball', () => {
    const body = volumeOf(round(14, 14, 50, { tip: { radiusM: 7 * MM } }))
    expect(body).toBeCloseTo(Math.PI * 0.007 ** 2 * 0.043 + (2 / 3) * Math.PI * 0.007 ** 3, 12)
  })

  test('a large tip radius makes a dome', () => {
    const height = 0.05 - Math.sqrt(0.05 ** 2 - 0.011 ** 2)
    const cap = (Math.PI * height * (3 * 0.011 ** 2 + height ** 2)) / 6
    expect(volumeOf(round(22, 22, 60, { tip: { radiusM: 50 * MM } }))).toBeCloseTo(
      Math.PI * 0.011 ** 2 * (0.06 - height) + cap,
      12,
    )
  })

  test('a small one rounds the rim and leaves a face', () => {
    const outline = outlineOf({ sections: [round(22, 22, 60, { tip: { radiusM: 3 * MM } })] })
    expect(radiusAt(outline, 0)).toBeCloseTo(0.008, 9)
    expect(radiusAt(outline, 0.003)).toBeCloseTo(0.011, 9)
  })

  test('on a point it makes a ball that the cone touches; the length stays', () => {
    const outline = outlineOf({ sections: [round(0, 12, 40, { tip: { radiusM: 1 * MM } })] })
    const [ball, side] = outline.pieces
    if (ball?.kind !== 'arc' || side?.kind !== 'line') throw new Error('a ball, then a side')
    expect(ball.from).toEqual({ xM: 0, rM: 0 })
    const along =
      (side.to.xM - side.from.xM) * (side.from.xM - ball.centre.xM) +
      (side.to.rM - side.from.rM) * (side.from.rM - ball.centre.rM)
    expect(along).toBeCloseTo(0, 12)
    expect(side.to).toEqual({ xM: 0.04, rM: 0.006 })
  })

  test('the other end is the mirror image of the working end', () => {
    const more = {
      dish: { acrossM: 11 * MM, depthM: 3 * MM },
      bore: { acrossM: 5 * MM, depthM: 9 * MM },
      tip: { radiusM: 1 * MM },
    }
    const front = outlineOf({ sections: [round(20, 24, 30, more), round(17, 17, 30)] })
    const rear = outlineOf({ sections: [round(17, 17, 30), round(24, 20, 30, more)] })
    expect(volumeM3Of(rear)).toBeCloseTo(volumeM3Of(front), 14)
    expect(surfaceM2Of(rear)).toBeCloseTo(surfaceM2Of(front), 12)
    for (const xM of [0.0005, 0.004, 0.02, 0.045]) expect(radiusAt(rear, 0.06 - xM)).toBeCloseTo(radiusAt(front, xM), 9)
  })
})

describe('measures of an outline', () => {
  test('a cone, a ball and a ring of a torus have their textbook volumes and areas', () => {
    const cone = outlineFrom([
      [0, 0],
      [3, 4],
      [3, 0],
    ])
    expect(volumeM3Of(cone)).toBeCloseTo((Math.PI * 16 * 3) / 3, 10)
    expect(surfaceM2Of(cone)).toBeCloseTo(Math.PI * 4 * 5 + Math.PI * 16, 10)
    const ball = outlineFrom([[0, 0], { arc: { to: [4, 0], centre: [2, 0] } }])
    expect(volumeM3Of(ball)).toBeCloseTo((4 / 3) * Math.PI * 8, 10)
    expect(surfaceM2Of(ball)).toBeCloseTo(4 * Math.PI * 4, 10)
    // A half-round groove of radius 1 about r = 5 in a cylinder of radius 5 and length 6, by Pappus.
    const groove = outlineFrom([[0, 0], [0, 5], [2, 5], { arc: { to: [4, 5], radius: 1, bulge: 'in' } }, [6, 5], [6, 0]])
    const half = (Math.PI / 2) * 2 * Math.PI * (5 - 4 / (3 * Math.PI))
    expect(volumeM3Of(groove)).toBeCloseTo(Math.PI * 25 * 6 - half, 10)
  })

  test('chords of a polyline are no longer than asked, and it closes on the axis', () => {
    const points = polylineOf(outlineOf(dishedTool), 1e-3)
    for (const [i, p] of points.slice(1).entries())
      expect(Math.sqrt((p.xM - points[i]!.xM) ** 2 + (p.rM - points[i]!.rM) ** 2)).toBeLessThanOrEqual(1e-3 + 1e-12)
    expect(points[0]!.rM).toBe(0)
    expect(points[points.length - 1]!.rM).toBe(0)
  })

  test.each([
    [
      'a start off the axis',
      [
        [0, 1],
        [5, 1],
        [5, 0],
      ],
      'axis',
    ],
    [
      'a point below the axis',
      [
        [0, 0],
        [0, 4],
        [5, -1],
      ],
      'outline[2]',
    ],
    ['an arc too small for its ends', [[0, 0], [0, 4], { arc: { to: [5, 4], radius: 2, bulge: 'in' } }, [5, 0]], 'outline[2]'],
    ['a centre unlike far from the ends', [[0, 0], [0, 4], { arc: { to: [5, 4], centre: [1, 4] } }, [5, 0]], 'outline[2]'],
    [
      'a line that crosses itself',
      [
        [0, 0],
        [0, 4],
        [5, 1],
        [5, 4],
        [0, 1],
        [9, 0],
      ],
      'crosses itself',
    ],
    [
      'a walk the wrong way',
      [
        [5, 0],
        [5, 4],
        [0, 4],
        [0, 0],
      ],
      'no metal',
    ],
  ] as const)('%s is refused by name', (_, items, says) => {
    expect(() => outlineFrom(items)).toThrow(says)
  })
})
