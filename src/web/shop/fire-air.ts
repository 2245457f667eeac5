import { ATMOSPHERES, type Atmosphere, FIRE_KINDS, USUAL_ATMOSPHERE } from '#contract/gear-kinds.ts'
import { kindInName } from '#contract/gear-names.ts'
import type { ShopText } from '#web/job/job-text.ts'

/** What is about a piece in a fire, in a smith's words. */
export const AIR_WORDS: { readonly [Each in Atmosphere]: string } = {
  oxidising: 'air to spare',
  neutral: 'neutral',
  rich: 'rich',
  packed: 'packed in pipe or foil',
}

/** How a fire of this kind burns when nobody says; its kind may stand in its name. Undefined for a kind that is not known. */
export function usualAir({ name, kind }: { readonly name?: string; readonly kind?: string }): Atmosphere | undefined {
  const known = FIRE_KINDS.find((each) => each === kind) ?? kindInName(name ?? '', FIRE_KINDS)
  return known === undefined ? undefined : USUAL_ATMOSPHERE[known]
}

/** How the fire or the oven of that name burns in this shop; an oven is full of air, as a muffle is. A step without a name has the first fire. */
export function burnsAs({ fires = [], ovens = [] }: ShopText, name: string): Atmosphere | undefined {
  const is = (each: { readonly name: string }): boolean => each.name.toLowerCase() === name.trim().toLowerCase()
  const fire = name.trim() === '' ? fires[0] : fires.find(is)
  if (fire === undefined) return ovens.some(is) ? USUAL_ATMOSPHERE.muffle : undefined
  return ATMOSPHERES.find((each) => each === fire.atmosphere) ?? usualAir(fire)
}
