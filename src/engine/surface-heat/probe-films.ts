import { interpolate, type Rows } from '#engine/arithmetic/table.ts'
import type { BathKind } from './gear.ts'

/** Kinds of bath that boil or at least convect as a liquid. */
export type LiquidKind = Exclude<BathKind, 'still air' | 'moving air'>

const ZERO_DEGC_K = 273.15

/** One film table: what a still bath at `bathK` does to the probe, by the temperature of its surface [K, W/(m2 K)]. */
export interface ProbeFilm {
  readonly bathK: number
  readonly film: Rows
}

const SURFACE_DEGC = [20, 60, 100, 150, 200, 250, 300, 350, 400, 450, 500, 550, 600, 650, 700, 750, 800, 860] as const

function table(bathDegC: number, values: readonly number[]): ProbeFilm {
  const film = SURFACE_DEGC.map((degC, i) => [degC + ZERO_DEGC_K, values[i]!] as const)
  return { bathK: bathDegC + ZERO_DEGC_K, film }
}

/**
 * Effective film coefficients of still baths for a probe of alloy 600, 12.5 x 60 mm, from 850 degC (ASTM D6200, ISO 9950), coldest
 * bath first. They are read at the centre of the probe: lower and wider than the local ones at a wetting front, which differ between
 * sources by a factor of two. Nobody's print: shapes after Totten, Bates & Clinton (1993), Liscic, Narazaki and Kobasko (2010), levels
 * fitted so that the probe cools as published (+/-30 %).
 */
export const PROBE_FILMS: { readonly [Kind in LiquidKind]: readonly ProbeFilm[] } = {
  'slow oil': [table(40, [130, 130, 155, 182, 214, 270, 390, 590, 1020, 1950, 1680, 860, 570, 485, 445, 430, 430, 440])],
  'medium oil': [table(60, [160, 160, 220, 260, 330, 430, 620, 950, 1500, 2200, 2800, 2700, 2050, 1350, 880, 640, 520, 500])],
  'fast oil': [table(60, [200, 200, 270, 330, 420, 560, 850, 1400, 2200, 3200, 4000, 4200, 3700, 2600, 1500, 850, 680, 650])],
  'vegetable oil': [
    table(60, [170, 170, 230, 280, 340, 430, 560, 800, 1200, 1600, 2000, 2250, 2350, 2250, 1950, 1500, 1000, 800]),
  ],
  water: [
    table(20, [900, 900, 3000, 9000, 12500, 13500, 13500, 12500, 11000, 9500, 8000, 6500, 5000, 3600, 2600, 1900, 1500, 1300]),
    table(40, [900, 900, 3000, 8500, 11500, 12500, 12500, 11000, 9000, 7000, 5000, 3300, 2200, 1500, 1100, 850, 700, 600]),
    table(60, [900, 900, 3000, 8000, 10500, 11000, 10000, 7500, 4500, 2500, 1500, 1000, 700, 500, 420, 370, 330, 300]),
  ],
  // Salt keeps the blanket away up to about 40 degC; beyond that brine is taken to lose as water of 40 degC would from 20.
  brine: [
    table(
      20,
      [1000, 1000, 4000, 11000, 14500, 15500, 15500, 15000, 14500, 14000, 13000, 12000, 11000, 9500, 8000, 6500, 5000, 4000],
    ),
  ],
}

/** Film table of a still bath at `bathK` for the probe, interpolated between the tables of its kind and held beyond them. */
export function probeFilm(kind: LiquidKind, bathK: number): Rows {
  const tables = PROBE_FILMS[kind]
  const upper = tables.findIndex((each) => each.bathK >= bathK)
  if (upper === 0) return tables[0]!.film
  if (upper < 0) return tables[tables.length - 1]!.film
  const cold = tables[upper - 1]!
  const warm = tables[upper]!
  const share = (bathK - cold.bathK) / (warm.bathK - cold.bathK)
  return cold.film.map(([surfaceK, h]) => [surfaceK, h + share * (interpolate(warm.film, surfaceK) - h)] as const)
}
