import type { Composition } from '#engine/materials/steel.ts'
import { heatByColourK, hotterForColourK, oxideGrownS } from '#engine/metallurgy/temper-oxide.ts'
import { outsideNodes } from '#engine/simulation/body.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import { celsiusFromKelvin } from '#units/temperature.ts'
import { TEMPER_COLOURS, type TemperColour } from './temper-colours.ts'

/** How a place of the skin looks at the end. */
export interface SkinColour {
  /** A temper colour, or `none` (never warm enough), `grey` (past the colours), `scaled` (the fire was the last to touch it). */
  readonly name: string
  /** About what the eye sees on bright steel in daylight: chosen by eye, no measurement. */
  readonly srgb: string
}

/** In step with the colours of the one table that names the whole run of them. */
const SEEN: Readonly<Record<string, string>> = {
  'very pale yellow': '#efe7c4',
  'straw yellow': '#e3cb83',
  'dark straw': '#cda453',
  'brownish yellow': '#ac7b3e',
  'yellow tinged with purple': '#94604f',
  'light purple': '#85537a',
  'dark purple': '#5c3f75',
  'dark blue': '#35477f',
  'pale blue': '#7e9cbe',
  'blue tinged with green': '#88a6a6',
}
const NONE: SkinColour = { name: 'none', srgb: '#c9cccd' }
const GREY: SkinColour = { name: 'grey', srgb: '#868a8c' }
const SCALED: SkinColour = { name: 'scaled', srgb: '#4b4845' }

const RUN: readonly { readonly fromC: number; readonly colour: SkinColour }[] = TEMPER_COLOURS.flatMap(
  ({ name, temperatureC }: TemperColour) => {
    const srgb = SEEN[name]
    return srgb === undefined ? [] : [{ fromC: temperatureC, colour: { name, srgb } }]
  },
)
/** The table ends; its last colour is given the width of the one before it [degC]. */
const PAST_C = 343
/** From here on the oxide is scale, black and thick [degC]: common practice, no source. */
const SCALE_C = 500
/** A place that a fire only brushed was at its hottest for this long at least [s]. */
const SHORTEST_S = 15
/** A temper that left a place this cool did not touch it [degC]. */
const UNTOUCHED_C = 100

/** Every colour that a skin can have: none, the run of temper colours from cool to hot, grey, scaled. */
export const SKIN_COLOURS: readonly SkinColour[] = [NONE, ...RUN.map(({ colour }) => colour), GREY, SCALED]

/**
 * The colour of bright steel whose film tables give that heat [degC], which is not how hot it was: a film grows with time as well as with heat
 * (`heatByColourK`).
 */
export function colourOfHeat(byColourC: number): SkinColour {
  if (byColourC >= PAST_C) return GREY
  return RUN.findLast(({ fromC }) => byColourC >= fromC)?.colour ?? NONE
}

/**
 * The colours along the outside of a piece after its treatment. Where it scaled in the fire and was tempered after, a temper colour is that
 * of metal rubbed bright between the two, as is done to see it.
 */
export function skinOf(
  { body, state, records }: Pick<Treatment, 'body' | 'state' | 'records'>,
  composition: Composition,
): {
  readonly xMm: Float32Array
  readonly hottestC: Float32Array
  readonly colour: readonly SkinColour[]
} {
  const outside = outsideNodes(body)
  const hotterK = hotterForColourK(composition)
  const heated = records.findLastIndex(({ kind }) => kind === 'heat')
  const drawn = records.findLastIndex(({ kind }) => kind === 'temper' || kind === 'run-colours') > heated
  const seen = outside.map((node) => {
    const fireC = celsiusFromKelvin(state.peakK[node] as number)
    const temperC = celsiusFromKelvin(state.temperPeakK[node] as number)
    const rubbedBright = drawn && temperC > UNTOUCHED_C && fireC >= SCALE_C
    const hottestC = rubbedBright ? temperC : Math.max(fireC, temperC)
    if (hottestC >= SCALE_C) return { hottestC, colour: SCALED }
    // Under the heat of scale the fire colours the metal too, as a cold end beside the heated length.
    const inFireS = rubbedBright
      ? 0
      : oxideGrownS(state.peakK[node] as number, (state.soakS[node] as number) + SHORTEST_S, hotterK)
    return { hottestC, colour: colourOfHeat(celsiusFromKelvin(heatByColourK((state.oxideS[node] as number) + inFireS))) }
  })
  return {
    xMm: Float32Array.from(outside, (node) => 1000 * (body.mesh.xM[node] as number)),
    hottestC: Float32Array.from(seen, ({ hottestC }) => hottestC),
    colour: seen.map(({ colour }) => colour),
  }
}
