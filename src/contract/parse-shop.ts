import * as z from 'zod/mini'
import { USUAL_ATMOSPHERE } from '#engine/surface-heat/atmosphere.ts'
import { TYPICAL_VOLUME_M3 } from '#engine/surface-heat/bath.ts'
import { BATH_KINDS, type Bath, FIRE_KINDS, type Fire, type Oven } from '#engine/surface-heat/gear.ts'
import { shown } from '#units/reading.ts'
import type { Assumption } from './assumption.ts'
import { kindInName } from './gear-names.ts'
import type { Problem } from './problems.ts'
import { isFields, taken } from './schema-problems.ts'
import {
  bathSchema,
  fireSchema,
  ovenSchema,
  shopSchema,
  type TypedBath,
  type TypedFile,
  type TypedFire,
  type TypedOven,
  type TypedTester,
} from './shop-schema.ts'

/** The shop as it was written: a list that was left out is absent, one that was written empty is empty. */
export interface ShopTaken {
  readonly fires?: readonly Fire[]
  readonly baths?: readonly Bath[]
  readonly ovens?: readonly Oven[]
  readonly typed: {
    readonly fires: readonly TypedFire[]
    readonly baths: readonly TypedBath[]
    readonly ovens: readonly TypedOven[]
    readonly testers: readonly TypedTester[]
    readonly files: readonly TypedFile[]
  }
  /** What was filled in for a piece of gear, by its name: said when the gear is used. */
  readonly filledIn: ReadonlyMap<string, readonly Assumption[]>
  /** Gear that is listed and has a fault, by its name: a step that asks for it is not at fault too. */
  readonly misread: ReadonlySet<string>
  /** Lists that could not be read, or hold something without a name: what is not found there may only be misread. */
  readonly faulty: ReadonlySet<'fires' | 'baths' | 'ovens'>
}

/** The shop is taken at 20 degC, and so is a bath of which nobody said how warm it is. */
export const ASSUMED_BATH_K = 293.15
/** Either way; usual for small ovens, from memory. */
export const ASSUMED_SWING_K = 10

const MOST_GEAR = 50
const AIR = ['still air', 'moving air']

export function takeShop(input: unknown, field: string, problems: Problem[]): ShopTaken {
  const filledIn = new Map<string, Assumption[]>()
  const misread = new Set<string>()
  const faulty = new Set<'fires' | 'baths' | 'ovens'>()
  const typed = {
    fires: [] as TypedFire[],
    baths: [] as TypedBath[],
    ovens: [] as TypedOven[],
    testers: [] as TypedTester[],
    files: [] as TypedFile[],
  }
  if (input === undefined || input === null) return { typed, filledIn, misread, faulty }
  if (!isFields(input)) {
    problems.push({ field, says: `${shown(input)}: a group of fields belongs here: fires, baths, ovens, testers and files` })
    return { typed, filledIn, misread, faulty: new Set(['fires', 'baths', 'ovens'] as const) }
  }
  const others = Object.fromEntries(Object.entries(input).filter(([key]) => !Object.hasOwn(shopSchema.shape, key)))
  taken(shopSchema, others, field, problems)
  const note: Note = (name, assumption) => {
    filledIn.set(name, [...(filledIn.get(name) ?? []), assumption])
  }

  /** The gear of one list; what has a fault is left out and its name kept. */
  function list<Schema extends z.ZodMiniType, Gear>(
    key: 'fires' | 'baths' | 'ovens',
    schema: Schema,
    kept: z.output<Schema>[],
    gearOf: (typed: z.output<Schema>, field: string, problems: Problem[], note: Note) => Gear | undefined,
  ): Gear[] | undefined {
    const items = (input as Record<string, unknown>)[key]
    if (items === undefined || items === null) return undefined
    if (!Array.isArray(items) || items.length > MOST_GEAR) {
      problems.push({ field: `${field}.${key}`, says: `${shown(items)}: a list of up to ${MOST_GEAR} belongs here` })
      faulty.add(key)
      return undefined
    }
    return items.flatMap((item: unknown, i) => {
      const at = `${field}.${key}[${i}]`
      const one = taken(schema, item, at, problems)
      const gear = one === undefined ? undefined : gearOf(one, at, problems, note)
      if (one !== undefined) kept.push(one)
      if (gear !== undefined) return [gear]
      if (isFields(item) && typeof item.name === 'string') misread.add(item.name.trim().toLowerCase())
      else faulty.add(key)
      return []
    })
  }
  const fires = list('fires', fireSchema, typed.fires, fireOf)
  const baths = list('baths', bathSchema, typed.baths, bathOf)
  const ovens = list('ovens', ovenSchema, typed.ovens, ovenOf)
  const proving = taken(z.pick(shopSchema, { testers: true, files: true }), pick(input, ['testers', 'files']), field, problems)
  typed.testers.push(...(proving?.testers ?? []))
  typed.files.push(...(proving?.files ?? []))
  uniqueNames(field, input, problems)
  return {
    ...(fires === undefined ? {} : { fires }),
    ...(baths === undefined ? {} : { baths }),
    ...(ovens === undefined ? {} : { ovens }),
    typed,
    filledIn,
    misread,
    faulty,
  }
}

/** Of what was written, these fields; one that was left empty counts as left out. */
function pick(input: Record<string, unknown>, keys: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(keys.flatMap((key) => (input[key] === undefined || input[key] === null ? [] : [[key, input[key]]])))
}

type Note = (name: string, assumption: Assumption) => void

function fireOf({ name, kind, atmosphere }: TypedFire, field: string, problems: Problem[], note: Note): Fire | undefined {
  const found = kind ?? kindInName(name, FIRE_KINDS)
  if (found === undefined) {
    problems.push({
      field: `${field}.kind`,
      says: `missing, and the name "${name}" does not tell it; write ${FIRE_KINDS.join(', ')}`,
    })
    return undefined
  }
  if (kind === undefined)
    note(name, { says: `"${name}" is a ${found} fire.`, because: 'its name says so; nobody wrote its kind' })
  if (atmosphere === undefined)
    note(name, {
      says: `"${name}" ${AIR_WORDS[USUAL_ATMOSPHERE[found]]}.`,
      because: 'nobody said how it burns; it decides how much carbon and scale the skin loses',
    })
  return { name, kind: found, ...(atmosphere === undefined ? {} : { atmosphere }) }
}

const AIR_WORDS = {
  oxidising: 'holds open air',
  neutral: 'burns neutral',
  rich: 'burns rich',
  packed: 'is closed, with charcoal in it',
} as const

function bathOf(typed: TypedBath, field: string, problems: Problem[], note: Note): Bath | undefined {
  const { name, volume, depth, temperature, flash } = typed
  const kind = typed.kind ?? kindInName(name, BATH_KINDS)
  const before = problems.length
  if (kind === undefined) {
    problems.push({
      field: `${field}.kind`,
      says: `missing, and the name "${name}" does not tell it; write ${BATH_KINDS.join(', ')}`,
    })
    return undefined
  }
  if (AIR.includes(name.toLowerCase()) && name.toLowerCase() !== kind)
    problems.push({ field: `${field}.name`, says: `"${name}" is the air itself; give this ${kind} another name` })
  const air = AIR.includes(kind)
  if (air && (volume !== undefined || depth !== undefined || flash !== undefined))
    problems.push({ field, says: `${kind} has no volume, depth or flash point; leave them out` })
  if (flash !== undefined && !kind.endsWith('oil'))
    problems.push({ field: `${field}.flash`, says: `${kind} does not burn; leave it out` })
  const [low, high] = air ? [-40, 60] : kind.endsWith('oil') ? [-20, 250] : kind === 'brine' ? [-15, 108] : [0, 100]
  if (
    temperature !== undefined &&
    !(temperature.temperatureK >= low + 273.15 - 1e-6 && temperature.temperatureK <= high + 273.15 + 1e-6)
  )
    problems.push({
      field: `${field}.temperature`,
      says: `${shown(temperature.typed)}: ${kind} is a bath between ${low} and ${high} °C`,
    })
  if (volume !== undefined && volume.volumeM3 > 20)
    problems.push({ field: `${field}.volume`, says: `${shown(volume.typed)}: more than 20 m3; was L or gal meant?` })
  if (problems.length > before) return undefined
  if (typed.kind === undefined)
    note(name, { says: `"${name}" holds ${kind}.`, because: 'its name says so; nobody wrote its kind' })
  if (temperature === undefined)
    note(name, { says: `"${name}" is at 20 °C.`, because: 'nobody said how warm it is; the shop is taken at 20 °C' })
  if (volume === undefined && !air)
    note(name, {
      says: `"${name}" holds ${TYPICAL_VOLUME_M3 * 1000} L.`,
      because: 'nobody said how much it holds; a small bath warms and slows',
    })
  return {
    name,
    kind,
    temperatureK: temperature?.temperatureK ?? ASSUMED_BATH_K,
    ...(volume === undefined ? {} : { volumeM3: volume.volumeM3 }),
    ...(depth === undefined ? {} : { depthM: depth.lengthM }),
    ...(flash === undefined ? {} : { flashK: flash.temperatureK }),
  }
}

function ovenOf({ name, max, reads, swing }: TypedOven, field: string, problems: Problem[], note: Note): Oven | undefined {
  const before = problems.length
  if (!(max.temperatureK >= 323 && max.temperatureK <= 1623))
    problems.push({ field: `${field}.max`, says: `${shown(max.typed)}: an oven reaches 50 to 1350 °C` })
  if (reads !== undefined && Math.abs(reads.differenceK) > 100)
    problems.push({
      field: `${field}.reads`,
      says: `${shown(reads.typed)}: more than 100 °C off is a broken instrument; mend it first`,
    })
  if (swing !== undefined && swing.differenceK > 100)
    problems.push({ field: `${field}.swing`, says: `${shown(swing.typed)}: more than 100 °C either way tempers nothing evenly` })
  if (problems.length > before) return undefined
  if (reads === undefined)
    note(name, { says: `"${name}" reads true.`, because: 'nobody said how far its dial is off; hang a second thermometer in it' })
  if (swing === undefined)
    note(name, { says: `"${name}" swings 10 °C either way.`, because: 'nobody measured it; usual for small ovens, from memory' })
  return { name, maxK: max.temperatureK, readsLowK: reads?.differenceK ?? 0, swingK: swing?.differenceK ?? ASSUMED_SWING_K }
}

/** Heats look among fires and ovens, quenches among baths: a name may stand once in all. */
function uniqueNames(field: string, input: Record<string, unknown>, problems: Problem[]): void {
  const seen = new Map<string, string>()
  for (const key of ['fires', 'baths', 'ovens'] as const) {
    const items = input[key]
    if (!Array.isArray(items)) continue
    items.slice(0, MOST_GEAR).forEach((item: unknown, i) => {
      if (!isFields(item) || typeof item.name !== 'string') return
      const at = `${field}.${key}[${i}]`
      const earlier = seen.get(item.name.trim().toLowerCase())
      if (earlier === undefined) seen.set(item.name.trim().toLowerCase(), at)
      else
        problems.push({
          field: `${at}.name`,
          says: `${shown(item.name)} is the name of ${earlier} already; give each piece of gear its own`,
        })
    })
  }
}
