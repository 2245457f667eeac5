export const FIRE_KINDS = ['coal', 'charcoal', 'gas', 'muffle', 'torch'] as const
export type FireKind = (typeof FIRE_KINDS)[number]

/** What a fire does to the skin, from free oxygen to a closed pipe with charcoal in it. */
export const ATMOSPHERES = ['oxidising', 'neutral', 'rich', 'packed'] as const
export type Atmosphere = (typeof ATMOSPHERES)[number]

export const BATH_KINDS = [
  'still air',
  'moving air',
  'fast oil',
  'medium oil',
  'slow oil',
  'vegetable oil',
  'water',
  'brine',
] as const
export type BathKind = (typeof BATH_KINDS)[number]

export const AGITATIONS = ['still', 'mild', 'moderate', 'strong'] as const
export type Agitation = (typeof AGITATIONS)[number]

export interface Fire {
  readonly name: string
  readonly kind: FireKind
  /** Absent: as a fire of its kind usually burns. */
  readonly atmosphere?: Atmosphere
}

/** A tank, or the air. `volumeM3` and `depthM` are absent for air and where the smith did not say. */
export interface Bath {
  readonly name: string
  readonly kind: BathKind
  readonly volumeM3?: number
  readonly depthM?: number
  readonly temperatureK: number
  /** Flash point when the smith knows the oil's sheet; else a typical one by kind is used. */
  readonly flashK?: number
}

/** An oven for tempering. It is truly at its reading plus `readsLowK` (negative when it reads high), and swings by `swingK` either way. */
export interface Oven {
  readonly name: string
  readonly maxK: number
  readonly readsLowK: number
  readonly swingK: number
}

export interface Shop {
  readonly fires: readonly Fire[]
  readonly baths: readonly Bath[]
  readonly ovens: readonly Oven[]
}
