import type { Forecast } from '#contract/answers.ts'

/**
 * Half the width of the piece as the eye sees it, from the working end up [mm from the working end, mm]: a flat on its broad side, other
 * bars across their flats. Rounds keep their fillets and rounded ends; the answer's outline has those of the equivalent rounds only.
 */
export function trueHalfWidths({ outline_mm, length_mm, sections }: Forecast): [number, number][] {
  const rounds = outsideOf(outline_mm, length_mm)
  if (sections === undefined || sections.every(({ shape }) => shape === 'round')) return rounds
  const points = sections.flatMap(({ shape, from_mm, to_mm, across_mm, width_mm }): [number, number][] => {
    if (shape === 'round') {
      const inside = rounds.filter(([x, half]) => x >= from_mm - 1e-6 && x <= to_mm + 1e-6 && half > 0)
      // A step in width stands at the same height twice: the outline's own point of the section below is not this one's.
      return inside.filter(([x, half]) => x > from_mm + 1e-6 || half <= across_mm[0] / 2 + 1e-3 || from_mm < 1e-6)
    }
    const [low, high] = width_mm ?? across_mm
    return [
      [from_mm, low / 2],
      [to_mm, high / 2],
    ]
  })
  return [[0, 0], ...points, [length_mm, 0]]
}

/** The outline from the side: hollows in the ends do not show. */
function outsideOf(outline: Forecast['outline_mm'], lengthMm: number): [number, number][] {
  const low = outline.findIndex(([x]) => x <= 1e-6)
  const high = outline.length - 1 - [...outline].reverse().findIndex(([x]) => x >= lengthMm - 1e-6)
  return [[0, 0], ...outline.slice(Math.max(0, low), high + 1), [lengthMm, 0]]
}
