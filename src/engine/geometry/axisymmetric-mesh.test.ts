import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { meshOf } from './axisymmetric-mesh.ts'
import { locateIn } from './locate.ts'
import type { AxisymmetricMesh, MeshGrade } from './mesh.ts'
import { envelopeSize } from './node-order.ts'
import { type Outline, outlineOf, radiusAt, surfaceM2Of, volumeM3Of } from './outline.ts'
import { line } from './outline-pieces.ts'
import type { Profile, Section, SectionShape } from './profile.ts'
import { profileProblems } from './profile-problems.ts'

const MM = 1e-3

function round(fromMm: number, toMm: number, lengthMm: number, more: Partial<Section> = {}): Section {
  return { shape: 'round', from: { acrossM: fromMm * MM }, to: { acrossM: toMm * MM }, lengthM: lengthMm * MM, ...more }
}

const dishedTool = outlineOf({
  sections: [
    round(38, 38, 40, { dish: { acrossM: 2 * Math.sqrt(72) * MM, depthM: 6 * MM } }),
    round(19, 19, 60, { filletM: 6 * MM }),
  ],
})

const awkward: Record<string, Profile> = {
  'a sharp point': { sections: [round(0, 3, 12), round(3, 3, 80)] },
  'a taper to half a millimetre': { sections: [round(0.5, 20, 80, { tip: { radiusM: 0.25 * MM } })] },
  'a half ball as wide as its end': {
    sections: [round(20, 20, 30, { dish: { acrossM: 20 * MM, depthM: 10 * MM } }), round(12, 12, 50)],
  },
  'a thin collar on a thin rod': { sections: [round(4, 4, 30), round(40, 40, 1), round(4, 4, 30)] },
  'a thin wall about a hole': { sections: [round(24, 24, 50, { bore: { acrossM: 22 * MM, depthM: 30 * MM } })] },
  'a crowned head': { sections: [round(16, 16, 50), round(40, 40, 25, { tip: { radiusM: 80 * MM } })] },
  'points at both ends': { sections: [round(0, 10, 20), round(10, 0, 30)] },
}

describe('[GE4] mesh of a body', () => {
  test.each(Object.entries(awkward))('%s is cut soundly', (_, profile) => {
    const outline = outlineOf(profile)
    for (const grade of ['sketch', 'draft', 'normal'] as const) expectSound(meshOf(outline, grade), outline)
  })

  test('it stays within its grade', () => {
    const bar = outlineOf({ sections: [round(40, 40, 200)] })
    const counts = (outline: Outline) =>
      (['sketch', 'draft', 'normal', 'fine'] as const).map((grade) => meshOf(outline, grade).xM.length)
    for (const outline of [bar, dishedTool]) {
      const [sketch, draft, normal, fine] = counts(outline)
      expect(sketch).toBeGreaterThan(60)
      expect(sketch).toBeLessThan(250)
      expect(draft).toBeGreaterThan(300)
      expect(draft).toBeLessThan(900)
      expect(normal).toBeLessThan(4000)
      expect(fine).toBeGreaterThan(normal!)
    }
  })

  test('a fifty-millimetre bar of three metres still is', () => {
    expect(meshOf(outlineOf({ sections: [round(50, 50, 3000)] }), 'normal').xM.length).toBeLessThan(5000)
    expect(meshOf(outlineOf({ sections: [round(6, 6, 3000)] }), 'draft').xM.length).toBeLessThan(2000)
  })

  test('the same body gives the same bits', () => {
    const once = meshOf(dishedTool, 'draft', { points: [{ xM: 0.03, rM: 0.004 }] })
    expect(meshOf(dishedTool, 'draft', { points: [{ xM: 0.03, rM: 0.004 }] })).toEqual(once)
  })

  test('arcs are followed closely: volume and area come within a thousandth', () => {
    const mesh = meshOf(dishedTool, 'normal')
    expect(sum(mesh.volumeM3) / volumeM3Of(dishedTool)).toBeCloseTo(1, 3)
    expect(sum(mesh.surfaceAreaM2) / surfaceM2Of(dishedTool)).toBeCloseTo(1, 3)
  })

  test('points asked for are nodes, on the surface and inside; one outside goes to the nearest surface', () => {
    const half = 6 * Math.SQRT1_2
    const points = [
      [6, 0],
      [25, 0],
      [20, 19],
      [0, 19],
      [46 - half, 15.5 - half],
      [75, 9.5],
      [75, 0],
      [0, Math.sqrt(72)],
      [33.3, 7.7],
    ].map(([x, r]) => ({ xM: x! * MM, rM: r! * MM }))
    const mesh = meshOf(dishedTool, 'draft', { points: [...points, points[8]!, { xM: 0.02, rM: 0.03 }] })
    for (const [k, { xM, rM }] of points.entries()) {
      const node = mesh.askedNode[k]!
      expect(Math.abs(mesh.xM[node]! - xM)).toBeLessThan(1e-9)
      expect(Math.abs(mesh.rM[node]! - rM)).toBeLessThan(1e-9)
      expect(mesh.depthM[node]! === 0).toBe(k !== 1 && k !== 6 && k !== 8)
    }
    expect(mesh.askedNode[9]).toBe(mesh.askedNode[8])
    const moved = mesh.askedNode[10]!
    expect(mesh.xM[moved]).toBeCloseTo(0.02, 9)
    expect(mesh.rM[moved]).toBeCloseTo(0.019, 9)
    expectSound(mesh, dishedTool)
  })

  test('the surface is finely cut at a waterline', () => {
    const spacing = (mesh: AxisymmetricMesh) => {
      const near = [...mesh.boundaryNode].filter((i) => Math.abs(mesh.xM[i]! - 0.07) < 2.5e-3)
      return near.length
    }
    expect(spacing(meshOf(dishedTool, 'normal', { waterlinesM: [0.07] }))).toBeGreaterThan(spacing(meshOf(dishedTool, 'normal')))
  })

  test('faces across the axis reach 0.25 mm along it', () => {
    const mesh = meshOf(outlineOf({ sections: [round(25, 25, 60)] }), 'draft')
    expect(mesh.surfaceHighM.every((high, s) => high - mesh.surfaceLowM[s]! > 0.25e-3 - 1e-12)).toBe(true)
    const face = [...mesh.surfaceNode.keys()].filter((s) => mesh.surfaceHighM[s]! < 0.2e-3)
    expect(face.length).toBeGreaterThan(5)
    for (const s of face) expect(mesh.surfaceLowM[s]).toBeCloseTo(-0.125e-3, 9)
  })

  test('its envelope is far smaller than that of the same mesh numbered at random', () => {
    const mesh = meshOf(dishedTool, 'normal')
    const count = mesh.xM.length
    const scattered = (i: number) => (i * 7919) % count
    expect(envelopeSize(count, mesh.edgeFrom, mesh.edgeTo)).toBeLessThan(60 * count)
    expect(envelopeSize(count, mesh.edgeFrom, mesh.edgeTo)).toBeLessThan(
      0.1 * envelopeSize(count, mesh.edgeFrom.map(scattered), mesh.edgeTo.map(scattered)),
    )
  })

  test('a body that cannot be is refused with the place', () => {
    // Two cones that pass through each other, put together without the checks of an outline.
    const corners = [
      [0, 0],
      [0, 4],
      [5, 1],
      [5, 4],
      [0, 1],
      [9, 0],
    ].map(([x, r]) => ({ xM: x! * MM, rM: r! * MM }))
    const pieces = corners.slice(1).map((to, i) => line(corners[i]!, to))
    expect(() => meshOf({ pieces, lengthM: 9 * MM, reducedFillets: [] }, 'draft')).toThrow(/^mesh: .*(x = |m3)/)
  })
})

describe('[HC2] conductances', () => {
  test('a temperature linear along a cylinder flows evenly: nothing stays at any node, and the ends carry k A / L', () => {
    const mesh = meshOf(outlineOf({ sections: [round(25, 25, 70)] }), 'normal')
    const net = netFlow(mesh, (xM) => xM)
    const area = Math.PI * 0.0125 ** 2
    let through = 0
    let most = 0
    for (const [i, flow] of net.entries()) {
      const x = mesh.xM[i]!
      if (x < 1e-9) through += flow
      else if (x < 0.07 - 1e-9) most = Math.max(most, Math.abs(flow))
    }
    expect(most).toBeLessThan(1e-12)
    expect(through).toBeCloseTo(area, 12)
  })

  test('in the dished tool such a field leaves nothing at inner nodes', () => {
    const mesh = meshOf(dishedTool, 'draft')
    for (const [i, flow] of netFlow(mesh, (xM) => xM).entries())
      if (mesh.depthM[i]! > 0) expect(Math.abs(flow)).toBeLessThan(1e-12)
  })

  test('a field rising with r squared stores 4 per unit volume, to second order', () => {
    // div grad r2 = 4 in a body of revolution.
    const error = (grade: MeshGrade) => {
      const mesh = meshOf(outlineOf({ sections: [round(25, 25, 40)] }), grade)
      const net = netFlow(mesh, (_, rM) => rM * rM)
      let inner = 0
      let volume = 0
      for (const [i, flow] of net.entries()) {
        if (mesh.depthM[i] === 0) continue
        inner += flow
        volume += mesh.volumeM3[i]!
      }
      return Math.abs(inner / (4 * volume) - 1)
    }
    expect(error('draft')).toBeLessThan(0.03)
    expect(error('fine')).toBeLessThan(0.01)
  })
})

describe('[GE4] any body that the problems let pass', () => {
  const size = fc.double({ min: 0.5, max: 60, noNaN: true })
  const section = fc.record({
    shape: fc.constantFrom<SectionShape>('round', 'round', 'square', 'hexagon', 'octagon', 'flat'),
    from: size,
    to: size,
    even: fc.boolean(),
    wide: fc.double({ min: 1, max: 5, noNaN: true }),
    lengthMm: fc.double({ min: 1, max: 120, noNaN: true }),
    filletMm: fc.option(fc.double({ min: 0.2, max: 8, noNaN: true })),
    hollow: fc.option(
      fc.record({ share: fc.double({ min: 0.1, max: 1, noNaN: true }), deep: fc.double({ min: 0.03, max: 0.5, noNaN: true }) }),
    ),
    bore: fc.option(
      fc.record({ share: fc.double({ min: 0.1, max: 0.8, noNaN: true }), deepMm: fc.double({ min: 1, max: 60, noNaN: true }) }),
    ),
    tipMm: fc.option(fc.double({ min: 0.2, max: 60, noNaN: true })),
    pointed: fc.boolean(),
  })
  const anyProfile = fc.array(section, { minLength: 1, maxLength: 4 }).map(
    (all): Profile => ({
      sections: all.map((s, i): Section => {
        const isFirst = i === 0
        const isEnd = isFirst || i === all.length - 1
        const from = isFirst && s.pointed ? 0 : s.from
        const to = s.even && from > 0 ? from : s.to
        const sized = (mm: number) =>
          s.shape === 'flat' ? { acrossM: mm * MM, widthM: Math.max(mm, 0.5) * s.wide * MM } : { acrossM: mm * MM }
        const end = isFirst ? from : to
        return {
          shape: s.shape,
          from: sized(from),
          to: sized(to),
          lengthM: s.lengthMm * MM,
          ...(s.filletMm !== null && !isFirst ? { filletM: s.filletMm * MM } : {}),
          ...(s.hollow !== null && isEnd
            ? { dish: { acrossM: s.hollow.share * end * MM, depthM: s.hollow.share * s.hollow.deep * end * MM } }
            : {}),
          ...(s.bore !== null && isEnd ? { bore: { acrossM: s.bore.share * end * MM, depthM: s.bore.deepMm * MM } } : {}),
          ...(s.tipMm !== null && isEnd ? { tip: { radiusM: s.tipMm * MM } } : {}),
        }
      }),
    }),
  )
  const anyPoint = fc.record({ x: fc.double({ min: 0, max: 1, noNaN: true }), r: fc.double({ min: 0, max: 0.95, noNaN: true }) })

  test('has a sound mesh in which points asked for are nodes', () => {
    let tried = 0
    fc.assert(
      fc.property(anyProfile, fc.array(anyPoint, { maxLength: 3 }), (profile, shares) => {
        fc.pre(profileProblems(profile).length === 0)
        tried++
        const outline = outlineOf(profile)
        const points = shares.map(({ x, r }) => ({ xM: x * outline.lengthM, rM: r * radiusAt(outline, x * outline.lengthM) }))
        const mesh = meshOf(outline, 'draft', { points })
        expectSound(mesh, outline)
        expect(mesh.askedNode).toHaveLength(points.length)
        for (const [k, { xM, rM }] of points.entries()) {
          const node = mesh.askedNode[k]!
          const offM = Math.sqrt((mesh.xM[node]! - xM) ** 2 + (mesh.rM[node]! - rM) ** 2)
          // Where it is on the surface it may have come from a hollow, or across a speck that was bridged.
          if (mesh.depthM[node]! > 0) expect(offM).toBeLessThan(2e-6)
        }
      }),
      { numRuns: 40, seed: 20 },
    )
    expect(tried).toBeGreaterThanOrEqual(40)
  })
})

/** What every mesh must be, whatever the body. */
function expectSound(mesh: AxisymmetricMesh, outline: Outline): void {
  const { xM, rM, triangles, volumeM3, edgeFrom, edgeTo, edgeConductanceM, boundaryNode } = mesh
  expect(volumeM3.every((v) => v > 0)).toBe(true)
  expect(Math.abs(sum(volumeM3) / volumeM3Of(outline) - 1)).toBeLessThan(0.06)
  const edges = new Set<number>()
  for (let t = 0; t < triangles.length; t += 3)
    for (let k = 0; k < 3; k++) edges.add(triangles[t + k]! * xM.length + triangles[t + ((k + 1) % 3)]!)
  let lost = 0
  for (let i = 0; i + 1 < boundaryNode.length; i++) {
    const [a, b] = [boundaryNode[i]!, boundaryNode[i + 1]!]
    if (!edges.has(a * xM.length + b) && !edges.has(b * xM.length + a)) lost++
    if (mesh.depthM[a] !== 0) lost++
  }
  expect(lost).toBe(0)
  let backward = 0
  let forward = 0
  for (const g of edgeConductanceM) {
    if (g < 0) backward -= g
    else forward += g
  }
  expect(backward).toBeLessThan(0.02 * forward)
  expect(edgeFrom.every((a, e) => a < edgeTo[e]!)).toBe(true)
  // Every node reads itself, and a point in a triangle reads that triangle's plane.
  for (let i = 0; i < xM.length; i += 97) {
    const { nodes, weights } = locateIn(mesh, xM[i]!, rM[i]!)
    const x = weights[0] * xM[nodes[0]]! + weights[1] * xM[nodes[1]]! + weights[2] * xM[nodes[2]]!
    const r = weights[0] * rM[nodes[0]]! + weights[1] * rM[nodes[1]]! + weights[2] * rM[nodes[2]]!
    expect(Math.abs(x - xM[i]!) + Math.abs(r - rM[i]!)).toBeLessThan(1e-8)
  }
}

function netFlow(
  { xM, rM, edgeFrom, edgeTo, edgeConductanceM }: AxisymmetricMesh,
  field: (xM: number, rM: number) => number,
): Float64Array {
  const net = new Float64Array(xM.length)
  for (let e = 0; e < edgeFrom.length; e++) {
    const [a, b] = [edgeFrom[e]!, edgeTo[e]!]
    const flow = edgeConductanceM[e]! * (field(xM[b]!, rM[b]!) - field(xM[a]!, rM[a]!))
    net[a]! += flow
    net[b]! -= flow
  }
  return net
}

function sum(values: Float64Array): number {
  return values.reduce((total, v) => total + v, 0)
}
