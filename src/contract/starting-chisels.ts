import { sectionSizeText } from '#units/section-size.ts'
import { AIMS_FROM, pattern, type StartingPattern, struckLengthM, struckTaper, struckZone } from './starting-patterns.ts'
import type { SizesOf } from './starting-sizes.ts'

/** Struck tools that cut: an edge forged flat from octagon or round bar. */

interface Blade {
  readonly kind: string
  readonly says: string
  readonly grades: readonly [string, ...string[]]
  readonly aim: string
  readonly bar: 'octagon' | 'round' | 'square'
  readonly sizes: { readonly [Key in 'bar' | 'length' | 'width' | 'edge' | 'blade']: SizesOf[string] }
  /** Thickness and width of the blade where it meets the bar, as shares of the bar. */
  readonly root: { readonly thick: number; readonly wide: number }
  /** How far up from the edge it is hard, as a share of the blade. */
  readonly hard: number
}

function blade({ kind, says, grades, aim, bar, sizes: of, root, hard }: Blade): StartingPattern {
  return pattern({
    kind,
    says: `${says} ${AIMS_FROM}`,
    grades,
    struck: true,
    sizes: of,
    shape: (sizes, units) => {
      const { m, typed } = sizes
      const end = struckTaper(bar, m.bar, sizes)
      const restM = m.length - m.blade - end.lengthM
      const hardM = sizes.mark(hard * m.blade)
      sizes.unless(
        restM >= m.bar,
        'length',
        'too short for that blade and something to hold; make it longer, or the blade shorter',
      )
      sizes.unless(
        hardM + m.bar <= m.length - struckLengthM(m.length),
        'length',
        'too short to be hard at one end and soft at the other',
      )
      sizes.unless(m.edge <= m.width, 'edge', 'thicker than the edge is wide; make it thinner')
      // However wide the edge is drawn out, at its root it is bar again.
      const thickM = sizes.mark(root.thick * m.bar)
      const wideM = Math.max(thickM, sizes.mark(root.wide * m.bar))
      const size = (acrossM: number, widthM: number): string => sectionSizeText({ acrossM, widthM }, units)
      return {
        profile: [
          { shape: 'flat', from: size(m.edge, m.width), to: size(thickM, wideM), length: typed.blade },
          { shape: bar, across: typed.bar, length: sizes.exact(restM), fillet: sizes.text(0.3 * m.bar) },
          end.section(typed.bar),
        ],
        zones: [{ name: 'edge', from: sizes.exact(0), to: sizes.exact(hardM), aim }, struckZone(m.length, units)],
      }
    },
  })
}

const bar = (mm: number, inch: number): SizesOf[string] => ({ label: 'Bar, across its flats', mm, inch, leastMm: 8, mostMm: 40 })
const length = (mm: number, inch: number): SizesOf[string] => ({ label: 'Length over all', mm, inch, leastMm: 80, mostMm: 400 })
const edge = (mm: number, inch: number): SizesOf[string] => ({
  label: 'Edge, thick before grinding',
  mm,
  inch,
  leastMm: 1,
  mostMm: 8,
})
const width = (label: string, mm: number, inch: number): SizesOf[string] => ({ label, mm, inch, leastMm: 3, mostMm: 60 })
const bladeLength = (mm: number, inch: number): SizesOf[string] => ({
  label: 'Blade, from the edge to the bar',
  mm,
  inch,
  leastMm: 20,
  mostMm: 120,
})

export const CHISELS: readonly StartingPattern[] = [
  blade({
    kind: 'cold chisel',
    says: 'Cuts cold bar and rivet heads; struck.',
    grades: ['W1', '1084', 'S7', '5160'],
    aim: '53..59 HRC',
    bar: 'octagon',
    sizes: {
      bar: bar(19, 0.75),
      length: length(170, 6.5),
      width: width('Width of the edge', 22, 0.875),
      edge: edge(2.5, 0.125),
      blade: bladeLength(45, 1.75),
    },
    root: { thick: 0.6, wide: 1 },
    hard: 0.5,
  }),
  blade({
    kind: 'hot chisel',
    says: 'Cuts hot bar, thin and long in the blade; struck. Plain steel loses its temper in use.',
    grades: ['S7', 'H13', '4140', '5160'],
    aim: '46..54 HRC',
    bar: 'round',
    sizes: {
      bar: bar(22, 0.875),
      length: length(200, 8),
      width: width('Width of the edge', 32, 1.25),
      edge: edge(2, 0.125),
      blade: bladeLength(65, 2.5),
    },
    root: { thick: 0.75, wide: 1 },
    hard: 0.6,
  }),
  blade({
    kind: 'cape chisel',
    says: 'Cuts keyways and narrow grooves: narrow at the edge, deep behind it; struck.',
    grades: ['W1', 'S7', 'O1', '5160'],
    aim: '53..59 HRC',
    bar: 'octagon',
    sizes: {
      bar: bar(16, 0.625),
      length: length(160, 6.25),
      width: width('Width of the cut', 8, 0.3125),
      edge: edge(3, 0.125),
      blade: bladeLength(40, 1.5),
    },
    root: { thick: 0.5, wide: 1 },
    hard: 0.5,
  }),
  blade({
    kind: 'slot punch',
    says: 'Opens slots in hot bar; struck. Cooled often, it keeps its temper.',
    grades: ['S7', 'H13', '4140'],
    aim: '46..54 HRC',
    bar: 'round',
    sizes: {
      bar: bar(22, 0.875),
      length: length(180, 7),
      width: width('Slot, long', 16, 0.625),
      edge: edge(5, 0.1875),
      blade: bladeLength(60, 2.375),
    },
    root: { thick: 0.85, wide: 1 },
    hard: 0.65,
  }),
  blade({
    kind: 'butcher',
    says: 'Sets in a shoulder before bar is drawn down; struck, on a handle or held.',
    grades: ['4140', '1045', '5160', 'S7'],
    aim: '35..45 HRC',
    bar: 'square',
    sizes: {
      bar: bar(32, 1.25),
      length: length(130, 5),
      width: width('Width of the edge', 40, 1.5),
      edge: edge(4, 0.1875),
      blade: bladeLength(45, 1.75),
    },
    root: { thick: 0.8, wide: 1 },
    hard: 0.6,
  }),
  blade({
    kind: 'top fuller',
    says: 'Draws out and necks in with a round nose; struck, on a handle or held. Round its edge when it is drawn out.',
    grades: ['1045', '4140', '5160'],
    aim: '35..45 HRC',
    bar: 'square',
    sizes: {
      bar: bar(32, 1.25),
      length: length(130, 5),
      width: width('Width of the nose', 40, 1.5),
      edge: { label: 'Nose, thick', mm: 12, inch: 0.5, leastMm: 6, mostMm: 24 },
      blade: bladeLength(45, 1.75),
    },
    root: { thick: 0.8, wide: 1 },
    hard: 0.6,
  }),
]
