import type { Rows } from '#engine/arithmetic/table.ts'
import type { ThermalMaterial } from './thermal-material.ts'

/** Lower end of the lookup grid [K] (-200 degC): whole degrees Celsius, where published tables have their kinks, are grid lines. */
export const GRID_START_K = 73.15
/** Cells of 1 K in the lookup grid; it ends at 1900 degC. Beyond either end the outermost cell is continued. */
export const GRID_CELLS = 2100
/** Numbers kept for one cell of one material. */
export const STRIDE = 5

/**
 * Properties of one material in cells of 1 K, five numbers a cell: conductivity at its lower end and its rise over the cell
 * [W/(m K)], volumetric heat capacity likewise [J/(m3 K)], volumetric enthalpy at the lower end [J/m3, 0 at the grid's start].
 * Within a cell k and c are linear and the enthalpy is their exact quadratic. The enthalpy on grid lines is the exact
 * integral of the published table even where its kinks fall between grid lines, so no latent heat is lost to resampling.
 */
export type PropertyTable = Float64Array

const known = new WeakMap<ThermalMaterial, PropertyTable>()

/** The lookup table of a material, made once for each material object. Throws RangeError on a density or a row that is not positive. */
export function propertyTable(material: ThermalMaterial): PropertyTable {
  const before = known.get(material)
  if (before !== undefined) return before
  const { densityKgPerM3, conductivity, specificHeat } = material
  if (!(densityKgPerM3 > 0)) throw new RangeError(`material: density ${densityKgPerM3} kg/m3 must be above 0`)
  mustBePositive(conductivity, 'conductivity')
  mustBePositive(specificHeat, 'specific heat')
  const table = new Float64Array(GRID_CELLS * STRIDE)
  const k = onGridLines(conductivity)
  const c = onGridLines(specificHeat)
  const mean = meansOverCells(specificHeat, c)
  let enthalpy = 0
  for (let cell = 0, at = 0; cell < GRID_CELLS; cell++, at += STRIDE) {
    table[at] = k[cell]!
    table[at + 1] = k[cell + 1]! - k[cell]!
    // Beside a kink the straight line through the exact mean may not reach below a fifth of that mean.
    const most = 1.6 * mean[cell]!
    const rise = Math.min(most, Math.max(-most, c[cell + 1]! - c[cell]!))
    table[at + 2] = densityKgPerM3 * (mean[cell]! - 0.5 * rise)
    table[at + 3] = densityKgPerM3 * rise
    table[at + 4] = enthalpy
    enthalpy += densityKgPerM3 * mean[cell]!
  }
  known.set(material, table)
  return table
}

const stacked = new WeakMap<readonly ThermalMaterial[], PropertyTable>()

/**
 * Tables of several materials end to end in one array, made once for each list; a node of material m looks from
 * `m * GRID_CELLS * STRIDE` on.
 */
export function propertyTables(materials: readonly ThermalMaterial[]): PropertyTable {
  const [only] = materials
  if (only === undefined) throw new RangeError('conduction: at least one material is needed')
  if (materials.length === 1) return propertyTable(only)
  const before = stacked.get(materials)
  if (before !== undefined) return before
  const all = new Float64Array(materials.length * GRID_CELLS * STRIDE)
  for (const [m, material] of materials.entries()) all.set(propertyTable(material), m * GRID_CELLS * STRIDE)
  stacked.set(materials, all)
  return all
}

/** Start of the part of `propertyTables` that each node looks in [n]. Without `materialOfNode` every node is of the first material. */
export function tableOffsets(nodes: number, materials: number, materialOfNode?: Uint8Array): Int32Array {
  const offsets = new Int32Array(nodes)
  if (materialOfNode === undefined) return offsets
  if (materialOfNode.length !== nodes) {
    throw new RangeError(`conduction: materialOfNode has ${materialOfNode.length} entries for ${nodes} nodes`)
  }
  for (let i = 0; i < nodes; i++) {
    const m = materialOfNode[i]!
    if (m >= materials) throw new RangeError(`conduction: node ${i} is of material ${m}, but there are only ${materials}`)
    offsets[i] = m * GRID_CELLS * STRIDE
  }
  return offsets
}

/** Values of a piecewise linear table on the grid lines [GRID_CELLS + 1], in one sweep. */
export function onGridLines(rows: Rows): Float64Array {
  const values = new Float64Array(GRID_CELLS + 1)
  const last = rows.length - 1
  let line = 0
  for (; line <= GRID_CELLS && GRID_START_K + line < rows[0]![0]; line++) values[line] = rows[0]![1]
  for (let row = 0; row < last; row++) {
    const [x0, y0] = rows[row]!
    const [x1, y1] = rows[row + 1]!
    const slope = (y1 - y0) / (x1 - x0)
    for (; line <= GRID_CELLS && GRID_START_K + line < x1; line++) values[line] = y0 + slope * (GRID_START_K + line - x0)
  }
  values.fill(rows[last]![1], line)
  return values
}

/** Exact mean of the table over each cell; differs from the mean of its ends only in cells that hold a kink. */
function meansOverCells(rows: Rows, ends: Float64Array): Float64Array {
  const means = new Float64Array(GRID_CELLS)
  for (let cell = 0; cell < GRID_CELLS; cell++) means[cell] = 0.5 * (ends[cell]! + ends[cell + 1]!)
  for (let row = 0; row < rows.length; row++) {
    const cell = Math.floor(rows[row]![0] - GRID_START_K)
    if (cell < 0 || cell >= GRID_CELLS) continue
    if (row > 0 && Math.floor(rows[row - 1]![0] - GRID_START_K) === cell) continue
    let x = GRID_START_K + cell
    let y = ends[cell]!
    let area = 0
    for (let next = row; next < rows.length && rows[next]![0] < GRID_START_K + cell + 1; next++) {
      area += 0.5 * (y + rows[next]![1]) * (rows[next]![0] - x)
      x = rows[next]![0]
      y = rows[next]![1]
    }
    means[cell] = area + 0.5 * (y + ends[cell + 1]!) * (GRID_START_K + cell + 1 - x)
  }
  return means
}

function mustBePositive(rows: Rows, what: string): void {
  if (rows.length === 0) throw new RangeError(`material: the ${what} has no rows`)
  for (let i = 0; i < rows.length; i++) {
    const [temperatureK, value] = rows[i]!
    if (!(value > 0)) throw new RangeError(`material: ${what} ${value} at ${temperatureK} K must be above 0`)
    if (i > 0 && !(temperatureK > rows[i - 1]![0])) {
      throw new RangeError(`material: ${what} rows must rise in temperature, ${temperatureK} K follows ${rows[i - 1]![0]} K`)
    }
  }
}

/** Conductivity, volumetric heat capacity and enthalpy of every node at its temperature [n each]. */
export function readTemperature(
  table: PropertyTable,
  offset: Int32Array,
  temperatureK: Float64Array,
  conductivity: Float64Array,
  capacity: Float64Array,
  enthalpy: Float64Array,
): void {
  for (let i = 0; i < temperatureK.length; i++) {
    const above = temperatureK[i]! - GRID_START_K
    let cell = above | 0
    if (above < 0) cell = 0
    else if (cell >= GRID_CELLS) cell = GRID_CELLS - 1
    const x = above - cell
    const at = offset[i]! + cell * STRIDE
    const c0 = table[at + 2]!
    const c1 = table[at + 3]!
    conductivity[i] = table[at]! + x * table[at + 1]!
    capacity[i] = c0 + x * c1
    enthalpy[i] = table[at + 4]! + x * (c0 + 0.5 * x * c1)
  }
}

/** The grid cell that a temperature falls in, the outermost one beyond either end. */
export function cellOf(temperatureK: number): number {
  const cell = Math.floor(temperatureK - GRID_START_K)
  return cell < 0 ? 0 : cell >= GRID_CELLS ? GRID_CELLS - 1 : cell
}
