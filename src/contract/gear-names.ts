import type { BathKind, FireKind, Shop } from '#engine/surface-heat/gear.ts'
import type { Assumption } from './assumption.ts'
import { meant } from './nearest-word.ts'
import type { ShopTaken } from './parse-shop.ts'
import type { Problem } from './problems.ts'

const AIR_NAMES = ['still air', 'moving air'] as const

export function isAirName(name: string): boolean {
  return (AIR_NAMES as readonly string[]).includes(name.toLowerCase())
}

/** Whether what a step calls a bath is the air, by its name or by what the shop says of it. */
export function isAirIn(shop: Shop, name: string): boolean {
  return isAirName(shop.baths.find((bath) => bath.name === name)?.kind ?? name)
}

/** Which sorts of gear a step can be done in, the likeliest first. */
export type GearSort = 'fires' | 'baths' | 'ovens'

const SAID: { readonly [Sort in GearSort]: string } = { fires: 'fire', baths: 'bath', ovens: 'oven' }

/**
 * Finds gear by the name that a step gives, in the spelling of the shop. A step that gives none has the only one that there is.
 * Undefined when nothing is found, which is then a problem of `field`.
 */
export type GearFinder = (asked: string | undefined, sorts: readonly GearSort[], field: string) => string | undefined

export function gearFinder(
  shop: Shop,
  { misread, faulty }: Pick<ShopTaken, 'misread' | 'faulty'>,
  problems: Problem[],
  used: Set<string>,
  assumptions: Assumption[],
): GearFinder {
  return (asked, sorts, field) => {
    const names = sorts.flatMap((sort) => shop[sort].map(({ name }) => name))
    const all = sorts.includes('baths') ? [...names, ...AIR_NAMES] : names
    const sort = SAID[sorts[0] ?? 'fires']
    if (asked === undefined) {
      const likely = shop[sorts[0] ?? 'fires'].map(({ name }) => name)
      const [only] = likely
      if (only !== undefined && (likely.length === 1 || sort === 'fire')) {
        used.add(only)
        assumptions.push({ says: `${field.replace(/\.in$/u, '')}: in the ${only}.`, because: `the step names no ${sort}` })
        return only
      }
      if (!sorts.some((each) => faulty.has(each)))
        problems.push({
          field,
          says: `missing: in which ${sort}?${all.length === 0 ? ` The shop has none; list it under shop.${sorts[0]}` : ` ${all.join(', ')}`}`,
        })
      return undefined
    }
    const found = all.find((name) => name === asked) ?? all.find((name) => name.toLowerCase() === asked.toLowerCase())
    if (found !== undefined) {
      used.add(found)
      return found
    }
    if (misread.has(asked.toLowerCase())) return undefined
    if (!sorts.some((each) => faulty.has(each)))
      problems.push({
        field,
        says: `"${asked}": the shop has no ${sort} of this name; ${all.length === 0 ? `list it under shop.${sorts[0]}` : meant(asked, [...all, ...misread])}`,
      })
    return undefined
  }
}

/** The kind whose words stand in a name: "oil bucket" has none, "medium oil bucket" and "water butt" have. */
export function kindInName<Kind extends FireKind | BathKind>(name: string, kinds: readonly Kind[]): Kind | undefined {
  const words = ` ${name.toLowerCase().replace(/[^\p{L}]+/gu, ' ')} `
  return [...kinds].sort((a, b) => b.length - a.length).find((kind) => words.includes(` ${kind} `))
}
