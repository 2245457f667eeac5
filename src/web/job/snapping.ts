import type { System } from '#units/length.ts'

/** The shop's fraction: half a millimetre, a sixteenth of an inch [m]. */
export function fractionM(system: System): number {
  return system === 'metric' ? 0.0005 : 0.0254 / 16
}

/** The nearest whole number of fractions [m]. */
export function snappedM(lengthM: number, system: System): number {
  const step = fractionM(system)
  return clean(Math.round(lengthM / step) * step)
}

/** So many fractions further; a figure between two fractions first goes onto the next one that way. Never less than nothing. */
export function steppedM(lengthM: number, steps: number, system: System): number {
  const step = fractionM(system)
  const count = lengthM / step
  const there = steps > 0 ? Math.floor(count + 1e-6) + steps : Math.ceil(count - 1e-6) + steps
  return clean(Math.max(0, there) * step)
}

/** Without the last digits that adding up leaves. */
export function clean(lengthM: number): number {
  return Number(lengthM.toFixed(10))
}
