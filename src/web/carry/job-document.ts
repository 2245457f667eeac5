import type { JobText, ProbeText, SectionText, ShapeText, ShopText, SteelText, StepText, ZoneText } from '#web/job/job-text.ts'

/** What came in by a file or a link: a job, sound or not, or something else. */
export type Held = { readonly kind: 'job'; readonly job: JobText } | { readonly kind: 'foreign'; readonly why: string }

type Fields = { readonly [field: string]: unknown }

const PIECE_PARTS = ['piece', 'steel', 'profile', 'zones', 'process'] as const
const GEAR = ['fires', 'baths', 'ovens', 'testers', 'files'] as const
/** More of anything than a job has. */
const MOST = 500

/**
 * A document from outside as the page can hold it. What has the form of a job is taken as typed, at fault or not, so that its faults can
 * be mended here; what has no place in a job cannot be shown or mended here, and is left out. The contract says what was at fault.
 */
export function heldJob(document: unknown): Held {
  if (!isFields(document)) return { kind: 'foreign', why: 'a job is a group of fields, as piece, steel, profile and process' }
  const job = tidy({
    piece: typed(document.piece),
    steel: steelOf(document.steel),
    grainSize: numberOf(document.grainSize),
    struck: yesOrNo(document.struck),
    profile: listOf(document.profile, sectionOf),
    zones: listOf(document.zones, zoneOf),
    probes: listOf(document.probes, probeOf),
    shop: shopOf(document.shop),
    process: listOf(document.process, stepOf),
  }) as JobText
  if (PIECE_PARTS.some((part) => job[part] !== undefined)) return { kind: 'job', job }
  return {
    kind: 'foreign',
    why: GEAR.some((list) => Array.isArray(document[list]))
      ? 'a shop stands in it and no piece; a shop is set up at the place Shop'
      : 'none of piece, steel, profile, zones and process stands in it',
  }
}

function sectionOf(held: Fields): SectionText {
  return {
    ...texts(held, ['across', 'from', 'to', 'fillet']),
    shape: (typed(held.shape) ?? 'round') as ShapeText,
    length: typed(held.length) ?? '',
    ...tidy({ dish: hollowOf(held.dish), bore: hollowOf(held.bore) }),
    ...(isFields(held.tip) ? { tip: { radius: typed(held.tip.radius) ?? '' } } : {}),
  }
}

function hollowOf(held: unknown): SectionText['dish'] {
  return isFields(held) ? { across: typed(held.across) ?? '', depth: typed(held.depth) ?? '' } : undefined
}

function zoneOf(held: Fields): ZoneText {
  return {
    ...texts(held, ['name']),
    from: typed(held.from) ?? '',
    to: typed(held.to) ?? '',
    aim: typed(held.aim) ?? '',
  }
}

function probeOf(held: Fields): ProbeText {
  return { ...texts(held, ['name', 'r']), x: typed(held.x) ?? '' }
}

function steelOf(held: unknown): SteelText | undefined {
  // Its name by itself is not how a file says it, but there is no doubt what is meant.
  if (!isFields(held)) return typed(held) === undefined ? undefined : { grade: typed(held) as string }
  const analysis = isFields(held.analysis)
    ? Object.fromEntries(Object.entries(held.analysis).flatMap(([element, share]) => (isNumber(share) ? [[element, share]] : [])))
    : undefined
  return tidy({
    grade: typed(held.grade),
    analysis,
    unknown: isFields(held.unknown) ? plain(held.unknown) : undefined,
    grainSize: numberOf(held.grainSize),
  })
}

const GEAR_FIELDS = [
  'kind',
  'volume',
  'depth',
  'temperature',
  'flash',
  'max',
  'reads',
  'swing',
  'scale',
  'block',
  'shows',
  'hardness',
]

function shopOf(held: unknown): ShopText | undefined {
  // A file's name: the page cannot look into folders, and the gear of this device stands in.
  if (!isFields(held)) return undefined
  const lists = GEAR.map((list) => [
    list,
    listOf(held[list], (each) => ({ ...texts(each, GEAR_FIELDS), name: typed(each.name) ?? '' })),
  ])
  return tidy(Object.fromEntries(lists))
}

function stepOf(held: Fields): StepText {
  const fields = Object.entries(held).filter(([, value]) => isPlainValue(value) || isFields(value))
  return {
    ...Object.fromEntries(fields.map(([key, value]) => [key, isFields(value) ? plain(value) : value])),
    do: typed(held.do) ?? '',
  }
}

/** The list as it was, each item a group of fields; an item that is none keeps its place, so that faults stay where they are said to be. */
function listOf<Item>(held: unknown, itemOf: (fields: Fields) => Item): readonly Item[] | undefined {
  return Array.isArray(held) ? held.slice(0, MOST).map((each) => itemOf(isFields(each) ? each : {})) : undefined
}

function texts<Key extends string>(held: Fields, keys: readonly Key[]): { readonly [key in Key]?: string } {
  return tidy(Object.fromEntries(keys.map((key) => [key, typed(held[key])]))) as { readonly [key in Key]?: string }
}

/** Without what is not there. */
function tidy<Value extends object>(value: Value): { [Key in keyof Value]?: Exclude<Value[Key], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as {
    [Key in keyof Value]?: Exclude<Value[Key], undefined>
  }
}

/** As typed: a file may hold a name of digits as a number. */
function typed(held: unknown): string | undefined {
  return isPlainValue(held) ? String(held) : undefined
}

function numberOf(held: unknown): number | undefined {
  return isNumber(held) ? held : undefined
}

function yesOrNo(held: unknown): boolean | undefined {
  return held === true || held === 'yes' ? true : held === false || held === 'no' ? false : undefined
}

/** A group as it came, down to where no job goes. */
function plain(held: Fields, depth = 4): Fields {
  const kept = (value: unknown): unknown =>
    isPlainValue(value)
      ? value
      : depth === 0
        ? undefined
        : Array.isArray(value)
          ? value.slice(0, MOST).map((each) => (isFields(each) ? plain(each, depth - 1) : isPlainValue(each) ? each : ''))
          : isFields(value)
            ? plain(value, depth - 1)
            : undefined
  return tidy(Object.fromEntries(Object.entries(held).map(([key, value]) => [key, kept(value)])))
}

function isNumber(held: unknown): held is number {
  return typeof held === 'number' && Number.isFinite(held)
}

function isPlainValue(held: unknown): held is string | number | boolean {
  return typeof held === 'string' || typeof held === 'boolean' || isNumber(held)
}

function isFields(held: unknown): held is Fields {
  return typeof held === 'object' && held !== null && !Array.isArray(held)
}
