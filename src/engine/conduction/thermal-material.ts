import type { Rows } from '#engine/arithmetic/table.ts'

/**
 * What conduction must know of a material. Temperatures are in kelvin; the tables are linear between rows and held beyond them.
 * `specificHeat` holds latent heat where a transformation releases or takes it; enthalpy is its exact integral.
 */
export interface ThermalMaterial {
  readonly densityKgPerM3: number
  /** [K, W/(m K)] */
  readonly conductivity: Rows
  /** [K, J/(kg K)] */
  readonly specificHeat: Rows
}
