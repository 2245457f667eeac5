import type { Picture } from '#contract/picture-fields.ts'
import type { System } from '#units/length.ts'
import { formatTemperature, kelvinFromCelsius } from '#units/temperature.ts'
import type { Field } from '#web/bench/bench.ts'
import { fieldValues } from './field-values.ts'
import { spanSays } from './field-words.ts'
import { cssOf } from './ramps.ts'
import { GLOWS_FROM_C, type Scale } from './scales.ts'
import { lookOf, structuresIn } from './structure-look.ts'

interface FieldLegendProps {
  readonly picture: Picture
  readonly field: Field
  readonly instantS: number
  readonly units: System
}

/** What the shades of the cut-away mean, and between which figures the piece lies. */
export function FieldLegend({ picture, field, instantS, units }: FieldLegendProps) {
  if (field === 'became') return <StructureLegend structure={picture.structure} />
  if (field === 'colours') return <ColourLegend skin={picture.skin} units={units} />
  const values = fieldValues(picture, field, instantS, units)
  if (values === undefined) return null
  const { scale, low, high } = values
  const from = field === 'heat' ? GLOWS_FROM_C : scale.low
  const share = (value: number): number => Math.min(1, Math.max(0, (value - from) / (scale.high - from)))
  return (
    <p class="field-legend">
      <span class="field-ramp" style={{ background: gradientOf(scale, from) }} aria-hidden="true">
        <span class="field-span" style={{ left: `${100 * share(low)}%`, right: `${100 * (1 - share(high))}%` }} />
      </span>
      <strong>{spanSays(picture, field, instantS, units)}</strong>
      {values.every !== '' && <span class="field-every soft">a line every {values.every}</span>}
    </p>
  )
}

const PARTS = 12

function gradientOf({ ramp, low, high }: Scale, from: number): string {
  const colours = Array.from({ length: PARTS + 1 }, (_, i) => {
    const value = from + (i / PARTS) * (high - from)
    return cssOf(ramp[Math.round((255 * (value - low)) / (high - low))] ?? 0)
  })
  return `linear-gradient(to right, ${colours.join(', ')})`
}

function StructureLegend({ structure }: { readonly structure: Uint8Array }) {
  return (
    <ul class="field-legend">
      {structuresIn(structure).map((each) => (
        <li key={each}>
          <Swatch structure={each} />
          {lookOf(each).word}
        </li>
      ))}
    </ul>
  )
}

const SWATCH_PX = 22

/** The same hatching as on the metal, from the same rule. */
function Swatch({ structure }: { readonly structure: number }) {
  const { ground, line, onLine } = lookOf(structure)
  return (
    <canvas
      class="field-swatch"
      width={SWATCH_PX}
      height={SWATCH_PX}
      ref={(canvas) => {
        const pen = canvas?.getContext('2d')
        if (pen === null || pen === undefined) return
        pen.fillStyle = ground
        pen.fillRect(0, 0, SWATCH_PX, SWATCH_PX)
        pen.fillStyle = line
        for (let y = 0; y < SWATCH_PX; y++) for (let x = 0; x < SWATCH_PX; x++) if (onLine(x, y)) pen.fillRect(x, y, 1, 1)
      }}
    />
  )
}

/** The colours that the skin has, from the coolest to the hottest, with the heat that gave them. */
function ColourLegend({ skin, units }: { readonly skin: Picture['skin']; readonly units: System }) {
  const seen = new Map<string, { readonly srgb: string; low: number; high: number }>()
  for (const [i, { name, srgb }] of skin.colour.entries()) {
    const heat = skin.hottestC[i] ?? Number.NaN
    const known = seen.get(name)
    if (known === undefined) seen.set(name, { srgb, low: heat, high: heat })
    else {
      known.low = Math.min(known.low, heat)
      known.high = Math.max(known.high, heat)
    }
  }
  return (
    <ul class="field-legend">
      {[...seen]
        .toSorted(([, a], [, b]) => a.low - b.low)
        .map(([name, { srgb, high }]) => (
          <li key={name}>
            <span class="field-swatch" style={{ background: srgb }} />
            {name === 'none' ? 'no colour' : name}, {formatTemperature(kelvinFromCelsius(high), units)}
          </li>
        ))}
    </ul>
  )
}
