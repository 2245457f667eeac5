import { lengthText, type System } from '#units/length.ts'
import type { Sizes, SizesOf } from './starting-sizes.ts'

/** What a kind of tool is made from: its sizes, and the shape and the zones that follow from them. */
export interface StartingPattern<Key extends string = string> {
  readonly kind: string
  /** What it does, and where its aims are from. */
  readonly says: string
  /** Steels that it is made of, the likeliest first. */
  readonly grades: readonly [string, ...string[]]
  /** Struck with a hammer on the end away from the work. */
  readonly struck: boolean
  readonly sizes: SizesOf
  readonly shape: (sizes: Sizes<Key>, units: System) => StartingShape
}

export interface StartingShape {
  readonly profile: readonly StartingSection[]
  readonly zones: readonly StartingZone[]
}

export interface StartingSection {
  readonly shape: 'round' | 'square' | 'hexagon' | 'octagon' | 'flat'
  readonly across?: string
  readonly from?: string
  readonly to?: string
  readonly length: string
  readonly fillet?: string
  readonly dish?: { readonly across: string; readonly depth: string }
  readonly bore?: { readonly across: string; readonly depth: string }
  readonly tip?: { readonly radius: string }
}

export interface StartingZone {
  readonly name: string
  readonly from: string
  readonly to: string
  readonly aim: string
}

/** Checks its sizes against its shape while it is written down. */
export function pattern<Of extends SizesOf>(
  of: Omit<StartingPattern, 'sizes' | 'shape'> & {
    readonly sizes: Of
    readonly shape: (sizes: Sizes<Extract<keyof Of, string>>, units: System) => StartingShape
  },
): StartingPattern {
  return of as unknown as StartingPattern
}

/** The blow reaches about so far [m]: common practice, no source. */
const STRUCK_M = 0.02

export function struckLengthM(lengthM: number): number {
  return Math.min(STRUCK_M, 0.2 * lengthM)
}

/** A struck end softer than the hammer: DGUV 209-001, ASME B107.410 (band from memory). */
export function struckZone(lengthM: number, units: System): StartingZone {
  return {
    name: 'struck end',
    from: lengthText(lengthM - struckLengthM(lengthM), units),
    to: lengthText(lengthM, units),
    aim: 'at most 45 HRC',
  }
}

/** The last bit of a struck bar, drawn in so that it mushrooms late. */
export function struckTaper(
  shape: 'round' | 'octagon' | 'square',
  barM: number,
  sizes: Pick<Sizes<string>, 'text' | 'mark'>,
): {
  readonly lengthM: number
  section(from: string): StartingSection
} {
  const lengthM = sizes.mark(0.5 * barM)
  return {
    lengthM,
    section: (from) => ({ shape, from, to: sizes.text(0.8 * barM), length: sizes.text(lengthM) }),
  }
}

export const AIMS_FROM = 'Aims: common practice, no source.'
