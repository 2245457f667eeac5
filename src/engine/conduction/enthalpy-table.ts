import { GRID_CELLS, GRID_START_K, type PropertyTable, propertyTable, STRIDE } from './properties.ts'
import type { ThermalMaterial } from './thermal-material.ts'

/** Numbers kept for one cell. */
export const ENTHALPY_STRIDE = 4

/**
 * Temperature and conductivity of a material against its volumetric enthalpy, in cells of equal enthalpy none of which spans
 * more than 1 K: temperature at the lower end and its rise over the cell [K], conductivity likewise [W/(m K)].
 * Linear in a cell; with the cell's ends exact that leaves less than 0.01 K even on the flanks of a latent peak.
 * An explicit stepper that carries enthalpy reads its temperature here without a root or a search.
 */
interface EnthalpyTable {
  readonly cells: Float64Array
  /** Cells per J/m3. */
  readonly scale: number
}

const known = new WeakMap<ThermalMaterial, EnthalpyTable>()

/** Made once for each material object; throws as `propertyTable` does. */
function enthalpyTable(material: ThermalMaterial): EnthalpyTable {
  const before = known.get(material)
  if (before !== undefined) return before
  const table = propertyTable(material)
  const stepJPerM3 = smallestCapacity(table)
  const count = Math.ceil(endOfGrid(table) / stepJPerM3)
  const cells = new Float64Array(count * ENTHALPY_STRIDE)
  let cell = 0
  let lowerK = GRID_START_K
  let lowerW = table[0]!
  for (let i = 0; i < count; i++) {
    const enthalpy = (i + 1) * stepJPerM3
    while (cell + 1 < GRID_CELLS && table[(cell + 1) * STRIDE + 4]! <= enthalpy) cell++
    const at = cell * STRIDE
    const x = withinCell(enthalpy - table[at + 4]!, table[at + 2]!, table[at + 3]!)
    const upperK = GRID_START_K + cell + x
    const upperW = table[at]! + x * table[at + 1]!
    cells[i * ENTHALPY_STRIDE] = lowerK
    cells[i * ENTHALPY_STRIDE + 1] = upperK - lowerK
    cells[i * ENTHALPY_STRIDE + 2] = lowerW
    cells[i * ENTHALPY_STRIDE + 3] = upperW - lowerW
    lowerK = upperK
    lowerW = upperW
  }
  const made = { cells, scale: 1 / stepJPerM3 }
  known.set(material, made)
  return made
}

/** Tables of several materials end to end, with where each node looks and how it scales its enthalpy [n each]. */
export interface EnthalpyLookUp {
  readonly cells: Float64Array
  readonly scale: Float64Array
  /** First number of the node's material in `cells`, and the number of its last cell. */
  readonly start: Int32Array
  readonly lastCell: Int32Array
}

export function enthalpyLookUp(materials: readonly ThermalMaterial[], materialOfNode: Uint8Array): EnthalpyLookUp {
  const { tables, starts, cells } = stackOf(materials)
  const n = materialOfNode.length
  const scale = new Float64Array(n)
  const start = new Int32Array(n)
  const lastCell = new Int32Array(n)
  for (let i = 0; i < n; i++) {
    const m = materialOfNode[i]!
    const table = tables[m]!
    scale[i] = table.scale
    start[i] = starts[m]!
    lastCell[i] = table.cells.length / ENTHALPY_STRIDE - 1
  }
  return { cells, scale, start, lastCell }
}

interface Stack {
  readonly tables: readonly EnthalpyTable[]
  readonly starts: readonly number[]
  readonly cells: Float64Array
}

const stacks = new WeakMap<readonly ThermalMaterial[], Stack>()

/** Made once for each list of materials. */
function stackOf(materials: readonly ThermalMaterial[]): Stack {
  const before = stacks.get(materials)
  if (before !== undefined) return before
  const tables = materials.map(enthalpyTable)
  const starts: number[] = []
  let length = 0
  for (const { cells } of tables) {
    starts.push(length)
    length += cells.length
  }
  const cells = tables.length === 1 ? tables[0]!.cells : new Float64Array(length)
  if (tables.length > 1) for (const [m, table] of tables.entries()) cells.set(table.cells, starts[m]!)
  const stack = { tables, starts, cells }
  stacks.set(materials, stack)
  return stack
}

/** Temperature and conductivity of every node from its volumetric enthalpy [n each]. */
export function readEnthalpy(
  lookUp: EnthalpyLookUp,
  enthalpy: Float64Array,
  temperatureK: Float64Array,
  conductivity: Float64Array,
): void {
  const { cells, scale, start, lastCell } = lookUp
  for (let i = 0; i < enthalpy.length; i++) {
    const place = enthalpy[i]! * scale[i]!
    let cell = place | 0
    if (cell > lastCell[i]!) cell = lastCell[i]!
    else if (cell < 0) cell = 0
    const x = place - cell
    const at = start[i]! + cell * ENTHALPY_STRIDE
    temperatureK[i] = cells[at]! + x * cells[at + 1]!
    conductivity[i] = cells[at + 2]! + x * cells[at + 3]!
  }
}

/** Solves h = x (c0 + c1 x / 2) for the place x in a cell; the form that keeps its digits for small c1. */
function withinCell(h: number, c0: number, c1: number): number {
  return (2 * h) / (c0 + Math.sqrt(Math.max(0, c0 * c0 + 2 * c1 * h)))
}

function smallestCapacity(table: PropertyTable): number {
  let least = Number.POSITIVE_INFINITY
  for (let cell = 0; cell < GRID_CELLS; cell++) {
    const c0 = table[cell * STRIDE + 2]!
    least = Math.min(least, c0, c0 + table[cell * STRIDE + 3]!)
  }
  return least
}

function endOfGrid(table: PropertyTable): number {
  const at = (GRID_CELLS - 1) * STRIDE
  return table[at + 4]! + table[at + 2]! + 0.5 * table[at + 3]!
}
