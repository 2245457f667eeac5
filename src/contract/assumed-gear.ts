import { BATH_KINDS, type Bath, FIRE_KINDS, type Fire, type Oven, type Shop } from '#engine/surface-heat/gear.ts'
import type { Assumption } from './assumption.ts'
import { kindInName } from './gear-names.ts'
import { ASSUMED_BATH_K, ASSUMED_SWING_K, type ShopTaken } from './parse-shop.ts'

const FIRE: Fire = { name: 'coal fire', kind: 'coal' }
const OIL: Bath = { name: 'oil bucket', kind: 'medium oil', volumeM3: 0.012, depthM: 0.25, temperatureK: ASSUMED_BATH_K }
const WATER: Bath = { name: 'water bucket', kind: 'water', volumeM3: 0.012, depthM: 0.25, temperatureK: ASSUMED_BATH_K }
const OVEN: Oven = { name: 'small oven', maxK: 503.15, readsLowK: 0, swingK: ASSUMED_SWING_K }

const FIRE_SAYS = 'coal'
const BATH_SAYS = '12 L, 250 mm deep, at 20 °C'
const OVEN_SAYS = 'to 230 °C, reads true, swings 10 °C either way'
const BECAUSE = 'the job lists none; write an empty list if there is none'

/** Gear that the process asks for by name; `undefined` among them is a step that names none. */
export interface GearAsked {
  readonly fires: readonly (string | undefined)[]
  readonly baths: readonly (string | undefined)[]
  readonly ovens: readonly (string | undefined)[]
}

/**
 * The shop with each list that was left out filled: with what the process names, where the name tells what it is, and else with the
 * usual small shop. `asked` undefined stands for a plan, which may choose from everything.
 */
export function furnished(taken: ShopTaken, asked: GearAsked | undefined, assumptions: Assumption[]): Shop {
  const fires = taken.fires ?? (taken.faulty.has('fires') ? [] : assumedFires(asked?.fires, assumptions))
  const baths = taken.baths ?? (taken.faulty.has('baths') ? [] : assumedBaths(asked?.baths, assumptions))
  const ovens = taken.ovens ?? (taken.faulty.has('ovens') ? [] : assumedOvens(asked?.ovens, assumptions))
  return { fires, baths, ovens }
}

function assumedFires(asked: GearAsked['fires'] | undefined, assumptions: Assumption[]): Fire[] {
  const named = distinct(asked).flatMap((name): Fire[] => {
    const kind = kindInName(name, FIRE_KINDS)
    return kind === undefined ? [] : [{ name, kind }]
  })
  const gear = named.length > 0 || asked?.length === 0 ? named : [FIRE]
  for (const { name, kind } of gear)
    assumptions.push({ says: `Fire: ${name}${name.includes(kind) ? '' : ` (${FIRE_SAYS})`}.`, because: BECAUSE })
  return gear
}

function assumedBaths(asked: GearAsked['baths'] | undefined, assumptions: Assumption[]): Bath[] {
  const named = distinct(asked).flatMap((name): Bath[] => {
    const known = [OIL, WATER].find((bath) => bath.name === name.toLowerCase())
    if (known !== undefined) return [known]
    const plain = name.toLowerCase()
    if (plain === 'still air' || plain === 'moving air') return []
    const kind = kindInName(name, BATH_KINDS) ?? (/\boil\b/u.test(plain) ? OIL.kind : undefined)
    return kind === undefined ? [] : [{ ...OIL, name, kind }]
  })
  const onlyAir = asked?.every((name) => name !== undefined && /^(?:still|moving) air$/iu.test(name)) ?? false
  const gear = named.length > 0 || onlyAir ? named : [OIL, WATER]
  for (const { name, kind } of gear) assumptions.push({ says: `Bath: ${name} (${kind}, ${BATH_SAYS}).`, because: BECAUSE })
  return gear
}

function assumedOvens(asked: GearAsked['ovens'] | undefined, assumptions: Assumption[]): Oven[] {
  const named = distinct(asked).flatMap((name): Oven[] => (/\boven\b/iu.test(name) ? [{ ...OVEN, name }] : []))
  const gear = named.length > 0 || asked?.length === 0 ? named : [OVEN]
  for (const { name } of gear) assumptions.push({ says: `Oven: ${name} (${OVEN_SAYS}).`, because: BECAUSE })
  return gear
}

function distinct(names: readonly (string | undefined)[] | undefined): string[] {
  const seen = new Map((names ?? []).flatMap((name) => (name === undefined ? [] : [[name.toLowerCase(), name] as const])))
  return [...seen.values()]
}
