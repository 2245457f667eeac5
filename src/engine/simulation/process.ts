import type { Agitation, Atmosphere } from '#engine/surface-heat/gear.ts'
import { PACKINGS } from '#engine/surface-heat/packing.ts'

/** Part of the length, from the working end [m]. */
export interface Length {
  readonly fromM: number
  readonly toM: number
}

/** Where a piece cools that is not to harden. */
export const COOLING_PLACES = ['still air', 'furnace', ...PACKINGS] as const
export type CoolingPlace = (typeof COOLING_PLACES)[number]

/** What is about the piece while it is hot, where that is not how the fire burns (in a closed pipe, in foil). */
interface Wrapped {
  readonly atmosphere?: Atmosphere
}

/** One thing that the smith does. Gear is named as in the shop; temperatures are what the smith aims at. */
export type ProcessStep =
  | ({
      readonly do: 'normalise'
      readonly in: string
      readonly toK: number
      readonly holdS: number
      readonly times: number
      /** Still air unless it says otherwise. */
      readonly coolIn?: CoolingPlace
    } & Wrapped)
  | ({
      readonly do: 'anneal'
      readonly in: string
      readonly toK: number
      readonly holdS: number
      readonly coolKPerS?: number
      /** A shut furnace unless it says otherwise; with a rate it is one. */
      readonly coolIn?: CoolingPlace
    } & Wrapped)
  | ({ readonly do: 'stress-relieve'; readonly in: string; readonly toK: number; readonly holdS: number } & Wrapped)
  | ({
      readonly do: 'heat'
      readonly in: string
      readonly toK: number
      /** Counted from when the outside is at heat. */
      readonly holdS: number
      readonly even: boolean
      readonly part?: Length
    } & Wrapped)
  | { readonly do: 'carry'; readonly forS: number }
  | {
      readonly do: 'quench'
      readonly in: string
      /** Length that goes under, from the working end; absent: the whole piece. */
      readonly depthM?: number
      readonly forS: number
      readonly agitation: Agitation
    }
  | {
      readonly do: 'temper'
      readonly in: string
      /** What the oven is set to (its own reading). */
      readonly atK: number
      /** Counted from when the middle of the piece is at heat. */
      readonly holdS: number
      readonly times: number
      /** Only this length is heated (drawing a struck end in a flame with the working end kept cool). */
      readonly part?: Length
    }
  | {
      readonly do: 'warm-bath'
      readonly in: string
      /** The scrap bar that warms it. */
      readonly with: { readonly acrossM: number; readonly lengthM: number; readonly atK: number }
    }
  | {
      readonly do: 'run-colours'
      /** Quench again when the working end has reached this temperature, */
      readonly stopAtK: number
      /** or, where this is true, when it shows the colour that the tables give that temperature, however hot it really is by then. */
      readonly byColour?: boolean
      readonly in: string
      readonly depthM?: number
    }

export interface Zone {
  readonly name: string
  readonly fromM: number
  readonly toM: number
  readonly aim: HardnessAim
  /** Put there by Quenchwright because the tool is struck and nobody asked. */
  readonly assumed: boolean
}

/** Wished hardness on the Rockwell C scale; a missing bound is open. */
export interface HardnessAim {
  readonly lowHrc?: number
  readonly highHrc?: number
}

export interface Probe {
  readonly name: string
  readonly xM: number
  readonly rM: number
}
