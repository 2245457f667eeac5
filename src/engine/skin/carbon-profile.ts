import { exp, ln } from '#engine/arithmetic/elementary.ts'
import { carbonInAustenite, carbonInFerrite } from './carbon-diffusion.ts'
import type { CarbonLines } from './carbon-lines.ts'

/** One step of time under a surface: constant heat and atmosphere. */
export interface SkinStep {
  readonly timeS: number
  readonly temperatureK: number
  /** Carbon in balance with what is outside [wt%]; at least the bulk: nothing happens, for no fire here carburises. */
  readonly surfaceWtPct: number
  /** Depth of metal that scale takes in this step [m]. */
  readonly metalLostM: number
}

/** Carbon under a surface after the steps: cells from the surface inward. */
export interface CarbonProfile {
  /** Middle of each cell under the present surface, and its width [m]. */
  readonly depthM: Float64Array
  readonly widthM: Float64Array
  readonly carbonWtPct: Float64Array
  /** Carbon that diffused out through the surface, and that went with the metal [wt% m]: together what the cells have lost. */
  readonly diffusedOut: number
  readonly wentWithMetal: number
}

/** Cells in a diffusion length near the surface unless asked for, and how they grow beyond. */
const FINEST = 40
const GROWS = 1.15
/** The profile ends this many diffusion lengths under the surface. */
const REACHES = 9
const MOST_NEWTON = 20
const DONE_WT_PCT = 1e-7

/**
 * Solves the loss of carbon through a surface that scale eats away: one dimension, total carbon as the unknown and the flux from a potential that
 * stands still in two phases (as enthalpy does in melting), so that a ferrite rim and undissolved carbide need no front to be tracked.
 *
 * `diffusionM` is the diffusion length sqrt(integral of D dt) that the grid is laid out for, `endM` the half thickness of the metal, where
 * the flux is none. Implicit Euler; carbon is kept to rounding.
 */
export function carbonAfter(
  steps: readonly SkinStep[],
  lines: CarbonLines,
  grid: { readonly diffusionM: number; readonly endM: number; readonly factorOnDiffusion?: number; readonly cells?: number },
): CarbonProfile {
  const bulk = lines.bulkWtPct
  const lostM = steps.reduce((sum, step) => sum + step.metalLostM, 0)
  const width = cellWidths(grid.diffusionM, lostM, grid.endM, grid.cells ?? FINEST)
  const n = width.length
  const carbon = new Float64Array(n).fill(bulk)
  const before = new Float64Array(n)
  const work = new Work(n)
  let first = 0
  let diffusedOut = 0
  let wentWithMetal = 0
  for (const step of steps) {
    // The metal first: the surface stands where it is at the end of the step.
    let toTakeM = step.metalLostM
    while (toTakeM > 0 && first < n - 2) {
      const here = width[first]!
      if (toTakeM < here) {
        wentWithMetal += toTakeM * carbon[first]!
        width[first] = here - toTakeM
        toTakeM = 0
      } else {
        wentWithMetal += here * carbon[first]!
        toTakeM -= here
        first++
      }
    }
    // A sliver at the surface would ask for tiny steps.
    if (width[first]! < 0.3 * width[first + 1]! && first < n - 2) {
      const joined = width[first]! + width[first + 1]!
      carbon[first + 1] = (width[first]! * carbon[first]! + width[first + 1]! * carbon[first + 1]!) / joined
      width[first + 1] = joined
      first++
    }
    if (step.surfaceWtPct >= bulk || step.timeS <= 0) continue
    diffusedOut += diffused(step, lines, grid.factorOnDiffusion ?? 1, { width, carbon, before, first, work })
  }
  const depthM = new Float64Array(n - first)
  let at = 0
  for (let i = first; i < n; i++) {
    depthM[i - first] = at + 0.5 * width[i]!
    at += width[i]!
  }
  return { depthM, widthM: width.slice(first), carbonWtPct: carbon.slice(first), diffusedOut, wentWithMetal }
}

function cellWidths(diffusionM: number, lostM: number, endM: number, cells: number): Float64Array {
  const finest = Math.min(diffusionM / cells, endM / 20)
  const reach = Math.min(endM, lostM + REACHES * diffusionM)
  const fineTo = Math.min(reach, lostM + diffusionM)
  const widths: number[] = []
  let at = 0
  let next = finest
  while (at < reach - 1e-3 * finest) {
    if (at > fineTo) next *= GROWS
    const here = Math.min(next, reach - at)
    widths.push(here)
    at += here
  }
  return Float64Array.from(widths)
}

class Work {
  readonly potential: Float64Array
  readonly slope: Float64Array
  readonly rate: Float64Array
  readonly lower: Float64Array
  readonly diagonal: Float64Array
  readonly upper: Float64Array
  readonly residual: Float64Array

  constructor(n: number) {
    this.potential = new Float64Array(n)
    this.slope = new Float64Array(n)
    this.rate = new Float64Array(n)
    this.lower = new Float64Array(n)
    this.diagonal = new Float64Array(n)
    this.upper = new Float64Array(n)
    this.residual = new Float64Array(n)
  }
}

interface Cells {
  readonly width: Float64Array
  readonly carbon: Float64Array
  readonly before: Float64Array
  readonly first: number
  readonly work: Work
}

const SHORTEST_S = 1e-3

/** A step of diffusion, in halves where it does not settle; returns what went out through the surface [wt% m]. */
function diffused(step: SkinStep, lines: CarbonLines, factor: number, cells: Cells): number {
  cells.before.set(cells.carbon)
  const out = settled(step, lines, factor, cells)
  if (out !== undefined) return out
  if (step.timeS < SHORTEST_S)
    throw new Error(`carbon under the skin: no balance at ${step.temperatureK.toFixed(0)} K in a step of ${step.timeS} s`)
  cells.carbon.set(cells.before)
  const half = { ...step, timeS: step.timeS / 2 }
  return diffused(half, lines, factor, cells) + diffused(half, lines, factor, cells)
}

/** One implicit step; undefined where Newton's rounds run out. */
function settled(step: SkinStep, lines: CarbonLines, factor: number, cells: Cells): number | undefined {
  const { width, carbon, before, first, work } = cells
  const { potential, slope, rate, lower, diagonal, upper, residual } = work
  const n = Math.min(carbon.length, touched(carbon, first, lines.bulkWtPct) + AHEAD)
  const law = fluxLaw(step.temperatureK, lines, factor)
  const dt = step.timeS
  law.read(step.surfaceWtPct)
  const outside = law.potential
  const surfaceG = 2 / width[first]!
  for (let round = 0; round < MOST_NEWTON; round++) {
    for (let i = first; i < n; i++) {
      law.read(carbon[i]!)
      potential[i] = law.potential
      slope[i] = law.slope
      rate[i] = Math.max(1, ((2 * dt) / (width[i]! * width[i]!)) * law.slope)
    }
    for (let i = first; i < n; i++) {
      const gLow = i === first ? surfaceG : 2 / (width[i - 1]! + width[i]!)
      const gHigh = i === n - 1 ? 0 : 2 / (width[i]! + width[i + 1]!)
      const p = potential[i]!
      const low = i === first ? outside : potential[i - 1]!
      const high = i === n - 1 ? p : potential[i + 1]!
      residual[i] = -((width[i]! * (carbon[i]! - before[i]!)) / dt - gHigh * (high - p) + gLow * (p - low))
      diagonal[i] = (width[i]! / dt + (gLow + gHigh) * slope[i]!) / rate[i]!
      lower[i] = i === first ? 0 : (-gLow * slope[i - 1]!) / rate[i - 1]!
      upper[i] = i === n - 1 ? 0 : (-gHigh * slope[i + 1]!) / rate[i + 1]!
    }
    // Thomas' elimination; the matrix is dominant by columns.
    for (let i = first + 1; i < n; i++) {
      const m = lower[i]! / diagonal[i - 1]!
      diagonal[i] = diagonal[i]! - m * upper[i - 1]!
      residual[i] = residual[i]! - m * residual[i - 1]!
    }
    let change = 0
    let largest = 0
    for (let i = n - 1; i >= first; i--) {
      change = (residual[i]! - (i === n - 1 ? 0 : upper[i]! * change)) / diagonal[i]!
      if (Math.abs(change) > largest) largest = Math.abs(change)
      carbon[i] = law.moved(carbon[i]!, change, slope[i]!, (2 * dt) / (width[i]! * width[i]!))
    }
    if (largest < DONE_WT_PCT) {
      law.read(carbon[first]!)
      return dt * surfaceG * (law.potential - outside)
    }
  }
  return undefined
}

/** Cells that a step may reach beyond the deepest that has lost carbon: the loss falls off many times in each. */
const AHEAD = 12

/** One past the deepest cell that has lost carbon. */
function touched(carbon: Float64Array, first: number, bulkWtPct: number): number {
  let i = carbon.length
  while (i > first && bulkWtPct - carbon[i - 1]! < 1e-7) i--
  return i
}

/** The flux potential [wt% m2/s] against total carbon at one temperature: it rises in ferrite and in austenite and stands still where two phases lie. */
interface FluxLaw {
  potential: number
  slope: number
  /** Sets both for `carbonWtPct`. */
  read(carbonWtPct: number): void
  /**
   * Carbon after a Newton change that counts in carbon where the potential stands still, and in `perSlope` potentials where that moves
   * more. A change ends at a corner of the potential: beyond it the slope says nothing, and the iteration would leap to and fro. `slope` is
   * that of `carbonWtPct`.
   */
  moved(carbonWtPct: number, change: number, slope: number, perSlope: number): number
}

function fluxLaw(temperatureK: number, lines: CarbonLines, factor: number): FluxLaw {
  const { ferrite, austenite, carbide } = lines.at(temperatureK)
  const inFerrite = factor * carbonInFerrite(temperatureK)
  // Agren's D is an exponential in carbon to within 1 %: its integral is then closed.
  const poor = factor * carbonInAustenite(temperatureK, 0)
  const steep = ln(carbonInAustenite(temperatureK, 0.8) / carbonInAustenite(temperatureK, 0)) / 0.8
  const knee = inFerrite * ferrite
  const from = Number.isFinite(austenite) ? exp(steep * austenite) : 0
  const top = Number.isFinite(carbide) ? knee + (poor / steep) * (exp(steep * carbide) - from) : Number.POSITIVE_INFINITY
  const corners = [ferrite, austenite, carbide]
  return {
    potential: 0,
    slope: 0,
    read(c) {
      if (c <= ferrite) {
        this.potential = inFerrite * c
        this.slope = inFerrite
      } else if (c <= austenite) {
        this.potential = knee
        this.slope = 0
      } else if (c <= carbide) {
        const grown = exp(steep * c)
        this.potential = knee + (poor / steep) * (grown - from)
        this.slope = poor * grown
      } else {
        this.potential = top
        this.slope = 0
      }
    },
    moved(c, change, read, perSlope) {
      // The branch that lies ahead, which at a corner is the one that the change points into.
      let branch = 0
      while (branch < 3 && (change > 0 ? c >= corners[branch]! : c > corners[branch]!)) branch++
      const slope = branch === 0 ? inFerrite : branch === 2 ? (read > 0 && c > austenite ? read : poor * exp(steep * c)) : 0
      const end = change > 0 ? (corners[branch] ?? Number.POSITIVE_INFINITY) : (corners[branch - 1] ?? Number.NEGATIVE_INFINITY)
      const wanted = c + change / Math.max(1, perSlope * slope)
      return change > 0 ? Math.min(wanted, end) : Math.max(wanted, end)
    },
  }
}
