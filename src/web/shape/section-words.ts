import type { SectionText } from '#web/job/job-text.ts'

/** A section in a few words: `round, 22 mm`, `flat, 5 x 12 mm to 19 x 25 mm`. */
export function sectionWords({ shape, across, from, to }: SectionText): string {
  return `${shape}, ${across ?? `${from ?? '?'} to ${to ?? '?'}`}`
}

/** Where it is on the piece. */
export function placeWords(index: number, count: number): string {
  if (count === 1) return 'The whole piece'
  if (index === 0) return 'Working end'
  return index === count - 1 ? 'Other end' : `Section ${index + 1}`
}

/** What else is on it: `fillet 3 mm, dish 17 mm across`. */
export function extrasWords({ fillet, dish, bore, tip }: SectionText): string {
  return [
    ...(fillet === undefined ? [] : [`fillet ${fillet}`]),
    ...(dish === undefined ? [] : [`dish ${dish.across}`]),
    ...(bore === undefined ? [] : [`bore ${bore.across}`]),
    ...(tip === undefined ? [] : [`end rounded ${tip.radius}`]),
  ].join(', ')
}
