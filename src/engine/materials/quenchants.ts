/** What a published treatment tells to quench in; `fast oil` only where the source asks for a quick one. */
export type QuenchKind = 'brine' | 'water' | 'fast oil' | 'oil' | 'salt' | 'air'

export interface QuenchChoice {
  readonly kind: QuenchKind
  /** Only for sections thicker than this [m]. */
  readonly aboveM?: number
  /** Only for sections thinner than this [m]. */
  readonly belowM?: number
  /** Hardening heat that goes with this bath, where the source splits it [K]. */
  readonly austeniteFromK?: number
  readonly austeniteToK?: number
}

export interface Quenching {
  /** In the source's order of preference. */
  readonly choices: readonly QuenchChoice[]
  /** Baths that the source warns off. */
  readonly never: readonly QuenchKind[]
}

/** "Thin" and "thick" where a sheet gives no figure: about 6 mm and 10 mm on the sheets that do. */
const THIN_M = 0.006
const THICK_M = 0.01
const ZERO_C_K = 273.15

const KINDS: readonly (readonly [RegExp, QuenchKind])[] = [
  [/^brine$/, 'brine'],
  [/^water$/, 'water'],
  [/^fast oil$/, 'fast oil'],
  [/oil$/, 'oil'],
  [/^(air|gas)$/, 'air'],
  [/^(salt|hot bath)$/, 'salt'],
]

interface Found {
  readonly kind: QuenchKind
  readonly head: string
  readonly tail: string
}

/** Words of a data sheet ("air or gas; oil above about 75 mm") as baths in order of preference; nothing when no bath is named. */
export function quenchingFrom(text: string): Quenching {
  const found = mentionsIn(text)
  const never = found.filter(({ tail }) => /\bcracks\b/.test(tail)).map(({ kind }) => kind)
  const named = found.filter(({ tail }) => !/\bcracks\b/.test(tail))
  const limits = named.map(({ tail }) => limitOf(tail))
  // "water or brine with care over 10 mm" speaks of both.
  for (let i = named.length - 2; i >= 0; i--)
    if (/^\s*or\s*$/.test(named[i]!.tail) && limits[i + 1]!.aboveM !== undefined) limits[i] = limits[i + 1]!
  const stated = limits.find(({ aboveM, belowM }) => (aboveM ?? belowM ?? 0) > 0)
  const choices = named.map(({ kind, head, tail }, i): QuenchChoice => {
    const { aboveM, belowM } = limits[i]!
    return {
      kind,
      ...(aboveM === undefined ? {} : { aboveM: aboveM > 0 ? aboveM : (stated?.belowM ?? THICK_M) }),
      ...(belowM === undefined ? {} : { belowM: belowM > 0 ? belowM : (stated?.aboveM ?? THIN_M) }),
      ...heatOf(head, tail),
    }
  })
  const once = choices.filter((choice, i) => choices.findIndex(({ kind }) => kind === choice.kind) === i)
  return { choices: once, never }
}

/** Every bath that is named, with the words before and after it up to its neighbours. */
function mentionsIn(text: string): Found[] {
  const matches = [...text.matchAll(/\b(brine|water|fast oil|oil|air|gas|salt|hot bath)\b/g)]
  return matches.flatMap((match, i) => {
    const kind = KINDS.find(([pattern]) => pattern.test(match[0]))?.[1]
    const end = match.index + match[0].length
    const next = matches[i + 1]?.index ?? text.length
    const before = matches[i - 1]
    const head = text.slice(before === undefined ? 0 : before.index + before[0].length, match.index)
    return kind === undefined ? [] : [{ kind, head, tail: text.slice(end, next) }]
  })
}

/** Section limit in the words after a bath [m]; 0 where they say "thin" or "above" without a figure. */
function limitOf(tail: string): { readonly aboveM?: number; readonly belowM?: number } {
  const figure = /(?:under|below|over|above|to)\s+(?:about\s+)?(\d+)\s*mm/.exec(tail)
  const metres = figure === null ? 0 : Number(figure[1]) / 1000
  if (/\b(over|above|thick)\b/.test(tail) && !/\bto \d+ mm/.test(tail)) return { aboveM: metres }
  if (/\b(under|thin)\b/.test(tail) || /\bto \d+ mm/.test(tail)) return { belowM: metres }
  return {}
}

/** "water (790-845)", "oil (860)" or "840-870 oil" [C] as the hardening heat of that bath. */
function heatOf(head: string, tail: string): { austeniteFromK?: number; austeniteToK?: number } {
  const match = /^\s*\((\d{3,4})(?:-(\d{3,4}))?\)/.exec(tail) ?? /(\d{3,4})-(\d{3,4})\s*$/.exec(head)
  if (match === null) return {}
  return { austeniteFromK: Number(match[1]) + ZERO_C_K, austeniteToK: Number(match[2] ?? match[1]) + ZERO_C_K }
}
