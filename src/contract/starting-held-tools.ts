import { sectionSizeText } from '#units/section-size.ts'
import { AIMS_FROM, pattern, type StartingPattern } from './starting-patterns.ts'

/** Tools that nobody strikes on their far end: what stands in the anvil or the vice, hammers, springs, blades in a handle. */

const hardy = pattern({
  kind: 'hot-cut hardy',
  says: `Stands in the anvil and cuts hot bar that is struck down on it. Kept soft enough to spare the hammer. ${AIMS_FROM}`,
  grades: ['4140', '5160', 'S7'],
  struck: false,
  sizes: {
    shank: { label: 'Shank, square', mm: 22, inch: 0.875, leastMm: 12, mostMm: 50 },
    stem: { label: 'Shank, long', mm: 45, inch: 1.75, leastMm: 20, mostMm: 100 },
    width: { label: 'Width of the edge', mm: 40, inch: 1.5, leastMm: 20, mostMm: 80 },
    edge: { label: 'Edge, thick before grinding', mm: 2, inch: 0.125, leastMm: 1, mostMm: 8 },
    blade: { label: 'Blade, high', mm: 50, inch: 2, leastMm: 25, mostMm: 100 },
  },
  shape: (sizes, units) => {
    const { m, typed } = sizes
    // It stands on the anvil by its shoulder, a little wider than the hole.
    const footM = sizes.mark(1.2 * m.shank)
    const size = (acrossM: number, widthM: number): string => sectionSizeText({ acrossM, widthM }, units)
    return {
      profile: [
        { shape: 'flat', from: size(m.edge, m.width), to: size(footM, Math.max(footM, m.width)), length: typed.blade },
        { shape: 'square', across: typed.shank, length: typed.stem, fillet: sizes.text(0.2 * m.shank) },
      ],
      zones: [{ name: 'edge', from: sizes.exact(0), to: sizes.exact(sizes.mark(0.5 * m.blade)), aim: '35..48 HRC' }],
    }
  },
})

const bottomTool = pattern({
  kind: 'bottom tool',
  says: `A head that bears on the work, on a thinner shank that stands in the anvil or the vice. ${AIMS_FROM}`,
  grades: ['4140', '1045', '5160'],
  struck: false,
  sizes: {
    head: { label: 'Head, across', mm: 38, inch: 1.5, leastMm: 16, mostMm: 80 },
    high: { label: 'Head, high', mm: 40, inch: 1.5625, leastMm: 15, mostMm: 100 },
    shank: { label: 'Shank, across', mm: 19, inch: 0.75, leastMm: 10, mostMm: 50 },
    stem: { label: 'Shank, long', mm: 60, inch: 2.375, leastMm: 20, mostMm: 120 },
  },
  shape: (sizes) => {
    const { m, typed } = sizes
    sizes.unless(m.shank <= 0.9 * m.head, 'shank', `hardly thinner than the head; write ${sizes.text(0.9 * m.head)} or less`)
    return {
      profile: [
        { shape: 'round', across: typed.head, length: typed.high },
        {
          shape: 'round',
          across: typed.shank,
          length: typed.stem,
          fillet: sizes.text(Math.min(0.3 * m.shank, 0.5 * (m.head - m.shank))),
        },
      ],
      zones: [{ name: 'face', from: sizes.exact(0), to: sizes.exact(sizes.mark(0.5 * m.high)), aim: '35..45 HRC' }],
    }
  },
})

const headingTool = pattern({
  kind: 'heading tool',
  says: `A block with a hole, to head bolts and shoulder tenons on. The hole is drilled from the face and opened below after the temper. ${AIMS_FROM}`,
  grades: ['4140', '1045'],
  struck: false,
  sizes: {
    block: { label: 'Block, across', mm: 45, inch: 1.75, leastMm: 20, mostMm: 80 },
    high: { label: 'Block, high', mm: 40, inch: 1.5, leastMm: 15, mostMm: 100 },
    hole: { label: 'Hole, across', mm: 10, inch: 0.375, leastMm: 4, mostMm: 40 },
    deep: { label: 'Hole, deep', mm: 25, inch: 0.875, leastMm: 5, mostMm: 90 },
  },
  shape: (sizes) => {
    const { m, typed } = sizes
    sizes.unless(m.hole <= 0.6 * m.block, 'hole', `leaves too little round it; write ${sizes.text(0.6 * m.block)} or less`)
    sizes.unless(
      m.deep <= m.high - 0.003,
      'deep',
      `comes out below; write ${sizes.text(Math.max(0.001, m.high - 0.004))} or less`,
    )
    return {
      profile: [{ shape: 'round', across: typed.block, length: typed.high, bore: { across: typed.hole, depth: typed.deep } }],
      zones: [{ name: 'face', from: sizes.exact(0), to: sizes.exact(sizes.mark(0.3 * m.high)), aim: '45..50 HRC' }],
    }
  },
})

const handHammer = pattern({
  kind: 'hand hammer',
  says: `A forging hammer: a face softer than the anvil's, and a tough eye that is drawn with a hot drift. ${AIMS_FROM}`,
  grades: ['1045', '4140'],
  struck: false,
  sizes: {
    side: { label: 'Head, square', mm: 40, inch: 1.5625, leastMm: 20, mostMm: 70 },
    length: { label: 'Head, long', mm: 105, inch: 4, leastMm: 60, mostMm: 200 },
    pein: { label: 'Pein, across', mm: 30, inch: 1.1875, leastMm: 8, mostMm: 60 },
  },
  shape: (sizes) => {
    const { m, typed } = sizes
    const chamferM = sizes.mark(0.2 * m.side)
    const peinM = sizes.mark(0.3 * m.length)
    const hardM = sizes.mark(0.35 * m.side)
    sizes.unless(m.pein <= m.side, 'pein', `wider than the head; write ${typed.side} or less`)
    sizes.unless(
      m.length >= 2 * m.side,
      'length',
      `too short for an eye behind the face; write ${sizes.text(2 * m.side)} or more`,
    )
    return {
      profile: [
        { shape: 'square', from: sizes.text(0.9 * m.side), to: typed.side, length: sizes.exact(chamferM) },
        { shape: 'square', across: typed.side, length: sizes.exact(m.length - chamferM - peinM) },
        { shape: 'square', from: typed.side, to: typed.pein, length: sizes.exact(peinM) },
      ],
      zones: [
        { name: 'face', from: sizes.exact(0), to: sizes.exact(hardM), aim: '45..52 HRC' },
        {
          name: 'eye',
          from: sizes.exact(sizes.mark(0.4 * m.length)),
          to: sizes.exact(sizes.mark(0.65 * m.length)),
          aim: 'at most 30 HRC',
        },
      ],
    }
  },
})

const flatSpring = pattern({
  kind: 'flat spring',
  says: `A leaf for a latch or a hold-down. Drawn far hotter than a kitchen oven goes. ${AIMS_FROM}`,
  grades: ['5160', '1084', '9260'],
  struck: false,
  sizes: {
    thick: { label: 'Thickness', mm: 3, inch: 0.125, leastMm: 1, mostMm: 10 },
    width: { label: 'Width', mm: 25, inch: 1, leastMm: 10, mostMm: 80 },
    length: { label: 'Length', mm: 180, inch: 7, leastMm: 40, mostMm: 600 },
  },
  shape: (sizes, units) => {
    const { m, typed } = sizes
    return {
      profile: [{ shape: 'flat', across: sectionSizeText({ acrossM: m.thick, widthM: m.width }, units), length: typed.length }],
      zones: [{ name: 'leaf', from: sizes.exact(0), to: typed.length, aim: '42..48 HRC' }],
    }
  },
})

const screwdriver = pattern({
  kind: 'screwdriver',
  says: 'A blade for slotted screws, with a stem for its handle. Aims: from memory, and common practice, no source.',
  grades: ['S7', 'O1', '5160'],
  struck: false,
  sizes: {
    bar: { label: 'Bar, across', mm: 8, inch: 0.3125, leastMm: 4, mostMm: 20 },
    length: { label: 'Length over all', mm: 150, inch: 6, leastMm: 60, mostMm: 400 },
    width: { label: 'Width of the blade', mm: 8, inch: 0.3125, leastMm: 3, mostMm: 25 },
    edge: { label: 'Blade, thick', mm: 1.5, inch: 0.0625, leastMm: 1, mostMm: 3 },
    blade: { label: 'Blade, from its end to the bar', mm: 30, inch: 1.25, leastMm: 10, mostMm: 60 },
  },
  shape: (sizes, units) => {
    const { m, typed } = sizes
    const thickM = sizes.mark(0.7 * m.bar)
    const size = (acrossM: number, widthM: number): string => sectionSizeText({ acrossM, widthM }, units)
    sizes.unless(m.length - m.blade >= 2 * m.bar, 'length', 'too short for that blade and a handle; make it longer')
    return {
      profile: [
        { shape: 'flat', from: size(m.edge, m.width), to: size(thickM, Math.max(thickM, m.bar)), length: typed.blade },
        { shape: 'round', across: typed.bar, length: sizes.exact(m.length - m.blade), fillet: sizes.text(0.3 * m.bar) },
      ],
      zones: [{ name: 'blade', from: sizes.exact(0), to: sizes.exact(sizes.mark(0.5 * m.blade)), aim: '52..57 HRC' }],
    }
  },
})

export const HELD_TOOLS: readonly StartingPattern[] = [hardy, bottomTool, headingTool, handHammer, flatSpring, screwdriver]
