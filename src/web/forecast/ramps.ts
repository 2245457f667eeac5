/** 256 colours of a canvas, each as the four bytes of a pixel (red first in memory), from the low end of a scale to the high one. */
export type Ramp = Uint32Array<ArrayBuffer>

/** A colour at a place of a scale, 0 to 1; `alpha` 0 lets what lies below show. */
export interface Stop {
  readonly at: number
  readonly colour: string
  readonly alpha?: number
}

export const RAMP_SIZE = 256

/** A ramp through these stops, even to the eye between them (mixed in OKLab, Ottosson 2020). */
export function rampThrough(stops: readonly Stop[]): Ramp {
  const mixed = stops.map(({ at, colour, alpha = 1 }) => ({ at, alpha, lab: labOf(rgbOf(colour)) }))
  return rampOf((share) => {
    const next = mixed.findIndex(({ at }) => at >= share)
    const high = mixed[next === -1 ? mixed.length - 1 : next]!
    const low = mixed[next === -1 ? mixed.length - 1 : Math.max(0, next - 1)]!
    const between = high.at > low.at ? (share - low.at) / (high.at - low.at) : 0
    const mix = (i: 0 | 1 | 2): number => low.lab[i] + between * (high.lab[i] - low.lab[i])
    return { rgb: rgbOfLab([mix(0), mix(1), mix(2)]), alpha: low.alpha + between * (high.alpha - low.alpha) }
  })
}

export function rampOf(colourAt: (share: number) => { readonly rgb: Triple; readonly alpha: number }): Ramp {
  const ramp = new Uint32Array(RAMP_SIZE)
  for (let i = 0; i < RAMP_SIZE; i++) {
    const { rgb, alpha } = colourAt(i / (RAMP_SIZE - 1))
    const [red, green, blue] = rgb.map((part) => Math.round(255 * Math.min(1, Math.max(0, part)))) as [number, number, number]
    ramp[i] = ((Math.round(255 * alpha) << 24) | (blue << 16) | (green << 8) | red) >>> 0
  }
  return ramp
}

/** One colour of a ramp for style sheets. */
export function cssOf(pixel: number): string {
  const part = (shift: number): number => (pixel >>> shift) & 255
  return `rgb(${part(0)} ${part(8)} ${part(16)} / ${Math.round((100 * part(24)) / 255)}%)`
}

/** How light a colour is to the eye, 0 black to 100 white (CIE 1976 L*). */
export function lightnessOf(pixel: number): number {
  const [red, green, blue] = [0, 8, 16].map((shift) => linear(((pixel >>> shift) & 255) / 255)) as [number, number, number]
  const luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue
  return luminance > 0.008856 ? 116 * Math.cbrt(luminance) - 16 : 903.3 * luminance
}

type Triple = readonly [number, number, number]

function rgbOf(colour: string): Triple {
  const part = (from: number): number => Number.parseInt(colour.slice(from, from + 2), 16) / 255
  return [part(1), part(3), part(5)]
}

function linear(part: number): number {
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
}

export function gammaOf(light: number): number {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055
}

function labOf(rgb: Triple): Triple {
  const [r, g, b] = rgb.map(linear) as [number, number, number]
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b)
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b)
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b)
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ]
}

function rgbOfLab([lightness, a, b]: Triple): Triple {
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3
  return [
    gammaOf(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    gammaOf(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    gammaOf(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ]
}
