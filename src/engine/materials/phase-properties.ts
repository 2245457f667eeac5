import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { Composition } from './steel.ts'

/**
 * Heat properties of the constituents of steel by temperature, without the heat of any transformation.
 * Sources: EN 1993-1-2 (2005), 3.4.1 for carbon steel; BISRA, Physical Constants of Some Commercial Steels (1953), from memory +/-5 %;
 * austenite after Richter (1973), from memory +/-8 %; martensite and tool steels from makers' sheets, from memory +/-10 %.
 */
const ZERO_C_K = 273.15

function inKelvin(rowsC: Rows): Rows {
  return rowsC.map(([celsius, value]) => [celsius + ZERO_C_K, value] as const)
}

/**
 * Specific heat of ferrite with carbide [K, J/(kg K)]: EN 1993-1-2 to 600 C, above it lattice and magnetic heat only,
 * with the Curie point of iron (770 C) as a rounded top, from memory of pure iron.
 */
export const FERRITE_SPECIFIC_HEAT: Rows = inKelvin([
  [20, 440],
  [100, 488],
  [200, 530],
  [300, 565],
  [400, 606],
  [500, 666],
  [600, 760],
  [700, 850],
  [750, 930],
  [770, 1000],
  [800, 850],
  [850, 760],
  [900, 700],
])

/** Specific heat of martensite [K, J/(kg K)]; near that of ferrite, memory +/-10 %. */
export const MARTENSITE_SPECIFIC_HEAT: Rows = inKelvin([
  [20, 470],
  [100, 495],
  [200, 530],
  [300, 565],
])

/** Specific heat of austenite, 535 + 0.13 T(C) [K, J/(kg K)]. */
export const AUSTENITE_SPECIFIC_HEAT: Rows = inKelvin([
  [0, 535],
  [1300, 704],
])

/** Conductivity of austenite, 15 + 0.0115 T(C) [K, W/(m K)]. */
export const AUSTENITE_CONDUCTIVITY: Rows = inKelvin([
  [0, 15],
  [1300, 29.95],
])

/** How far the fall of conductivity from 20 to 700 C has gone: the shape of the plain 0.45 %C curve (50, 42, 37, 31 at 20, 300, 500, 700 C). */
const FALL: Rows = inKelvin([
  [20, 0],
  [100, 0.14],
  [300, 0.42],
  [500, 0.68],
  [600, 0.84],
  [700, 1],
])

/**
 * Conductivity of annealed steel at 20 C [W/(m K)]: a straight loss per per cent of alloy, from memory +/-30 % on the loss
 * (7 for silicon, 3 to 4.5 for manganese, nickel and chromium), with the floor that maker's sheets of A2, D2 and H13 show (20..29).
 */
function softConductivityAtRoom({ C, Mn, Si, Cr, Ni, Mo, W }: Composition): number {
  return Math.max(24, 57 - 6 * C - 7 * Si - 3.5 * Mn - 4.5 * Cr - 3 * Ni - 5 * Mo - 2 * W)
}

/** Conductivity of ferrite with carbide [K, W/(m K)]; the loss by alloy has gone at 700 C. */
export function softConductivity(composition: Composition): Rows {
  const room = softConductivityAtRoom(composition)
  const at700 = 26 + 0.2 * (room - 25)
  return FALL.map(([kelvin, gone]) => [kelvin, room + (at700 - room) * gone] as const)
}

/** Conductivity of martensite [K, W/(m K)]: 25..30 at 20 C in a 0.45 %C steel, 32 at 300 C; memory +/-10 %. */
export function martensiteConductivity(composition: Composition): Rows {
  const room = 16 + 0.24 * softConductivityAtRoom(composition)
  return inKelvin([
    [20, room],
    [300, room + 3.5],
  ])
}

/** Conductivity of tempered martensite [K, W/(m K)]: half way to the soft steel at 20 C, as the soft steel at 700 C. */
export function temperedConductivity(composition: Composition): Rows {
  const martensite = martensiteConductivity(composition)
  return softConductivity(composition).map(([kelvin, soft], index, { length }) => {
    const hard = (0.5 * (length - 1 - index)) / (length - 1)
    return [kelvin, hard * interpolate(martensite, kelvin) + (1 - hard) * soft] as const
  })
}

/**
 * Density at 20 C [kg/m3]: 7850 (EN 1993-1-2), less for chromium, more for tungsten and molybdenum, so that makers' sheets of
 * D2 (7700), H13 (7780), M2 (8160) and T1 (8670) are met within 1 %; from memory. Held at all temperatures: the mesh keeps its mass.
 */
export function densityKgPerM3({ Cr, W, Mo }: Composition): number {
  return 7850 - 12.5 * Cr + 45 * W + 15 * Mo
}
