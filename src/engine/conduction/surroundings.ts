import type { Rows } from '#engine/arithmetic/table.ts'

/** A fluid or a hot space that touches a surface: heat flux into the steel is film (T_fluid - T_s) + emissivity sigma (T_fluid^4 - T_s^4). */
export interface Contact {
  /** Temperature of the fluid, the gas or the walls against time since the start of the stage [s, K]; one row is a constant. */
  readonly fluid: Rows
  /** Film coefficient against the temperature of the surface [K, W/(m2 K)]; one row is a constant. */
  readonly film: Rows
  /** Effective emissivity for radiation [1]; 0 for a liquid. */
  readonly emissivity: number
  /** When set, the fluid warms by the heat that it takes: its heat capacity [J/K], added on top of `fluid`. */
  readonly capacityJPerK?: number
}

/** What a piece meets during one stage: one contact on the covered length, another on the rest. */
export interface Surroundings {
  readonly covered: Contact
  readonly rest: Contact
  /** The covered length along the axis: from `fromM` up to a level that may move with time [s, m]. Infinity covers everything. */
  readonly fromM: number
  readonly level: Rows
}
