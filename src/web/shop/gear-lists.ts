import { ATMOSPHERES, BATH_KINDS, FIRE_KINDS, HARDNESS_SCALES } from '#contract/gear-kinds.ts'
import type { ShopText } from '#web/job/job-text.ts'
import { AIR_WORDS, usualAir } from './fire-air.ts'

export type GearKey = keyof ShopText & ('fires' | 'baths' | 'ovens' | 'testers' | 'files')

/** A field of a piece of gear: typed, or one of a few. */
export interface GearField {
  readonly key: string
  readonly says: string
  readonly hint?: string
  readonly values?: readonly string[]
  /** How the values are called where the file's own words are no smith's. */
  readonly words?: Readonly<Record<string, string>>
  /** What counts while nothing is chosen. */
  readonly unsaid?: (item: Readonly<Record<string, string>>) => string
  /** May be left empty; then it is left out of the file. */
  readonly optional?: boolean
}

export interface GearList {
  readonly key: GearKey
  readonly title: string
  readonly one: string
  readonly why: string
  readonly fields: readonly GearField[]
  /** What a new one starts as. */
  readonly fresh: Readonly<Record<string, string>>
}

const NAME: GearField = { key: 'name', says: 'Called' }

/** What a shop holds and what is asked about it, in the words and fields of the job file. */
export const GEAR_LISTS: readonly GearList[] = [
  {
    key: 'fires',
    title: 'Fires',
    one: 'fire',
    why: 'How fast and how evenly a piece comes to heat, and what its skin loses there.',
    fields: [
      NAME,
      { key: 'kind', says: 'Kind', values: FIRE_KINDS },
      {
        key: 'atmosphere',
        says: 'Air in it',
        values: ATMOSPHERES,
        words: AIR_WORDS,
        unsaid: (fire) => {
          const usual = usualAir(fire)
          return usual === undefined ? 'as its kind burns' : `usual: ${AIR_WORDS[usual]}`
        },
        optional: true,
      },
    ],
    fresh: { name: 'coal fire', kind: 'coal' },
  },
  {
    key: 'baths',
    title: 'Baths',
    one: 'bath',
    why: 'How hard a bath draws, how much it warms, how deep a piece can go. Still and moving air need no entry.',
    fields: [
      NAME,
      { key: 'kind', says: 'Kind', values: BATH_KINDS.filter((kind) => !kind.endsWith('air')) },
      { key: 'volume', says: 'Holds', hint: '12 L or 5 gal', optional: true },
      { key: 'depth', says: 'Depth of the liquid', hint: '250 mm or 10 in', optional: true },
      { key: 'temperature', says: 'Warmth before the quench', hint: '50 °C or 120 °F', optional: true },
      { key: 'flash', says: 'Flash point from its sheet', hint: 'oils only', optional: true },
    ],
    fresh: { name: 'oil bucket', kind: 'medium oil', volume: '12 L', depth: '300 mm', temperature: '40 °C' },
  },
  {
    key: 'ovens',
    title: 'Ovens',
    one: 'oven',
    why: 'What temper can be reached and held. A second thermometer tells how it reads and swings.',
    fields: [
      NAME,
      { key: 'max', says: 'Goes up to', hint: '230 °C or 450 °F' },
      { key: 'reads', says: 'Its dial reads', hint: '8 °C low, 15 °F high, true', optional: true },
      { key: 'swing', says: 'Swings either way by', hint: '15 °C', optional: true },
    ],
    fresh: { name: 'small oven', max: '230 °C' },
  },
  {
    key: 'testers',
    title: 'Hardness testers',
    one: 'tester',
    why: 'What proves a piece. A block of known hardness tells how far the tester is off.',
    fields: [
      NAME,
      { key: 'scale', says: 'Scale', values: HARDNESS_SCALES },
      { key: 'block', says: 'On a block of', hint: '60 HRC', optional: true },
      { key: 'shows', says: 'it shows', hint: '59 HRC', optional: true },
    ],
    fresh: { name: 'bench tester', scale: 'HRC' },
  },
  {
    key: 'files',
    title: 'Files',
    one: 'file',
    why: 'Files of known hardness: the hardest that skates and the softest that bites bracket a piece.',
    fields: [NAME, { key: 'hardness', says: 'Hardness', hint: '55 HRC' }],
    fresh: { name: '55 file', hardness: '55 HRC' },
  },
]

/** The gear of one list, as text fields. */
export function gearOf(shop: ShopText, key: GearKey): readonly Readonly<Record<string, string>>[] {
  return (shop[key] ?? []) as unknown as readonly Readonly<Record<string, string>>[]
}

/** A shop with one field of one piece of gear typed anew; an optional field that is emptied is left out. */
export function gearTyped(shop: ShopText, { key, fields }: GearList, index: number, field: string, typed: string): ShopText {
  const optional = fields.find((each) => each.key === field)?.optional === true
  const items = gearOf(shop, key).map((item, i) => {
    if (i !== index) return item
    const { [field]: _, ...rest } = item
    if (typed.trim() === '' && optional) return rest
    // Fields keep the order of the form, so that a saved file reads the same way every time.
    const next = { ...rest, [field]: typed.trim() }
    return Object.fromEntries(fields.flatMap((each) => (next[each.key] === undefined ? [] : [[each.key, next[each.key]]])))
  })
  return { ...shop, [key]: items }
}

/** A shop with one more of a kind, under a name that is not taken. */
export function gearAdded(shop: ShopText, { key, fresh }: GearList): ShopText {
  const taken = new Set(GEAR_LISTS.flatMap((list) => gearOf(shop, list.key).map(({ name }) => name?.trim().toLowerCase())))
  let name = fresh.name ?? key
  for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${fresh.name} ${n}`
  return { ...shop, [key]: [...gearOf(shop, key), { ...fresh, name }] }
}

export function gearPutAway(shop: ShopText, key: GearKey, index: number): ShopText {
  return { ...shop, [key]: gearOf(shop, key).filter((_, i) => i !== index) }
}
