/** Elements that an analysis may give, by weight per cent. */
export const ELEMENTS = ['C', 'Mn', 'Si', 'P', 'S', 'Cr', 'Ni', 'Mo', 'V', 'W', 'Cu', 'Co', 'Al', 'N', 'B', 'Ti', 'Nb'] as const
export type Element = (typeof ELEMENTS)[number]

/** Weight per cent of each element; an element that is not given is 0. */
export type Composition = { readonly [Key in Element]: number }

/** Least and greatest weight per cent that a bar sold under the name, or an analysis with its error, may hold. */
export type CompositionRange = { readonly [Key in Element]?: readonly [low: number, high: number] }

/** The steel of one piece, as far as it is known. */
export interface Steel {
  /** As the smith may call it: a grade, or "analysed steel". */
  readonly name: string
  /** Grade of the catalogue (`GRADES` in catalogue.ts), when one is named. */
  readonly gradeId?: string
  /** Best estimate. */
  readonly composition: Composition
  /** Nine bars in ten lie inside; the ensemble draws from it. */
  readonly range: CompositionRange
  /** ASTM E112 number of the austenite grain at the usual hardening heat. */
  readonly grainSize: number
}

/** A composition with every element that `given` leaves out at 0. */
export function compositionOf(given: Partial<Record<Element, number>>): Composition {
  return Object.fromEntries(ELEMENTS.map((element) => [element, given[element] ?? 0])) as Composition
}
