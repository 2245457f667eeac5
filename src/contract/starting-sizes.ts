import { lengthText, parseLength, type System } from '#units/length.ts'
import { InputProblems, type Problem } from './problems.ts'
import { lengthSetting } from './remedy-edits-settings.ts'

/** A size of a starting piece that the smith can change, with what it is by default and how far it may go, as typed. */
export interface StartingSize {
  readonly key: string
  readonly label: string
  readonly default: string
  readonly least: string
  readonly most: string
}

/** One size of a kind of tool: in millimetres, and in inches where the round figure is another one. */
export interface SizeOf {
  readonly label: string
  readonly mm: number
  readonly inch: number
  readonly leastMm: number
  readonly mostMm: number
}

export type SizesOf = Readonly<Record<string, SizeOf>>

export function startingSizes(sizes: SizesOf, units: System): StartingSize[] {
  return Object.entries(sizes).map(([key, { label, mm, inch, leastMm, mostMm }]) => ({
    key,
    label,
    default: units === 'metric' ? `${mm} mm` : lengthText(inch * 0.0254, 'inch'),
    least: lengthSetting(leastMm / 1000, units, 'up').text,
    most: lengthSetting(mostMm / 1000, units, 'down').text,
  }))
}

/** The sizes of one piece as a shape asks for them. */
export interface Sizes<Key extends string> {
  /** In metres. */
  readonly m: { readonly [Each in Key]: number }
  /** As typed. */
  readonly typed: { readonly [Each in Key]: string }
  /** A length that follows from others, on a mark of the rule: for typing, and in metres. */
  text(metres: number): string
  mark(metres: number): number
  /** A length as it is. */
  exact(metres: number): string
  /** Says that a size does not go with the others, and what would. */
  unless(holds: boolean, key: Key, says: string): void
}

/** Reads sizes as typed; what is left out is the default. Throws `InputProblems` that name the size (`sizes.bar`) and the mend. */
export function readSizes<Key extends string>(
  sizes: SizesOf,
  typed: Readonly<Record<string, string | undefined>>,
  units: System,
): Sizes<Key> {
  const problems: Problem[] = []
  const m: Record<string, number> = {}
  const kept: Record<string, string> = {}
  for (const key of Object.keys(typed))
    if (!Object.hasOwn(sizes, key))
      problems.push({ field: `sizes.${key}`, says: `not one of its sizes; these are ${Object.keys(sizes).join(', ')}` })
  for (const { key, default: usual, least, most } of startingSizes(sizes, units)) {
    const text = typed[key] ?? usual
    const length = parseLength(text)
    kept[key] = text
    if (!length.ok) {
      problems.push({ field: `sizes.${key}`, says: length.says })
      continue
    }
    m[key] = length.value.lengthM
    const { leastMm, mostMm } = sizes[key] as SizeOf
    if (length.value.lengthM < leastMm / 1000 - NEARLY_M || length.value.lengthM > mostMm / 1000 + NEARLY_M)
      problems.push({ field: `sizes.${key}`, says: `${text}: write ${least} to ${most}` })
  }
  if (problems.length > 0) throw new InputProblems(problems)
  return {
    m: m as Sizes<Key>['m'],
    typed: kept as Sizes<Key>['typed'],
    text: (metres) => lengthSetting(metres, units).text,
    mark: (metres) => lengthSetting(metres, units).si,
    exact: (metres) => lengthText(metres, units),
    unless(holds, key, says) {
      if (!holds) throw new InputProblems([{ field: `sizes.${key}`, says: `${kept[key]}: ${says}` }])
    },
  }
}

const NEARLY_M = 1e-9
