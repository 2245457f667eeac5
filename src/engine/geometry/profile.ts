/** Cross-sections that a bar or a forging has. Across is the distance over the flats (diameter of a round, thickness of a flat). */
export type SectionShape = 'round' | 'square' | 'hexagon' | 'octagon' | 'flat'

/** Size of a section at one of its ends [m]. `widthM` is set for a flat and only there; it is never less than `acrossM`. */
export interface SectionSize {
  readonly acrossM: number
  readonly widthM?: number
}

/** A spherical hollow in an end face: its diameter in the face and its depth [m]; depth is at most half of `acrossM`. */
export interface Dish {
  readonly acrossM: number
  readonly depthM: number
}

/** A flat-bottomed round hole from an end face along the axis [m]. */
export interface Bore {
  readonly acrossM: number
  readonly depthM: number
}

/** One length of the piece, from the working end onward; `from` is its size nearer the working end. */
export interface Section {
  readonly shape: SectionShape
  readonly from: SectionSize
  readonly to: SectionSize
  readonly lengthM: number
  /** Radius of the fillet where this section meets the one before it [m]; absent or 0 is a sharp corner. */
  readonly filletM?: number
  /** On the first or the last section only, in its outer end face. */
  readonly dish?: Dish
  readonly bore?: Bore
  /** Radius to which the outer end is rounded [m]; first or last section only. */
  readonly tip?: { readonly radiusM: number }
}

/** The piece along its axis: x = 0 is the working end, x grows toward the other end. */
export interface Profile {
  readonly sections: readonly Section[]
}
