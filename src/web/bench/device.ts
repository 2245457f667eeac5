import { effect, type Signal, signal } from '@preact/signals'
import type { System } from '#units/length.ts'

/** `paper`: by day and for print; `slate`: for a dim shop. */
export type Ground = 'paper' | 'slate'

/** What belongs to the device and not to a piece. */
export interface Device {
  readonly units: Signal<System>
  readonly ground: Signal<Ground>
}

const UNITS_KEY = 'quenchwright.units'
const GROUND_KEY = 'quenchwright.ground'

/** Settings of this device, kept where the browser allows it. */
export function device(): Device {
  const units = signal<System>(kept(UNITS_KEY, ['metric', 'inch']) ?? usualUnits())
  const ground = signal<Ground>(kept(GROUND_KEY, ['paper', 'slate']) ?? usualGround())
  effect(() => keep(UNITS_KEY, units.value))
  effect(() => {
    keep(GROUND_KEY, ground.value)
    document.documentElement.dataset.ground = ground.value
  })
  return { units, ground }
}

function usualUnits(): System {
  return /-(?:US|LR|MM)$/u.test(navigator.language) ? 'inch' : 'metric'
}

function usualGround(): Ground {
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'slate' : 'paper'
}

function kept<Value extends string>(key: string, values: readonly Value[]): Value | undefined {
  try {
    return values.find((each) => each === localStorage.getItem(key))
  } catch {
    // Storage is refused: the device has no memory, and `Shelf` tells so.
    return undefined
  }
}

function keep(key: string, value: string): void {
  try {
    localStorage.setItem(key, value)
  } catch {
    // As above.
  }
}
