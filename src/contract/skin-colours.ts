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
/** A temper that left a place this cool did not touch it [degC]. */
const UNTOUCHED_C = 100

/** Every colour that a skin can have: none, the run of temper colours from cool to hot, grey, scaled. */
export const SKIN_COLOURS: readonly SkinColour[] = [NONE, ...RUN.map(({ colour }) => colour), GREY, SCALED]

/** The colour of bright steel after it has been that hot [degC]; the table knows no times, and a long soak takes the colour further. */
function colourAfter(hottestC: number): SkinColour {
  if (hottestC >= SCALE_C) return SCALED
  if (hottestC >= PAST_C) return GREY
  return RUN.findLast(({ fromC }) => hottestC >= fromC)?.colour ?? NONE
}

/**
 * The colours along the outside of a piece after its treatment. Where it scaled in the fire and was tempered after, a temper colour is that
 * of metal rubbed bright between the two, as is done to see it.
 */
export function skinOf({ body, state, records }: Pick<Treatment, 'body' | 'state' | 'records'>): {
  readonly xMm: Float32Array
  readonly hottestC: Float32Array
  readonly colour: readonly SkinColour[]
} {
  const outside = outsideNodes(body)
  const heated = records.findLastIndex(({ kind }) => kind === 'heat')
  const drawn = records.findLastIndex(({ kind }) => kind === 'temper' || kind === 'run-colours') > heated
  const seen = outside.map((node) => {
    const fireC = celsiusFromKelvin(state.peakK[node] as number)
    const temperC = celsiusFromKelvin(state.temperPeakK[node] as number)
    // Under the heat of scale the fire colours the metal too, as a cold end beside the heated length.
    const rubbedBright = drawn && temperC > UNTOUCHED_C && fireC >= SCALE_C
    const hottestC = rubbedBright ? temperC : Math.max(fireC, temperC)
    return { hottestC, colour: colourAfter(hottestC) }
  })
  return {
    xMm: Float32Array.from(outside, (node) => 1000 * (body.mesh.xM[node] as number)),
    hottestC: Float32Array.from(seen, ({ hottestC }) => hottestC),
    colour: seen.map(({ colour }) => colour),
  }
}
