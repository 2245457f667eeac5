import type { Atmosphere, Fire, FireKind } from './gear.ts'

/** What an atmosphere does to steel: the carbon that its surface comes to, and how it scales. */
export interface AtmosphereNature {
  /** Carbon at the surface in balance with it, best and outer figures [wt%]; Infinity: none is lost. */
  readonly surfaceWtPct: { readonly best: number; readonly least: number; readonly most: number }
  /** Depth of metal lost to scale against open air [1]. */
  readonly scaling: number
  readonly source: string
}

/**
 * Under growing scale the surface has the carbon of wustite and carbon monoxide in balance, which is next to none (N. Birks & W. Jackson, JISI 208
 * (1970) 81); burnt gas with no oxygen to spare still holds water and carbon dioxide, which take carbon alike but scale less. A rich flame
 * hardly scales; what carbon it would leave differs from fire to fire. Levels from memory.
 */
export const ATMOSPHERE_NATURES: { readonly [Each in Atmosphere]: AtmosphereNature } = {
  oxidising: {
    surfaceWtPct: { best: 0, least: 0, most: 0.05 },
    scaling: 1,
    source: 'open air: surface carbon under scale next to none (Birks & Jackson 1970), scale by the parabolic law',
  },
  neutral: {
    surfaceWtPct: { best: 0.004, least: 0, most: 0.15 },
    scaling: 0.6,
    source: 'burnt gas without spare oxygen: takes carbon like air, scales a little over half as much (memory)',
  },
  rich: {
    surfaceWtPct: { best: 0.25, least: 0.03, most: 0.6 },
    scaling: 0.2,
    source: 'rich fire: hardly scales; leaves some 0.25 % carbon at the surface (memory, 0.03..0.6)',
  },
  packed: {
    surfaceWtPct: { best: Number.POSITIVE_INFINITY, least: 0.5, most: Number.POSITIVE_INFINITY },
    scaling: 0.03,
    source: 'closed pipe or foil with charcoal: nothing lost (common practice, no source)',
  },
}

/** How a fire of each kind burns when nobody says: common practice, no source. A muffle is full of air. */
export const USUAL_ATMOSPHERE: { readonly [Kind in FireKind]: Atmosphere } = {
  coal: 'neutral',
  charcoal: 'rich',
  gas: 'neutral',
  muffle: 'oxidising',
  torch: 'neutral',
}

export function atmosphereOf({ kind, atmosphere }: Pick<Fire, 'kind' | 'atmosphere'>): Atmosphere {
  return atmosphere ?? USUAL_ATMOSPHERE[kind]
}
