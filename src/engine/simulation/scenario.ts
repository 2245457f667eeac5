/** How one possible day in the shop differs from the nominal one. */
export interface Scenario {
  /** On every film coefficient of the bath. */
  readonly filmFactor: number
  /** The fire stood this much off what the smith judged [K]. */
  readonly heatOffsetK: number
}

export const NOMINAL: Scenario = { filmFactor: 1, heatOffsetK: 0 }
