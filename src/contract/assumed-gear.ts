import { BATH_KINDS, type Bath, FIRE_KINDS, type Fire, type Oven, type Shop } from '#engine/surface-heat/gear.ts'
import type { Assumption } from './assumption.ts'
import { isAirName, kindInName } from './gear-names.ts'
import { ASSUMED_BATH_K, ASSUMED_SWING_K, type ShopTaken } from './parse-shop.ts'

const FIRE: Fire = { name: 'coal fire', kind: 'coal' }
const OIL: Bath = { name: 'oil bucket', kind: 'medium oil', volumeM3: 0.012, depthM: 0.25, temperatureK: ASSUMED_BATH_K }
const WATER: Bath = { name: 'water bucket', kind: 'water', volumeM3: 0.012, depthM: 0.25, temperatureK: ASSUMED_BATH_K }
const OVEN: Oven = { name: 'small oven', maxK: 503.15, readsLowK: 0, swingK: ASSUMED_SWING_K }

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
 * The shop with each list that was left out filled: with what the process names, where the name tells what it is, and with the usual
 * small shop where nothing is named. A plan (`usual`) may choose from the usual shop whatever the process names.
 */
export function furnished(taken: ShopTaken, asked: GearAsked, usual: boolean, assumptions: Assumption[]): Shop {
  const { faulty } = taken
  const fires = taken.fires ?? (faulty.has('fires') ? [] : filled(asked.fires, [FIRE], usual, fireNamed))
  const baths = taken.baths ?? (faulty.has('baths') ? [] : filled(asked.baths, [OIL, WATER], usual, bathNamed))
  const ovens = taken.ovens ?? (faulty.has('ovens') ? [] : filled(asked.ovens, [OVEN], usual, ovenNamed))
  const assume = (says: string): void => {
    assumptions.push({ says, because: BECAUSE })
  }
  if (taken.fires === undefined)
    for (const { name, kind } of fires) assume(`Fire: ${name}${name.toLowerCase().includes(kind) ? '' : ` (${kind})`}.`)
  if (taken.baths === undefined) for (const { name, kind } of baths) assume(`Bath: ${name} (${kind}, ${BATH_SAYS}).`)
  if (taken.ovens === undefined) for (const { name } of ovens) assume(`Oven: ${name} (${OVEN_SAYS}).`)
  return { fires, baths, ovens }
}

function filled<Gear extends { readonly name: string }>(
  asked: readonly (string | undefined)[],
  usualGear: readonly Gear[],
  usual: boolean,
  named: (name: string) => Gear | undefined,
): Gear[] {
  const names = asked.filter((name) => name !== undefined && !isAirName(name))
  const gear = new Map<string, Gear>()
  for (const name of names) {
    const found = usualGear.find((each) => each.name === name?.toLowerCase()) ?? named(name ?? '')
    if (found !== undefined) gear.set(found.name.toLowerCase(), found)
  }
  const lacking = asked.some((name) => name === undefined) || names.length > 0
  if (usual || (gear.size === 0 && lacking)) for (const each of usualGear) gear.set(each.name, gear.get(each.name) ?? each)
  return [...gear.values()]
}

function fireNamed(name: string): Fire | undefined {
  const kind = kindInName(name, FIRE_KINDS)
  return kind === undefined ? undefined : { name, kind }
}

function bathNamed(name: string): Bath | undefined {
  const kind = kindInName(name, BATH_KINDS) ?? (/\boil\b/iu.test(name) ? OIL.kind : undefined)
  return kind === undefined ? undefined : { ...OIL, name, kind }
}

function ovenNamed(name: string): Oven | undefined {
  return /\boven\b/iu.test(name) ? { ...OVEN, name } : undefined
}
