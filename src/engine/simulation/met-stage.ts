import type { Surroundings } from '#engine/conduction/surroundings.ts'

/** What the piece met in its hardening, so that a cross-section can be sent through the same: out of the fire, then stage by stage. */
export type MetStage =
  | {
      readonly as: 'fire'
      /** Every node as it left the fire, and the hottest that it had been [n, K]. */
      readonly temperatureK: Float64Array
      readonly peakK: Float64Array
    }
  | { readonly as: 'walk' | 'bath' | 'air'; readonly surroundings: Surroundings; readonly lastedS: number }
