import type { Bath } from '#engine/surface-heat/gear.ts'
import type { Wording } from './wording.ts'

/** Turns of speech that several rules share. */

/** First letter large. */
export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** A bath by its name, at the head of a sentence; air has no article. */
export function theBath({ name, kind }: Pick<Bath, 'name' | 'kind'>): string {
  return kind === 'still air' || kind === 'moving air' ? sentence(name) : `The ${name}`
}

/** `at 38 mm`, or by the name of the end. */
export function place(xM: number, lengthM: number, say: Wording): string {
  if (xM < 0.0015) return 'at the working end'
  if (xM > lengthM - 0.0015) return 'at the end away from the work'
  return `at ${say.length(xM)}`
}
