import { AGITATIONS, ATMOSPHERES, COOLING_PLACES } from '#contract/gear-kinds.ts'
import { TEMPER_COLOURS } from '#contract/temper-colours.ts'
import type { ShopText, StepText } from '#web/job/job-text.ts'
import { AIR_WORDS, burnsAs } from '#web/shop/fire-air.ts'
import { wordsOf } from './process-edits.ts'
import { steppedDuration, steppedLength, steppedTemperature } from './stepping.ts'

/** Every step that a treatment is made of, in the order in which a treatment usually has them. */
export const STEP_KINDS = [
  'stress-relieve',
  'anneal',
  'normalise',
  'warm-bath',
  'heat',
  'carry',
  'quench',
  'run-colours',
  'temper',
] as const
export type StepKind = (typeof STEP_KINDS)[number]

export function kindOf(step: StepText | undefined): StepKind | undefined {
  return STEP_KINDS.find((each) => each === step?.do)
}

export const STEP_WORDS: Readonly<Record<StepKind, string>> = {
  'stress-relieve': 'Relieve stress',
  anneal: 'Anneal',
  normalise: 'Normalise',
  'warm-bath': 'Warm the bath',
  heat: 'Heat',
  carry: 'Carry',
  quench: 'Quench',
  'run-colours': 'Run the colours',
  temper: 'Temper',
}

/** `Heat`, and for a step of a file that no smith of ours knows its own word. */
export function stepWord(step: StepText | undefined): string {
  const kind = kindOf(step)
  return kind === undefined ? (step?.do ?? 'Step') : STEP_WORDS[kind]
}

/** Lists of the shop in which a step looks for its gear, the likeliest first; `air` for the air, which needs no entry. */
export type GearSort = 'fires' | 'ovens' | 'baths' | 'air'

/** A field of a step: what is written there and how it is offered. */
export type StepField =
  | { readonly path: string; readonly says: string; readonly as: 'gear'; readonly sorts: readonly GearSort[] }
  | {
      readonly path: string
      readonly says: string
      readonly as: 'typed'
      readonly hint?: string
      readonly stepped?: (typed: string, direction: 1 | -1) => string | undefined
      /** Words that stand beside typed figures. */
      readonly list?: readonly string[]
    }
  | {
      readonly path: string
      readonly says: string
      readonly as: 'one-of'
      readonly values: readonly (readonly [value: string | number | boolean, says: string])[]
      /** What counts when nothing is written. */
      readonly usual: string | number | boolean
      /** Where that hangs on the gear: what it is now, as a choice of its own that writes nothing. */
      readonly unsaid?: (step: StepText, shop: ShopText) => string
    }
  /** Only a length of the piece, or all of it. */
  | { readonly path: 'part'; readonly says: string; readonly as: 'part' }

/** Names that need no entry in the shop. */
export const AIRS = ['still air', 'moving air'] as const

const orNone = { zero: true }
const heatIn = (sorts: readonly GearSort[]): StepField => ({ path: 'in', says: 'In', as: 'gear', sorts })
const temperature = (path: string, says: string): StepField => ({ path, says, as: 'typed', stepped: steppedTemperature })
const hold: StepField = {
  path: 'hold',
  says: 'Hold',
  as: 'typed',
  stepped: (typed, direction) => steppedDuration(typed, direction, orNone),
}
const lasts: StepField = {
  path: 'for',
  says: 'For',
  as: 'typed',
  stepped: (typed, direction) => steppedDuration(typed, direction),
}
const times: StepField = {
  path: 'times',
  says: 'How often',
  as: 'one-of',
  values: [
    [1, 'once'],
    [2, 'twice'],
    [3, '3 times'],
    [4, '4 times'],
  ],
  usual: 1,
}
const depth: StepField = {
  path: 'depth',
  says: 'How deep',
  as: 'typed',
  hint: 'whole, or a length from the working end',
  stepped: (typed, direction) => steppedLength(typed, direction),
  list: ['whole'],
}
const part: StepField = { path: 'part', says: 'How much of it', as: 'part' }
const FIRES: readonly GearSort[] = ['fires', 'ovens']
const PLACE_WORDS: { readonly [Place in (typeof COOLING_PLACES)[number]]: string } = {
  'still air': 'still air',
  furnace: 'the fire, shut in',
  ashes: 'dry ashes',
  vermiculite: 'vermiculite',
  lime: 'dry lime',
}
const air: StepField = {
  path: 'atmosphere',
  says: 'Air about it',
  as: 'one-of',
  values: ATMOSPHERES.map((each) => [each, AIR_WORDS[each]] as const),
  usual: '',
  unsaid: (step, shop) => {
    const burns = burnsAs(shop, wordsOf(step, 'in'))
    return burns === undefined ? 'as the fire burns' : `as the fire: ${AIR_WORDS[burns]}`
  },
}

const FIELDS: Readonly<Record<StepKind, readonly StepField[]>> = {
  'stress-relieve': [heatIn(FIRES), temperature('to', 'To'), hold, air],
  anneal: [
    heatIn(FIRES),
    temperature('to', 'To'),
    hold,
    {
      path: 'cool',
      says: 'Cool',
      as: 'typed',
      hint: 'as 15 °C/h, ashes, vermiculite; empty: shut in',
      list: ['15 °C/h', ...COOLING_PLACES],
    },
    air,
  ],
  normalise: [
    heatIn(FIRES),
    temperature('to', 'To'),
    hold,
    times,
    {
      path: 'cool',
      says: 'Cool in',
      as: 'one-of',
      values: COOLING_PLACES.map((each) => [each, PLACE_WORDS[each]] as const),
      usual: 'still air',
    },
    air,
  ],
  'warm-bath': [
    heatIn(['baths']),
    temperature('with.at', 'With a bar at'),
    { path: 'with.across', says: 'across', as: 'typed', stepped: (typed, direction) => steppedLength(typed, direction) },
    { path: 'with.length', says: 'long', as: 'typed', stepped: (typed, direction) => steppedLength(typed, direction) },
  ],
  heat: [
    heatIn(FIRES),
    temperature('to', 'To'),
    hold,
    {
      path: 'even',
      says: 'Heat',
      as: 'one-of',
      values: [
        [true, 'even, turned'],
        [false, 'as it comes'],
      ],
      usual: true,
    },
    part,
    air,
  ],
  carry: [lasts],
  quench: [
    heatIn(['baths', 'air']),
    depth,
    lasts,
    {
      path: 'agitation',
      says: 'Moved',
      as: 'one-of',
      values: AGITATIONS.map((each) => [each, each === 'still' ? 'held still' : each] as const),
      usual: 'moderate',
    },
  ],
  'run-colours': [
    {
      path: 'stop',
      says: 'Stop at',
      as: 'typed',
      hint: 'a temperature or a colour, as dark straw',
      stepped: steppedTemperature,
      list: TEMPER_COLOURS.map(({ name }) => name),
    },
    heatIn(['baths', 'air']),
    depth,
  ],
  temper: [heatIn(['ovens', 'fires']), temperature('at', 'At'), hold, times, part],
}

/** What can be typed and chosen about a step, in order. In air nothing is dipped or moved, unless the document says so. */
export function fieldsOf(step: StepText): readonly StepField[] {
  const kind = kindOf(step)
  if (kind === undefined) return []
  const inAir = AIRS.some((air) => air === String(step.in).toLowerCase())
  if (!inAir) return FIELDS[kind]
  return FIELDS[kind].filter(
    ({ path }) => !['depth', 'agitation'].includes(path) || !['', 'whole', 'still'].includes(wordsOf(step, path)),
  )
}
