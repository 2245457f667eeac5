import { later } from '#web/app/later.tsx'

/** What comes of a zone or a section: fetched when it is first opened, or when the page has nothing else to do. */
export const ZoneOutcome = later(async () => (await import('./zone-outcome.tsx')).ZoneOutcome, 'out-of-sight')
export const SectionFold = later(async () => (await import('./folds.tsx')).SectionFold, 'out-of-sight')
export const SkinFold = later(async () => (await import('./folds.tsx')).SkinFold, 'out-of-sight')
