import { AIMS_FROM, pattern, type StartingPattern, struckLengthM, struckTaper, struckZone } from './starting-patterns.ts'
import type { SizesOf } from './starting-sizes.ts'

/** Struck tools that are round all along: punches, drifts, rivet sets. */

const BAR = { label: 'Bar, across', leastMm: 8, mostMm: 40 }
const LENGTH = { label: 'Length over all', leastMm: 80, mostMm: 400 }

interface Pointed {
  readonly kind: string
  readonly says: string
  readonly grades: readonly [string, ...string[]]
  readonly zone: string
  readonly aim: string
  readonly sizes: { readonly [Key in 'bar' | 'length' | 'nose' | 'taper']: SizesOf[string] }
  /** How wide the taper is where it meets the bar, and how much of it is hard, as shares. */
  readonly shoulder: number
  readonly hard: number
  readonly rounded?: boolean
}

function pointed({ kind, says, grades, zone, aim, sizes: of, shoulder, hard, rounded }: Pointed): StartingPattern {
  return pattern({
    kind,
    says: `${says} ${AIMS_FROM}`,
    grades,
    struck: true,
    sizes: of,
    shape: (sizes, units) => {
      const { m, typed } = sizes
      const end = struckTaper('round', m.bar, sizes)
      const restM = m.length - m.taper - end.lengthM
      const hardM = sizes.mark(hard * m.taper)
      const noseToM = sizes.mark(shoulder * m.bar)
      sizes.unless(
        restM >= m.bar,
        'length',
        'too short for that taper and something to hold; make it longer, or the taper shorter',
      )
      sizes.unless(
        hardM + m.bar <= m.length - struckLengthM(m.length),
        'length',
        'too short to be hard at one end and soft at the other',
      )
      sizes.unless(
        m.nose <= noseToM,
        'nose',
        `as thick as the bar there; write ${sizes.text(noseToM)} or less, or take a thicker bar`,
      )
      const tip = rounded ? { tip: { radius: sizes.exact(0.4 * m.nose) } } : {}
      return {
        profile: [
          { shape: 'round', from: typed.nose, to: sizes.exact(noseToM), length: typed.taper, ...tip },
          {
            shape: 'round',
            across: typed.bar,
            length: sizes.exact(restM),
            ...(shoulder < 1 ? { fillet: sizes.text(0.3 * m.bar) } : {}),
          },
          end.section(typed.bar),
        ],
        zones: [{ name: zone, from: sizes.exact(0), to: sizes.exact(hardM), aim }, struckZone(m.length, units)],
      }
    },
  })
}

const centrePunch = pointed({
  kind: 'centre punch',
  says: 'Marks where a hole comes; struck.',
  grades: ['O1', 'W1', '1095', 'S7'],
  zone: 'point',
  aim: '56..60 HRC',
  sizes: {
    bar: { ...BAR, mm: 12, inch: 0.5 },
    length: { ...LENGTH, mm: 110, inch: 4.5 },
    nose: { label: 'Point, across before grinding', mm: 2, inch: 0.125, leastMm: 1, mostMm: 8 },
    taper: { label: 'Taper, from the point to the bar', mm: 25, inch: 1, leastMm: 10, mostMm: 80 },
  },
  shoulder: 0.85,
  hard: 0.8,
  rounded: true,
})

const driftPin = pointed({
  kind: 'drift pin',
  says: 'Brings holes in line and drives pins out; struck.',
  grades: ['S7', '4140', '1084'],
  zone: 'nose',
  aim: '50..55 HRC',
  sizes: {
    bar: { ...BAR, mm: 16, inch: 0.625 },
    length: { ...LENGTH, mm: 160, inch: 6.5 },
    nose: { label: 'Nose, across', mm: 8, inch: 0.3125, leastMm: 2, mostMm: 30 },
    taper: { label: 'Taper, from the nose to the bar', mm: 60, inch: 2.5, leastMm: 20, mostMm: 150 },
  },
  shoulder: 1,
  hard: 0.6,
})

const eyeDrift = pattern({
  kind: 'eye drift',
  says: `Opens and sizes hot eyes; struck at its tail. An oval eye goes as the round that cools alike. ${AIMS_FROM}`,
  grades: ['H13', '4140', '1045'],
  struck: true,
  sizes: {
    swell: { label: 'Swell, across', mm: 25, inch: 1, leastMm: 10, mostMm: 50 },
    nose: { label: 'Nose, across', mm: 10, inch: 0.375, leastMm: 4, mostMm: 40 },
    taper: { label: 'Taper, from the nose to the swell', mm: 90, inch: 3.5, leastMm: 30, mostMm: 200 },
    body: { label: 'Swell, long', mm: 60, inch: 2.375, leastMm: 20, mostMm: 150 },
    tail: { label: 'Tail, long', mm: 40, inch: 1.5, leastMm: 30, mostMm: 100 },
  },
  shape: (sizes, units) => {
    const { m, typed } = sizes
    const lengthM = m.taper + m.body + m.tail
    const hardM = m.taper + m.body
    sizes.unless(m.nose <= 0.8 * m.swell, 'nose', `hardly thinner than the swell; write ${sizes.text(0.8 * m.swell)} or less`)
    sizes.unless(hardM <= lengthM - struckLengthM(lengthM), 'tail', 'too short to be soft where it is struck; make it longer')
    return {
      profile: [
        { shape: 'round', from: typed.nose, to: typed.swell, length: typed.taper },
        { shape: 'round', across: typed.swell, length: typed.body },
        { shape: 'round', from: typed.swell, to: sizes.text(0.7 * m.swell), length: typed.tail },
      ],
      zones: [
        { name: 'swell', from: sizes.exact(sizes.mark(0.5 * m.taper)), to: sizes.exact(hardM), aim: '44..50 HRC' },
        struckZone(lengthM, units),
      ],
    }
  },
})

const rivetSet = pattern({
  kind: 'rivet set',
  says: `Forms the head of a rivet in its hollow; struck. A narrow lip chips when it is hard. ${AIMS_FROM}`,
  grades: ['S7', '4140', '1084'],
  struck: true,
  sizes: {
    bar: { ...BAR, mm: 25, inch: 1, leastMm: 12, mostMm: 60 },
    length: { ...LENGTH, mm: 120, inch: 4.75 },
    hollow: { label: 'Hollow, across', mm: 16, inch: 0.625, leastMm: 5, mostMm: 45 },
    depth: { label: 'Hollow, deep', mm: 5, inch: 0.1875, leastMm: 1, mostMm: 20 },
  },
  shape: (sizes, units) => {
    const { m, typed } = sizes
    const end = struckTaper('round', m.bar, sizes)
    const hardM = sizes.mark(Math.max(m.depth + 0.005, 0.6 * m.bar))
    sizes.unless(
      m.hollow <= 0.8 * m.bar,
      'hollow',
      `leaves no lip; write ${sizes.text(0.8 * m.bar)} or less, or take a thicker bar`,
    )
    sizes.unless(m.depth <= 0.45 * m.hollow, 'depth', `deeper than half a ball; write ${sizes.text(0.45 * m.hollow)} or less`)
    sizes.unless(
      hardM + m.bar <= m.length - struckLengthM(m.length),
      'length',
      'too short to be hard at one end and soft at the other',
    )
    return {
      profile: [
        {
          shape: 'round',
          across: typed.bar,
          length: sizes.exact(m.length - end.lengthM),
          dish: { across: typed.hollow, depth: typed.depth },
        },
        end.section(typed.bar),
      ],
      zones: [{ name: 'hollow', from: sizes.exact(0), to: sizes.exact(hardM), aim: '50..55 HRC' }, struckZone(m.length, units)],
    }
  },
})

export const PUNCHES: readonly StartingPattern[] = [centrePunch, driftPin, eyeDrift, rivetSet]
