import type { Profile } from '#engine/geometry/profile.ts'
import type { Steel } from '#engine/materials/steel.ts'
import type { Shop } from '#engine/surface-heat/gear.ts'
import type { Probe, ProcessStep, Zone } from './process.ts'

/** Everything that a forecast stands on: the piece, the bar, the shop and what will be done. */
export interface Job {
  readonly piece: string
  readonly steel: Steel
  readonly profile: Profile
  /** Worked with a hammer on the end away from the working end. */
  readonly struck: boolean
  readonly zones: readonly Zone[]
  readonly probes: readonly Probe[]
  readonly shop: Shop
  readonly process: readonly ProcessStep[]
}
