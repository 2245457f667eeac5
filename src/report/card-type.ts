/** Faces that a card may be set in: the program's own, or whichever of the usual sans faces the machine has. */
export type Face = 'own' | 'any'

export const MM_PER_PT = 25.4 / 72
/** Something set in a line: words that may break at blanks, or a thing of fixed length that may not. */
export type Run = { readonly text: string; readonly bold?: boolean; readonly share?: number } | { readonly lengthMm: number }

/** Lines that runs take at a type's size in a column so wide; what is longer than a line breaks within. */
export function linesOf(runs: readonly Run[], sizePt: number, widthMm: number, face: Face): number {
  let lines = 1
  let atMm = 0
  const blankMm = widthOf(' ', sizePt, face)
  const put = (lengthMm: number) => {
    if (atMm > 0 && atMm + blankMm + lengthMm > widthMm) {
      lines++
      atMm = 0
    }
    const from = atMm === 0 ? 0 : atMm + blankMm
    const over = Math.max(0, Math.ceil((from + lengthMm) / widthMm) - 1)
    lines += over
    atMm = from + lengthMm - over * widthMm
  }
  for (const run of runs)
    if ('lengthMm' in run) put(run.lengthMm)
    else
      for (const word of run.text.split(/[ \n]+/u))
        if (word !== '') put(widthOf(word, sizePt * (run.share ?? 1), face) * (run.bold === true ? BOLD[face] : 1))
  return lines
}

/** Length of a text in one line [mm]. */
export function widthOf(text: string, sizePt: number, face: Face): number {
  const widths = WIDTHS[face]
  let thousandths = 0
  for (const letter of text) thousandths += widths[(letter.codePointAt(0) ?? 0) - 32] ?? OTHER[letter] ?? 1000
  return (thousandths / 1000) * sizePt * MM_PER_PT * SLACK
}

/** For kerning, hinting and the rounding of printers. */
const SLACK = 1.008
const BOLD: Readonly<Record<Face, number>> = { own: 1.04, any: 1.125 }
/** Letters outside ASCII that the words of a card are made of; every other counts as a square. */
const OTHER: Readonly<Record<string, number>> = {
  '\u00a0': 286,
  '°': 450,
  '×': 754,
  '–': 500,
  '’': 320,
  é: 556,
  ö: 572,
  ü: 570,
  ä: 556,
  '⌀': 900,
}

/**
 * Advance widths of ASCII in thousandths of the type's size. `own` as measured in Source Sans 3; `any` the widest of Source Sans 3,
 * Arial (with Liberation Sans and Helvetica, which are spaced alike) and DejaVu Sans Condensed.
 */
const WIDTHS: Readonly<Record<Face, readonly number[]>> = {
  own: [
    200, 289, 426, 497, 497, 824, 609, 249, 303, 303, 418, 497, 249, 311, 249, 350, 497, 497, 497, 497, 497, 497, 497, 497, 497,
    497, 249, 249, 497, 497, 497, 425, 847, 543, 588, 571, 615, 527, 494, 617, 652, 263, 479, 579, 486, 727, 647, 664, 566, 664,
    569, 534, 536, 645, 515, 786, 513, 476, 539, 303, 350, 303, 497, 500, 542, 504, 553, 456, 555, 496, 292, 504, 544, 246, 247,
    495, 255, 829, 547, 542, 555, 555, 347, 419, 338, 544, 467, 719, 446, 467, 425, 303, 241, 303, 497,
  ],
  any: [
    286, 360, 426, 754, 572, 889, 702, 249, 351, 351, 450, 754, 286, 333, 286, 350, 572, 572, 572, 572, 572, 572, 572, 572, 572,
    572, 303, 303, 754, 754, 754, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778,
    722, 667, 611, 722, 667, 944, 667, 667, 616, 351, 350, 351, 754, 556, 542, 556, 571, 500, 571, 556, 316, 571, 570, 250, 250,
    521, 255, 876, 570, 556, 571, 571, 370, 500, 353, 570, 532, 736, 532, 532, 500, 572, 303, 572, 754,
  ],
}
