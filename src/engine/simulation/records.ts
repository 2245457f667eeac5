import type { Bath, Fire, Oven } from '#engine/surface-heat/gear.ts'
import type { Packing } from '#engine/surface-heat/packing.ts'
import type { HeatedFrom, Refinement } from './heated-from.ts'
import type { Length } from './process.ts'

/** What one step did, in figures. Times are since the start of the treatment [s]. */
interface Record {
  /** Index of the step in the job's process. */
  readonly step: number
  readonly startS: number
  readonly endS: number
}

/** How a piece cooled after normalising, annealing or relieving. */
export interface Cooled {
  readonly in: 'still air' | 'furnace' | Packing
  /** Until it can be held in the hand [s]. */
  readonly coldS: number
  /** From 800 to 500 degC where that took longest [s], and the hardness there and where it was quickest [HV]; absent where it was not austenite. */
  readonly slowestS?: number
  readonly softestHv?: number
  readonly hardestHv?: number
}

/** A trip through the fire (or the oven), to harden, normalise, anneal or relieve stress. */
export interface HeatRecord extends Record {
  readonly kind: 'heat' | 'normalise' | 'anneal' | 'stress-relieve'
  readonly fire: Fire
  readonly toK: number
  readonly holdS: number
  readonly even: boolean
  readonly part?: Length
  /** How long until the outside was at heat [s]; null when the fire never got it there. */
  readonly outsideUpS: number | null
  /** From then until the slowest place that must harden came within 15 K of the heat [s]; null when it never did. */
  readonly middleUpS: number | null
  /** At the end of the hold, over the metal that must be at heat [K]. */
  readonly coldestK: number
  readonly hottestK: number
  /** Greatest difference between skin and slowest place on the way up [K]. */
  readonly widestGapK: number
  /** Of the metal that is heated [kg]. */
  readonly massKg: number
  /** Of what does not end in a quench. */
  readonly cooled?: Cooled
  /** Normalise or anneal: what it buys; absent where the heat does not turn the steel over. */
  readonly refinement?: Refinement
  /** The hardening heat: carbides and grain that it finds. */
  readonly from?: HeatedFrom
}

export interface CarryRecord extends Record {
  readonly kind: 'carry'
  /** Coldest and hottest surface of the metal that must harden, at the end of the walk [K]. */
  readonly coldestSurfaceK: number
  readonly hottestSurfaceK: number
}

export interface QuenchRecord extends Record {
  readonly kind: 'quench'
  readonly bath: Bath
  readonly bathStartK: number
  readonly bathEndK: number
  /** Null: the whole piece goes under. */
  readonly depthM: number | null
  readonly lengthUnderM: number
  readonly massUnderKg: number
  /** Volume-weighted diameter of what goes under [m]. */
  readonly acrossM: number
  readonly heatIntoBathJ: number
  /** Hottest metal that went in, and hottest under the line when it came out [K]. */
  readonly hottestInK: number
  readonly hottestOutK: number
  /** Coldest surface that had to harden as it went in [K]. */
  readonly coldestEntryK: number
}

export interface TemperRecord extends Record {
  readonly kind: 'temper'
  readonly oven?: Oven
  /** A flame draws one end. */
  readonly fire?: Fire
  readonly part?: Length
  readonly setK: number
  /** What the oven truly holds [K]. */
  readonly trueK: number
  readonly holdS: number
  readonly times: number
  /** From going in until the middle is at heat, in each round [s]. */
  readonly middleUpS: number
  /** From the end of the quench [s]. */
  readonly delayS: number
  /** Hottest the steel stood when it went in [K]. */
  readonly startK: number
  /** Heat that tables give the colour of the working end after it, if it was rubbed bright before the first temper [K]; 0: no colour. */
  readonly shownK: number
}

export interface WarmBathRecord extends Record {
  readonly kind: 'warm-bath'
  readonly bath: Bath
  readonly barMassKg: number
  readonly bathStartK: number
  readonly bathEndK: number
}

export interface ColoursRecord extends Record {
  readonly kind: 'run-colours'
  readonly bath: Bath
  readonly stopAtK: number
  /** From lifting out to the stop [s]; null when the heat in the body was not enough. */
  readonly reachedS: number | null
  readonly hottestEdgeK: number
  /** Rise of the working end as it passed the stop [K/s]. */
  readonly risePerS: number
  /** The stop is the colour that tables give `stopAtK`, not that heat. */
  readonly byColour: boolean
  /** How hot the working end truly is at the stop, and the heat that tables give the colour it shows by then [K]; at its hottest where it never came. */
  readonly edgeK: number
  readonly shownK: number
  /** The working end from the lift to the stop, and on past it as if it were let run. */
  readonly edge: readonly EdgeMoment[]
}

/** The working end so long after the lift: temperature, tempering parameters, and heat by the colour it shows [s, K]. */
export interface EdgeMoment {
  readonly timeS: number
  readonly temperatureK: number
  readonly parameter18K: number
  readonly parameter20K: number
  readonly shownK: number
}

export type StepRecord = HeatRecord | CarryRecord | QuenchRecord | TemperRecord | WarmBathRecord | ColoursRecord
