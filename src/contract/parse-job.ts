import * as z from 'zod/mini'
import { totalLengthM } from '#engine/geometry/outline.ts'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import { shown } from '#units/reading.ts'
import { furnished } from './assumed-gear.ts'
import type { Assumption } from './assumption.ts'
import { gearFinder } from './gear-names.ts'
import { jobSchema } from './job-schema.ts'
import { takeProbes } from './parse-probes.ts'
import { gearAsked, gearOfUnread, stepsOf, takeSteps } from './parse-process.ts'
import { takeProfile } from './parse-profile.ts'
import { type ShopTaken, takeShop } from './parse-shop.ts'
import { takeSteel } from './parse-steel.ts'
import { takeZones } from './parse-zones.ts'
import type { TypedProbe, TypedSection, TypedZone } from './piece-schema.ts'
import { InputProblems, type Problem } from './problems.ts'
import type { TypedStep } from './process-schema.ts'
import { nameSchema, yesNoSchema } from './quantity-schemas.ts'
import { isFields, taken } from './schema-problems.ts'
import { grainSizeSchema, type TypedSteel } from './steel-schema.ts'
import { struckWord } from './struck-tool.ts'

export interface ParseOptions {
  /** `required` (the default): a job without steps is at fault. `absent-ok`: a plan, which proposes them. */
  readonly process?: 'required' | 'absent-ok'
  /** Gives what a file that the job names for its shop holds (`readJobText`), or throws. Without it a shop by file name is a problem. */
  readonly readFile?: (name: string) => unknown
}

/** What the smith typed, beside what was made of it; `process` goes step for step with the job's. */
export interface JobAsTyped {
  readonly steel: TypedSteel
  readonly profile: readonly TypedSection[]
  readonly zones: readonly TypedZone[]
  readonly probes: readonly TypedProbe[]
  readonly shop: ShopTaken['typed']
  readonly process: readonly TypedStep[]
}

export interface ParsedJob {
  readonly job: Job
  readonly typed: JobAsTyped
  /** Defaults that were filled in, and readings that could be doubted. */
  readonly assumptions: readonly Assumption[]
}

/**
 * A job from what its file holds (YAML or JSON, parsed). Every part is read, so that one fault hides no other.
 * Throws `InputProblems` with all problems, and nothing else, whatever the input is.
 */
export function parseJob(input: unknown, options: ParseOptions = {}): ParsedJob {
  if (!isFields(input))
    throw new InputProblems([
      { field: '', says: `${shown(input)}: a job is a group of fields: piece, steel, profile, zones, shop, process` },
    ])
  const problems: Problem[] = []
  const assumptions: Assumption[] = []
  const required = options.process !== 'absent-ok'
  unknownFields(input, problems)

  const piece = given(nameSchema('the name of the piece'), input.piece, 'piece', problems) ?? 'piece'
  const grainSize = given(grainSizeSchema, input.grainSize, 'grainSize', problems)
  const steel = takeSteel(input.steel, grainSize, problems, assumptions)
  const profile = takeProfile(input.profile, problems)
  const lengthM = profile === undefined ? undefined : totalLengthM(profile.profile)
  const struck = struckOf(given(yesNoSchema, input.struck, 'struck', problems), piece, assumptions)
  const zones = takeZones(input.zones, lengthM, problems, assumptions)
  const outline = profile === undefined || lengthM === undefined ? undefined : { profile: profile.profile, lengthM }
  const probes = takeProbes(input.probes, outline, problems)

  const written = takeSteps(input.process, required, problems)
  const shopTaken = shopOf(input.shop, options, problems)
  const shop = furnished(shopTaken, gearAsked(written ?? []), !required, assumptions)
  const used = new Set<string>()
  const find = gearFinder(shop, shopTaken, problems, used, assumptions)
  const process = stepsOf(written ?? [], { lengthM, shop, find, problems, assumptions })
  gearOfUnread(input.process, written ?? [], find)
  for (const [name, filled] of shopTaken.filledIn) if (used.has(name) || !required) assumptions.push(...filled)

  if (problems.length > 0 || steel === undefined || profile === undefined) throw new InputProblems(inOrder(problems))
  const job: Job = {
    piece,
    steel: steel.steel,
    profile: profile.profile,
    struck,
    zones: zones.zones,
    probes: probes.probes,
    shop,
    process: process.steps,
  }
  assumptions.push(...barAsDelivered(job))
  return {
    job,
    typed: {
      steel: steel.typed,
      profile: profile.typed,
      zones: zones.typed,
      probes: probes.typed,
      shop: shopTaken.typed,
      process: process.typed,
    },
    assumptions,
  }
}

const DELIVERED = {
  martensite: 'The bar was hardened before.',
  fine: 'The bar comes normalised.',
  rolled: 'The bar comes as rolled, its carbide in pearlite.',
  spheroidised: 'The bar comes annealed, its carbide in coarse globules.',
} as const

/** With nothing before the hardening heat to tell, the carbide lies as it does in bar as sold: that decides how long it takes to dissolve. */
function barAsDelivered(job: Job): Assumption[] {
  if (!job.process.some((step) => step.do === 'heat')) return []
  const { prior, assumed } = heatedFrom(job)
  if (!assumed) return []
  return [
    {
      says: DELIVERED[prior],
      because: 'no step before the heat says otherwise, and such steel is sold so (common practice, no source)',
    },
  ]
}

function unknownFields(input: Record<string, unknown>, problems: Problem[]): void {
  const others = Object.fromEntries(Object.entries(input).filter(([key]) => !Object.hasOwn(jobSchema.shape, key)))
  taken(z.partial(jobSchema), others, '', problems)
}

function given<Schema extends z.ZodMiniType>(
  schema: Schema,
  input: unknown,
  field: string,
  problems: Problem[],
): z.output<Schema> | undefined {
  return input === null || input === undefined ? undefined : taken(schema, input, field, problems)
}

function struckOf(said: boolean | undefined, piece: string, assumptions: Assumption[]): boolean {
  if (said !== undefined) return said
  const word = struckWord(piece)
  if (word === undefined) return false
  assumptions.push({
    says: 'Struck with a hammer at its other end.',
    because: `"${word}" stands in its name; write struck: no if it is not`,
  })
  return true
}

/** A shop in the job, or in a file that it names (with the shop itself, or a group called shop, in it). */
function shopOf(input: unknown, { readFile }: ParseOptions, problems: Problem[]): ShopTaken {
  if (typeof input !== 'string') return takeShop(input, 'shop', problems)
  const nothing: ShopTaken = { ...takeShop(undefined, 'shop', problems), faulty: new Set(['fires', 'baths', 'ovens']) }
  if (readFile === undefined) {
    problems.push({ field: 'shop', says: `${shown(input)}: no file can be read from here; write the shop into the job` })
    return nothing
  }
  try {
    const held = readFile(input)
    return takeShop(isFields(held) && Object.keys(held).join() === 'shop' ? held.shop : held, 'shop', problems)
  } catch (error) {
    if (error instanceof InputProblems)
      problems.push(
        ...error.problems.map(({ field, says }) => ({
          field: field === '' ? 'shop' : `shop.${field}`,
          says: `in ${input}: ${says}`,
        })),
      )
    else
      problems.push({
        field: 'shop',
        says: `${shown(input)} cannot be read: ${error instanceof Error ? error.message : String(error)}`,
      })
    return nothing
  }
}

/** Problems in the order of the job's own fields and lists, so that a reader goes down the file once. */
function inOrder(problems: readonly Problem[]): Problem[] {
  const order = ['', ...Object.keys(jobSchema.shape)]
  const place = ({ field }: Problem): number => {
    const [, key = '', index = '0'] = /^(\w*)(?:\[(\d+)\])?/u.exec(field) ?? []
    const at = order.indexOf(key)
    return (at < 0 ? order.length : at) * 1000 + Number(index)
  }
  return [...problems].sort((a, b) => place(a) - place(b))
}
