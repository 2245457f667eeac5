import type { SkinColour } from './skin-colours.ts'

/** What the steel at a place has become, from never touched to hardened through; `Picture.structure` counts in this order. */
export const STRUCTURES = ['as before the heat', 'part-way heated', 'soft after heating', 'part hardened', 'hardened'] as const
export type Structure = (typeof STRUCTURES)[number]

/**
 * The cut half of a piece through its treatment: what a cut-away, a time line and the history of a point are drawn from.
 *
 * n nodes, t triangles, f instants. The body is that of the forecast: sections that are not round stand as their equivalent rounds.
 * Typed arrays own their buffers, so that a worker can hand them over.
 */
export interface Picture {
  /** From the working end, and from the axis [n, mm]. */
  readonly xMm: Float32Array
  readonly rMm: Float32Array
  /** Node triples, counter-clockwise in (x, r) [3 t]. */
  readonly triangles: Uint32Array
  /** Nodes of the surface in order, from the axis at the working end to the axis at the other. */
  readonly surfaceNodes: Uint32Array

  /**
   * Instants, out of the solver's own steps: dense where temperatures bend, and at the start and end of every step; lines drawn from one to the
   * next come within a few kelvin of the rest [f, s since the start]. Times never fall; a step begins at the instant where another ended.
   *
   * Worked out once and shown again: the later rounds of a repeated temper or normalising. Not worked out, a straight line between its
   * ends: slow cooling in a closed furnace, and a bath that is warmed.
   */
  readonly timeS: Float64Array
  /** Index in the forecast's `steps`; the air after a quench belongs to the quench, past the step's own end [f]. */
  readonly step: Uint16Array
  /** Instant after instant [f n, degC]. */
  readonly temperatureC: Float32Array
  /** How far up the piece the bath stands: NaN where it is in no bath, more than its length where it is all under [f, mm]. */
  readonly levelMm: Float32Array

  /** Best estimate [n, HRC]; what is under 20 HRC is soft, and the scale no measure for it. */
  readonly quenchedHrc: Float32Array
  readonly temperedHrc: Float32Array
  /** High less low of the tempered hardness, nine in ten between: spread from a coarse net of places [n, HRC]. Never 0. */
  readonly bandHrc: Float32Array
  /** Index in `STRUCTURES` [n]. */
  readonly structure: Uint8Array
  /** Share of the metal that the quench made martensite, tempered or not, with the austenite retained in it [n, 0..1]. */
  readonly martensiteShare: Float32Array
  /** Shares that formed beside it in the last cooling from the heat [n, 0..1]; the rest is as it was before. */
  readonly ferriteShare: Float32Array
  readonly pearliteShare: Float32Array
  readonly bainiteShare: Float32Array
  /** Hottest in the last hardening heat [n, degC]. */
  readonly peakC: Float32Array
  /** In the last quench [n, s]; NaN where it was never passed. */
  readonly cooling800To500S: Float32Array

  /** Along the outside: the temper colour that bright metal shows there at the end. */
  readonly skin: {
    /** Rising [s, mm]. */
    readonly xMm: Float32Array
    /** Hottest of what coloured it [s, degC]. */
    readonly hottestC: Float32Array
    readonly colour: readonly SkinColour[]
  }
}
