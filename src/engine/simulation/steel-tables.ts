import type { ThermalMaterial } from '#engine/conduction/thermal-material.ts'
import { type Composition, ELEMENTS } from '#engine/materials/steel.ts'
import { coldMaterial, coolingMaterial, heatingMaterial, temperedMaterial } from '#engine/materials/thermal-properties.ts'

/** Shares of martensite for which a cooling table is kept; each node takes the nearest. */
export const SHARES: readonly number[] = [1, 0.75, 0.5, 0.25, 0]

/** The thermal materials of one steel, as lists that the stages take. */
export interface SteelTables {
  readonly heating: readonly ThermalMaterial[]
  readonly cold: readonly ThermalMaterial[]
  /** Never austenitised; then austenite by `SHARES`; last, what has transformed already. */
  readonly cooling: readonly ThermalMaterial[]
  readonly tempered: readonly ThermalMaterial[]
}

/** Steels that are kept: those of a drag, a plan or a comparison. */
const MOST_KEPT = 8
const kept = new Map<string, SteelTables>()

/**
 * Thermal materials of a composition with its critical temperatures [K]. The same objects come back for the same figures, so that what
 * conduction makes of them (some milliseconds for each) is made once while a steel is worked with.
 */
export function steelTables(
  composition: Composition,
  critical: { readonly ac1K: number; readonly ac3K: number; readonly msK: number },
): SteelTables {
  const { ac1K, ac3K, msK } = critical
  const key = [ac1K, ac3K, msK, ...ELEMENTS.map((element) => composition[element])].join(' ')
  const before = kept.get(key)
  if (before !== undefined) return before
  const cold = coldMaterial(composition, critical)
  const tempered = temperedMaterial(composition)
  const tables: SteelTables = {
    heating: [heatingMaterial(composition, critical)],
    cold: [cold],
    cooling: [cold, ...SHARES.map((martensiteShare) => coolingMaterial(composition, { msK, martensiteShare })), tempered],
    tempered: [tempered],
  }
  if (kept.size >= MOST_KEPT) kept.delete(kept.keys().next().value as string)
  kept.set(key, tables)
  return tables
}
