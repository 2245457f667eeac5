/** Sizes of paper that a card is made for; `3x5` is the index card, in inches. */
export const CARD_SIZES = ['A6', '3x5', 'A5', 'A4', 'Letter'] as const
export type CardSize = (typeof CARD_SIZES)[number]

/** How much is said. Nothing that is to be done, that stops the work or that can hurt anyone hangs on it. */
export interface Wordiness {
  /** In whole sentences with everything that was found, or in few words. */
  readonly sentences: boolean
  /** Where the cautions of a step are those of an earlier one: all of them once more, or a pointer to that step. */
  readonly repeats: boolean
  /** What was found that does not stop the work but wants minding: what it is, or how many there are in the plan. */
  readonly warnings: boolean
}

const WHOLE: Wordiness = { sentences: true, repeats: true, warnings: true }
const WHOLE_ONCE: Wordiness = { sentences: true, repeats: false, warnings: true }
const SHORT: Wordiness = { sentences: false, repeats: true, warnings: true }
const SHORT_ONCE: Wordiness = { sentences: false, repeats: false, warnings: true }
const SHORTEST: Wordiness = { sentences: false, repeats: false, warnings: false }

export interface CardFormat {
  readonly widthMm: number
  readonly heightMm: number
  readonly marginMm: number
  /** Column of the piece and the code. */
  readonly leftMm: number
  /** The same when the code is left out. */
  readonly narrowMm: number
  readonly gapMm: number
  /** Distance of lines, in parts of the type's size. */
  readonly leading: number
  /** What to do: the smallest and the largest type. */
  readonly leastPt: number
  readonly mostPt: number
  /** Cautions, blanks and proof beside it; never under the least. */
  readonly sideShare: number
  readonly leastSidePt: number
  readonly sourcePt: number
  /** Length of a blank to write a figure in. */
  readonly blankMm: number
  /** Least height of the drawing; its height where the steps go on below it. */
  readonly pieceMm: number
  readonly aroundMm: number
  /** Error correction of the code: M where a module comes out at least as large, else L. */
  readonly moduleForM: number
  readonly mostModuleMm: number
  /** Ways to say it, the best first. */
  readonly wordiness: readonly Wordiness[]
}

const LARGE = {
  leading: 1.19,
  leastPt: 11,
  mostPt: 12.5,
  sideShare: 0.88,
  leastSidePt: 9.5,
  sourcePt: 7,
  blankMm: 16,
  pieceMm: 70,
  aroundMm: 70,
  moduleForM: 0.33,
  mostModuleMm: 0.6,
  wordiness: [WHOLE, WHOLE_ONCE, SHORT, SHORT_ONCE, SHORTEST],
} as const

/** On the smallest cards the sheet lies on its side: the lines of the steps are long enough to read. */
export const CARD_FORMATS: Readonly<Record<CardSize, CardFormat>> = {
  A4: { ...LARGE, widthMm: 210, heightMm: 297, marginMm: 12, leftMm: 50, narrowMm: 44, gapMm: 6 },
  Letter: { ...LARGE, widthMm: 215.9, heightMm: 279.4, marginMm: 12, leftMm: 50, narrowMm: 44, gapMm: 6 },
  A5: {
    ...LARGE,
    widthMm: 148,
    heightMm: 210,
    marginMm: 6,
    leftMm: 27,
    narrowMm: 24,
    gapMm: 4,
    mostPt: 12,
    leading: 1.13,
    sideShare: 0.84,
    leastSidePt: 9,
    sourcePt: 6,
    blankMm: 12,
    pieceMm: 50,
    aroundMm: 44,
    mostModuleMm: 0.5,
    wordiness: [SHORT, SHORT_ONCE, SHORTEST],
  },
  A6: {
    widthMm: 148,
    heightMm: 105,
    marginMm: 4,
    leftMm: 26,
    narrowMm: 22,
    gapMm: 2.5,
    leading: 1.1,
    leastPt: 7.5,
    mostPt: 9,
    sideShare: 1,
    leastSidePt: 7.5,
    sourcePt: 5.5,
    blankMm: 9,
    pieceMm: 40,
    aroundMm: 34,
    moduleForM: 0.4,
    mostModuleMm: 0.45,
    wordiness: [SHORT, SHORT_ONCE, SHORTEST],
  },
  '3x5': {
    widthMm: 127,
    heightMm: 76.2,
    marginMm: 3.5,
    leftMm: 23,
    narrowMm: 20,
    gapMm: 2.5,
    leading: 1.1,
    leastPt: 6,
    mostPt: 8,
    sideShare: 1,
    leastSidePt: 6,
    sourcePt: 5,
    blankMm: 7.5,
    pieceMm: 24,
    aroundMm: 24,
    moduleForM: 0.4,
    mostModuleMm: 0.4,
    wordiness: [SHORT, SHORT_ONCE, SHORTEST],
  },
}
