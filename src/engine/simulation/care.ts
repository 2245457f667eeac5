import type { StageInput } from '#engine/conduction/stage.ts'
import type { MeshGrade } from '#engine/geometry/mesh.ts'

/** How carefully a treatment is worked: what a grade sets besides its mesh. */
export interface Care {
  /** Error allowed in a step [K]; fires and slow cooling take a multiple. */
  readonly toleranceK: number
  /** The same in an oven [K]: tempering goes by few degrees. */
  readonly ovenToleranceK: number
  /** The same for the first, rough run of a quench [K]. */
  readonly roughToleranceK: number
  /** How stages step: how far the bath may rise in a step, and by which method where that is not chosen from step to step. */
  readonly stepping: Pick<StageInput, 'waterlineTravelM' | 'integrator'>
  /** How often the fire is looked at and set in a hold. */
  readonly looks: number
  /** The same where the piece is not to harden. */
  readonly roughLooks: number
  /** Steps on the way up: until the hottest place is this much below the heat, the thinnest place rises no further than this in one [K]. */
  readonly approach: readonly { readonly belowK: number; readonly riseK: number }[]
  /** Time in the fire after which steps may grow with it [s]. */
  readonly easesAfterS: number
  /** Longest steps while an oven brings the piece up, and while it cools from it [s]. */
  readonly ovenStepS: number
  readonly airStepS: number
  /** Whether the oven's swing about its mean is followed through the hold; else it is taken as even, which moves a temper by under a kelvin. */
  readonly swings: boolean
}

const CAREFUL: Care = {
  toleranceK: 1,
  ovenToleranceK: 0.5,
  roughToleranceK: 3,
  stepping: {},
  looks: 10,
  roughLooks: 10,
  approach: [
    { belowK: 80, riseK: 60 },
    { belowK: 1, riseK: 4 },
  ],
  easesAfterS: 1800,
  ovenStepS: 120,
  airStepS: 300,
  swings: true,
}

/**
 * Cooling times move by under half a per cent from one of the finer grades to the next for this alone. A sketch has as much care as
 * one look while a handle moves allows.
 */
export const CARE: { readonly [Grade in MeshGrade]: Care } = {
  sketch: {
    toleranceK: 3,
    ovenToleranceK: 2,
    roughToleranceK: 20,
    // On so few nodes a solve costs as much as three explicit stages.
    stepping: { waterlineTravelM: 16e-3, integrator: 'implicit' },
    looks: 8,
    roughLooks: 2,
    approach: [
      { belowK: 80, riseK: 120 },
      { belowK: 20, riseK: 15 },
      { belowK: 1, riseK: 3 },
    ],
    easesAfterS: 0,
    ovenStepS: Number.POSITIVE_INFINITY,
    airStepS: Number.POSITIVE_INFINITY,
    swings: false,
  },
  draft: { ...CAREFUL, toleranceK: 3 },
  normal: CAREFUL,
  fine: { ...CAREFUL, toleranceK: 0.3, ovenToleranceK: 0.3 },
}
