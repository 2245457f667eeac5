import type { ShopText } from '#web/job/job-text.ts'
import { AIRS, type GearSort } from './step-fields.ts'

/** A piece of gear to choose for a step: its name as the document has it, and what tells it from the others. */
export interface GearOffered {
  readonly name: string
  readonly says: string
}

/** What the shop has for a step, by the lists that it looks in, the likeliest list first. */
export function gearOffered(shop: ShopText, sorts: readonly GearSort[]): readonly GearOffered[] {
  const of = (sort: GearSort): readonly GearOffered[] => {
    switch (sort) {
      case 'air':
        return AIRS.map((name) => ({ name, says: name }))
      case 'fires':
        return (shop.fires ?? []).map(({ name }) => ({ name, says: name }))
      case 'ovens':
        return (shop.ovens ?? []).map(({ name, max }) => ({ name, says: `${name}, up to ${max}` }))
      case 'baths':
        return (shop.baths ?? []).map(({ name, kind }) => ({
          name,
          says: kind === undefined || name.toLowerCase().includes(kind) ? name : `${name}, ${kind}`,
        }))
    }
  }
  return sorts.flatMap(of)
}
