import { describe, expect, test } from 'vitest'
import { forecastSchema } from './answers.ts'
import { forecast } from './forecast-answer.ts'
import { forecastWithPicture, historyOf, type Picture, STRUCTURES } from './picture.ts'
import { SKIN_COLOURS } from './skin-colours.ts'

/** A stepped drift, made up: its working end heated and dipped, the struck end left as the bar came. */
const DRIFT = {
  piece: 'made-up drift',
  steel: { analysis: { C: 0.55, Mn: 0.75, Si: 0.25, Cr: 0.8, Mo: 0.15 } },
  profile: [
    { shape: 'round', from: '9 mm', to: '16 mm', length: '45 mm' },
    { shape: 'round', across: '22 mm', length: '75 mm', fillet: '3 mm' },
  ],
  zones: [{ name: 'point', from: '0 mm', to: '30 mm', aim: '50..58 HRC' }],
  probes: [
    { name: 'in the taper', x: '25 mm', r: '0 mm' },
    { name: 'near the line', x: '42 mm', r: '4 mm' },
    { name: 'in the body', x: '100 mm', r: '6 mm' },
  ],
  shop: {
    fires: [{ name: 'gas forge', kind: 'gas' }],
    baths: [{ name: 'oil drum', kind: 'fast oil', volume: '20 L', depth: '300 mm', temperature: '50 °C' }],
    ovens: [{ name: 'oven', max: '300 °C', reads: '6 °C low', swing: '10 °C' }],
  },
  process: [
    { do: 'heat', in: 'gas forge', to: '850 °C', hold: '5 min', part: { from: '0 mm', to: '60 mm' } },
    { do: 'carry', for: '3 s' },
    { do: 'quench', in: 'oil drum', depth: '50 mm', for: '2 min', agitation: 'moderate' },
    { do: 'temper', in: 'oven', at: '245 °C', hold: '1 h', times: 2 },
  ],
}
const REQUEST = { grade: 'draft', members: 40 } as const
const { forecast: told, picture } = forecastWithPicture(DRIFT, REQUEST)
const nodes = picture.xMm.length

const nodeAt = (xMm: number, rMm: number): number => {
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < nodes; i++) {
    const away = Math.hypot((picture.xMm[i] as number) - xMm, (picture.rMm[i] as number) - rMm)
    if (away < least) [best, least] = [i, away]
  }
  return best
}

describe('a picture', () => {
  test('goes with the very forecast that is given without one, and with its schema', () => {
    expect(told).toEqual(forecast(DRIFT, REQUEST))
    expect(forecastSchema.safeParse(told).error).toBeUndefined()
  })

  test('is the same each time', () => {
    const again = forecastWithPicture(DRIFT, REQUEST).picture
    for (const [key, field] of Object.entries(picture)) {
      const other = again[key as keyof Picture]
      if (!ArrayBuffer.isView(field) || !ArrayBuffer.isView(other)) continue
      const bytes = new Uint8Array(other.buffer)
      expect(new Uint8Array(field.buffer).every((byte, i) => byte === bytes[i])).toBe(true)
    }
    expect(again.skin).toEqual(picture.skin)
  })

  test('has arrays of the sizes it says', () => {
    const frames = picture.timeS.length
    expect([picture.step.length, picture.levelMm.length]).toEqual([frames, frames])
    expect(picture.temperatureC.length).toBe(frames * nodes)
    for (const key of [
      'rMm',
      'quenchedHrc',
      'temperedHrc',
      'bandHrc',
      'structure',
      'martensiteShare',
      'ferriteShare',
      'pearliteShare',
      'bainiteShare',
      'peakC',
    ] as const)
      expect(picture[key].length).toBe(nodes)
    expect(Math.max(...picture.triangles)).toBe(nodes - 1)
    expect(Math.max(...picture.xMm)).toBeCloseTo(told.length_mm, 3)
    const buffers = Object.values(picture).flatMap((each) => (ArrayBuffer.isView(each) ? [each.buffer] : []))
    expect(new Set(buffers).size).toBe(buffers.length)
  })

  test('shows every step at its start and its end, and time never falls', () => {
    const { timeS, step } = picture
    for (let i = 1; i < timeS.length; i++) {
      expect(timeS[i] as number).toBeGreaterThanOrEqual(timeS[i - 1] as number)
      expect(step[i] as number).toBeGreaterThanOrEqual(step[i - 1] as number)
    }
    told.steps.forEach(({ start_s, end_s }, index) => {
      const own = Array.from(timeS).filter((_, i) => step[i] === index)
      expect(own[0]).toBeCloseTo(start_s, 0)
      expect(own.some((s) => Math.abs(s - end_s) <= 0.051)).toBe(true)
    })
  })

  test('is never colder than the shop nor hotter than the fire shows', () => {
    const least = picture.temperatureC.reduce((a, b) => Math.min(a, b))
    const most = picture.temperatureC.reduce((a, b) => Math.max(a, b))
    expect(least).toBeGreaterThan(19.9)
    expect(least).toBeLessThan(20.1)
    expect(most).toBeGreaterThan(840)
    expect(most).toBeLessThan(850 + 12)
    expect(picture.temperatureC.some(Number.isNaN)).toBe(false)
  })

  test('agrees with the curves of skin and middle', () => {
    const { x_mm, time_s, skin_C, centre_C } = told.curves
    const worst = (curve: readonly number[], wanted: (node: number) => boolean): number => {
      let least = Number.POSITIVE_INFINITY
      for (let node = 0; node < nodes; node++) {
        if (!wanted(node)) continue
        let off = 0
        time_s.forEach((s, i) => {
          off = Math.max(off, Math.abs((curve[i] as number) - filmC(picture, node, s)))
        })
        least = Math.min(least, off)
      }
      return least
    }
    const near = (node: number): boolean => Math.abs((picture.xMm[node] as number) - x_mm) < 4
    expect(worst(skin_C, near)).toBeLessThan(10)
    expect(worst(centre_C, near)).toBeLessThan(5)
    told.steps.forEach(({ end_s, skin_C: atEnd }) => {
      expect(atEnd).toBeDefined()
      const last = time_s.findLastIndex((s) => s <= end_s + 0.06)
      expect(Math.abs((atEnd as number) - (skin_C[last] as number))).toBeLessThan(2.6)
    })
  })

  test('has the hardness that the probes have, which are nodes', () => {
    for (const { x_mm, r_mm, peak_C, cooling_800_500_s, quenched_HRC, tempered_HRC } of told.probes) {
      const node = nodeAt(x_mm, r_mm)
      expect(picture.quenchedHrc[node]).toBeCloseTo(quenched_HRC.value, 0)
      // Tempering is worked out for each 0.02 % of carbon in solution, once.
      expect(Math.abs((picture.temperedHrc[node] as number) - tempered_HRC.value)).toBeLessThan(0.15)
      expect(Math.abs((picture.peakC[node] as number) - peak_C)).toBeLessThan(0.051)
      const cooling = picture.cooling800To500S[node] as number
      if (cooling_800_500_s === null) expect(cooling).toBeNaN()
      else expect(cooling).toBeCloseTo(cooling_800_500_s, 1)
    }
  })

  test('has along the piece the hardness and the band that the forecast gives there', () => {
    const widthsAt = told.along.map(({ skin_tempered_HRC: skin, centre_tempered_HRC: centre }) => [
      skin.high - skin.low,
      centre.high - centre.low,
    ])
    told.along.forEach(({ x_mm, skin_tempered_HRC, centre_tempered_HRC }, i) => {
      const widths = widthsAt.slice(Math.max(0, i - 1), i + 2).flat()
      for (const [figure, rMm] of [
        [skin_tempered_HRC, skinMm(x_mm)],
        [centre_tempered_HRC, 0],
      ] as const) {
        const { low, high } = aboutPlace(x_mm, rMm, picture.temperedHrc)
        expect(figure.value).toBeGreaterThan(low - 0.15)
        expect(figure.value).toBeLessThan(high + 0.15)
        // Spread from the places along: here it is that of this height and of the two beside it.
        const width = historyOf(picture, x_mm, rMm).bandHrc
        expect(width).toBeGreaterThan(Math.min(...widths) - 0.11)
        expect(width).toBeLessThan(Math.max(...widths) + 0.11)
      }
    })
  })

  test('shows the bath up to its line while the piece is in it, and nowhere else', () => {
    picture.levelMm.forEach((level, i) => {
      if (picture.step[i] !== 2) expect(level).toBeNaN()
      else if (!Number.isNaN(level)) expect(level).toBeLessThanOrEqual(50.001)
    })
    expect(Math.max(...picture.levelMm.filter((level) => !Number.isNaN(level)))).toBeCloseTo(50, 3)
  })

  test('tells the hardened point from the bar as it came', () => {
    const structureAt = (xMm: number): string => STRUCTURES[picture.structure[nodeAt(xMm, 0)] as number] as string
    expect(structureAt(10)).toBe('hardened')
    expect(structureAt(115)).toBe('as before the heat')
    const kinds = new Set(Array.from(picture.structure, (index) => STRUCTURES[index]))
    expect(kinds.has('part-way heated')).toBe(true)
    for (let i = 0; i < nodes; i++) {
      const name = STRUCTURES[picture.structure[i] as number]
      const share = picture.martensiteShare[i] as number
      if (name === 'hardened') expect(share).toBeGreaterThan(0.85)
      if (name === 'as before the heat') expect(share).toBeLessThan(0.021)
      const others = [picture.ferriteShare[i]!, picture.pearliteShare[i]!, picture.bainiteShare[i]!]
      expect(Math.min(...others)).toBeGreaterThanOrEqual(0)
      expect(others.reduce((sum, each) => sum + each, share)).toBeLessThan(1 + 1e-6)
      if (name === 'soft after heating') expect(others.reduce((sum, each) => sum + each, 0)).toBeGreaterThan(0.8)
    }
  })

  test('shows the colours of the oven at the point: two hours at 251 °C take brightened metal as far as five minutes at 310', () => {
    const { xMm, colour, hottestC } = picture.skin
    for (let i = 1; i < xMm.length; i++) expect(xMm[i] as number).toBeGreaterThan(xMm[i - 1] as number)
    expect([colour.length, hottestC.length]).toEqual([xMm.length, xMm.length])
    expect(['dark purple', 'dark blue']).toContain(colour[0]?.name)
    for (const each of colour) expect(SKIN_COLOURS).toContain(each)
  })
})

test('one member, or none, is no certainty', () => {
  for (const members of [0, 1]) {
    const { picture: alone } = forecastWithPicture(DRIFT, { grade: 'sketch', members })
    expect(Math.min(...alone.bandHrc)).toBeGreaterThan(2)
  }
})

test('a piece that is not tempered after the fire is scaled; one that never saw it keeps its brightness', () => {
  const [heat, walk, quench] = DRIFT.process
  const hardened = forecastWithPicture({ ...DRIFT, process: [heat, walk, quench] }, { grade: 'sketch' }).picture.skin.colour
  expect(hardened[0]?.name).toBe('scaled')
  const temper = { ...DRIFT.process[3], at: '160 °C' }
  const drawn = forecastWithPicture({ ...DRIFT, process: [temper] }, { grade: 'sketch' })
  expect(new Set(drawn.picture.skin.colour.map(({ name }) => name))).toEqual(new Set(['none']))
  expect(drawn.picture.cooling800To500S.every(Number.isNaN)).toBe(true)
  expect(new Set(drawn.picture.structure)).toEqual(new Set([0]))
})

function filmC({ timeS, temperatureC }: Picture, node: number, atS: number): number {
  const at = (frame: number): number => temperatureC[frame * nodes + node] as number
  const after = timeS.findIndex((s) => s >= atS)
  if (after < 0) return at(timeS.length - 1)
  if (after === 0) return at(0)
  const [fromS, toS] = [timeS[after - 1] as number, timeS[after] as number]
  return at(after - 1) + ((atS - fromS) / (toS - fromS)) * (at(after) - at(after - 1))
}

/** The skin of the made-up drift: a taper from 9 to 16 mm, then 22 mm. */
function skinMm(xMm: number): number {
  return xMm < 45 ? 4.5 + (3.5 * xMm) / 45 : 11
}

/** Least and most of a field over the nodes about a place. */
function aboutPlace(xMm: number, rMm: number, field: Float32Array): { low: number; high: number } {
  const within = Array.from(field).filter(
    (_, i) => Math.hypot((picture.xMm[i] as number) - xMm, (picture.rMm[i] as number) - rMm) < 2.5,
  )
  return { low: Math.min(...within), high: Math.max(...within) }
}
