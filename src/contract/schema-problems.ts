import * as z from 'zod/mini'
import { shown } from '#units/reading.ts'
import { meant } from './nearest-word.ts'
import { fieldPath, type Problem } from './problems.ts'

/** Deepest nesting and most fields that one part of a job has, with room to spare. */
const DEEPEST = 16
const MOST_FIELDS = 5000

/**
 * What `schema` makes of `input`, or undefined with every fault added to `problems` under `field`.
 * A field that is written but left empty counts as not written.
 */
export function taken<Schema extends z.ZodMiniType>(
  schema: Schema,
  input: unknown,
  field: string,
  problems: Problem[],
): z.output<Schema> | undefined {
  const parsed = schema.safeParse(withoutEmpty(input, DEEPEST, { left: MOST_FIELDS }), { error: inWords, reportInput: true })
  if (parsed.success) return parsed.data
  for (const issue of parsed.error.issues) {
    if (issue.code === 'unrecognized_keys') {
      const says = issue.message.split('\n')
      issue.keys.forEach((key, i) => {
        problems.push({ field: fieldPath(field, [...issue.path, key]), says: says[i] ?? 'not known here' })
      })
    } else problems.push({ field: fieldPath(field, issue.path), says: issue.message })
  }
  const misspelt = parsed.error.issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? [...issue.message.matchAll(ONE_MEANT)].map(([, key]) => fieldPath(field, [...issue.path, key ?? '']))
      : [],
  )
  // A field that is there under a wrong name is one fault, not two.
  for (let i = problems.length - 1; i >= 0; i--)
    if (problems[i]?.says.startsWith('missing') && misspelt.includes(problems[i]?.field ?? '')) problems.splice(i, 1)
  return undefined
}

/** An unknown field with a single known one like it. */
const ONE_MEANT = /did you mean "([^"]+)"\?$/gmu

/** A mapping of fields, as YAML and JSON give it. */
export function isFields(input: unknown): input is Record<string, unknown> {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) return false
  const prototype: unknown = Object.getPrototypeOf(input)
  return prototype === null || prototype === Object.prototype
}

function withoutEmpty(input: unknown, depth: number, budget: { left: number }): unknown {
  // What is deeper or larger than any job goes on as it is: it is at fault anyway.
  if (depth === 0 || budget.left-- <= 0) return input
  if (Array.isArray(input)) return input.map((each) => withoutEmpty(each, depth - 1, budget))
  if (!isFields(input)) return input
  const entries = Object.entries(input).filter(([, value]) => value !== null && value !== undefined)
  return Object.fromEntries(entries.map(([key, value]) => [key, withoutEmpty(value, depth - 1, budget)]))
}

const EXPECTED: { readonly [type: string]: string } = {
  string: 'words belong here',
  number: 'a number belongs here',
  int: 'a whole number belongs here',
  boolean: 'yes or no belongs here',
  array: 'a list belongs here',
  object: 'a group of fields belongs here',
  record: 'a group of fields belongs here',
}

/** A fault found by zod, said as one smith would to another. */
function inWords(issue: z.core.$ZodRawIssue): string {
  const { input } = issue
  switch (issue.code) {
    case 'invalid_type': {
      const belongs = EXPECTED[String(issue.expected)] ?? `${String(issue.expected)} belongs here`
      return `${input === undefined ? 'missing' : shown(input)}: ${belongs}${described(issue)}`
    }
    case 'invalid_value': {
      const values = (issue.values as readonly unknown[]).map(String)
      return input === undefined
        ? `missing: write ${values.join(', ')}`
        : `${shown(input)}: not known here; ${meant(typeof input === 'string' ? input : '', values)}`
    }
    case 'unrecognized_keys': {
      const known = knownKeys(issue.inst)
      return (issue.keys as readonly string[]).map((key) => `${shown(key)} is not a field here; ${meant(key, known)}`).join('\n')
    }
    case 'invalid_union': {
      const { discriminator, options } = issue as { discriminator?: string; options?: readonly unknown[] }
      if (discriminator === undefined || !isFields(input)) return `${shown(input)}: not what belongs here${described(issue)}`
      const given = input[discriminator]
      const known = (options ?? []).map(String)
      return given === undefined
        ? `missing: write ${known.join(', ')}`
        : `${shown(given)}: not known here; ${meant(typeof given === 'string' ? given : '', known)}`
    }
    case 'too_small':
      return issue.origin === 'array' || issue.origin === 'string'
        ? `${shown(input)}: too few; write at least ${issue.minimum}`
        : `${shown(input)}: too little; write ${issue.minimum} or more`
    case 'too_big':
      return issue.origin === 'array' || issue.origin === 'string'
        ? `${shown(input)}: too many; write at most ${issue.maximum}`
        : `${shown(input)}: too much; write ${issue.maximum} or less`
    default:
      return `${shown(input)}: not what belongs here${described(issue)}`
  }
}

function described({ inst }: z.core.$ZodRawIssue): string {
  const description = inst instanceof z.ZodMiniType ? z.globalRegistry.get(inst)?.description : undefined
  return description === undefined ? '' : `: ${description}`
}

function knownKeys(schema: unknown): readonly string[] {
  return schema instanceof z.ZodMiniObject ? Object.keys(schema.shape) : []
}
