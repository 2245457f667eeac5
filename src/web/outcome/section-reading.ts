import type { Forecast } from '#contract/answers.ts'
import { formatLength, type System } from '#units/length.ts'
import { hrcSays } from './told-figures.ts'

export type CrossSection = NonNullable<Forecast['crossSections']>[number]
const PLACES = ['corner', 'face', 'centre'] as const
const CALLED = { corner: 'corner', face: 'face', centre: 'middle' } as const

export interface SectionRow {
  readonly at: string
  /** Corner, face and middle: after tempering, and what it was quenched to where that differs. */
  readonly cells: readonly { readonly hrc: string; readonly from?: string }[]
}

export interface SectionReading {
  readonly short: string
  readonly rows: readonly SectionRow[]
  readonly says: readonly string[]
}

/** The solved cross-sections from one height to another. */
export function sectionsBetween(
  { crossSections = [] }: Pick<Forecast, 'crossSections'>,
  fromMm: number,
  toMm: number,
): readonly CrossSection[] {
  return crossSections.filter(({ x_mm }) => x_mm >= fromMm && x_mm <= toMm)
}

/** Corner against face against middle, in one line for the section where they differ most, and in full. Undefined where none was solved. */
export function readSections(sections: readonly CrossSection[], units: System): SectionReading | undefined {
  const spread = (each: CrossSection): number => {
    const all = PLACES.map((place) => Math.max(20, each[place].tempered_HRC))
    return Math.max(...all) - Math.min(...all)
  }
  const most = sections.toSorted((a, b) => spread(b) - spread(a))[0]
  if (most === undefined) return undefined
  const figures = PLACES.map((place) => hrcSays(most[place].tempered_HRC))
  const alike = figures.every((each) => each === figures[0])
  return {
    short: alike
      ? `Corner, face and middle alike: ${figures[0]} HRC`
      : `${PLACES.map((place, i) => `${CALLED[place]} ${figures[i]}`)
          .join(', ')
          .replace(/^c/u, 'C')} HRC`,
    rows: sections
      .toSorted((a, b) => a.x_mm - b.x_mm)
      .map((each) => ({
        at: formatLength(each.x_mm / 1000, units),
        cells: PLACES.map((place) => {
          const [hrc, from] = [hrcSays(each[place].tempered_HRC), hrcSays(each[place].quenched_HRC)]
          return hrc === from ? { hrc } : { hrc, from }
        }),
      })),
    says: [
      ...(sections.some(({ judged }) => judged) ? ['The aim is held against its corners and faces too.'] : []),
      ...roundSays(sections, units),
      'Best estimates, for corners as sharp as drawn.',
    ],
  }
}

/** Where the drawn round misleads most: it stands for the section in every picture. */
function roundSays(sections: readonly CrossSection[], units: System): string[] {
  const worst = sections
    .flatMap(({ equivalentRound }) =>
      PLACES.map((place) => ({ place, off: equivalentRound[place].quenched_HRC, across: equivalentRound.across_mm })),
    )
    .toSorted((a, b) => Math.abs(b.off) - Math.abs(a.off))[0]
  if (worst === undefined || Math.abs(worst.off) < 1) return []
  const { place, off, across } = worst
  return [
    `The pictures show it as a round of ${formatLength(across / 1000, units)}; as quenched that reads ${Math.round(Math.abs(off))} HRC too ${off > 0 ? 'hard' : 'soft'} ${
      { corner: 'at the corner', face: 'at the face', centre: 'in the middle' }[place]
    }.`,
  ]
}
