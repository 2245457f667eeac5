import type { Account } from '#engine/findings/account.ts'
import type { SteelPractice } from '#engine/planning/steel-practice.ts'
import type { Layout } from '#engine/planning/zones.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Length, ProcessStep, Zone } from '#engine/simulation/process.ts'
import type { System } from '#units/length.ts'
import type { JobEdit, JobPath } from './job-edits.ts'

/** What a mend is worked out from: the document as typed beside what was made of it and what came of it. */
export interface RemedyGround {
  /** What the job file holds. */
  readonly document: unknown
  readonly account: Account
  readonly units: System
  readonly layout: () => Layout
  readonly practice: () => SteelPractice
}

/** Something to try: what it says on the button, and the changes that do it. */
export interface Remedy {
  readonly says: string
  readonly edits: readonly JobEdit[]
}

export type StepOf<Do extends ProcessStep['do']> = Extract<ProcessStep, { do: Do }>

/** A step of the process with its place in the document; undefined where the document does not hold it. */
export interface PlacedStep<Step extends ProcessStep = ProcessStep> {
  readonly step: Step
  /** Its number in the process as worked, which may hold a walk that nobody wrote. */
  readonly at: number
  readonly place: number
  readonly path: JobPath
}

/** The steps of the document, in order. */
export function placedSteps({ document, account: { job } }: Pick<RemedyGround, 'document' | 'account'>): PlacedStep[] {
  const written = listIn(document, 'process')
  let place = 0
  return job.process.flatMap((step, at) => {
    const typed = written[place]
    // A walk was put in where the document has none.
    if (typed === undefined || (step.do === 'carry' && fieldOf(typed, 'do') !== 'carry')) return []
    const placed = { step, at, place, path: ['process', place] }
    place++
    return [placed]
  })
}

export function stepAt<Do extends ProcessStep['do']>(
  ground: RemedyGround,
  at: number | undefined,
  ...kinds: readonly Do[]
): PlacedStep<StepOf<Do>> | undefined {
  const found = placedSteps(ground).find((each) => each.at === at)
  return found !== undefined && kinds.some((kind) => kind === found.step.do) ? (found as PlacedStep<StepOf<Do>>) : undefined
}

/** The last step of these kinds before step `at`. */
export function lastBefore<Do extends ProcessStep['do']>(
  ground: RemedyGround,
  at: number,
  ...kinds: readonly Do[]
): PlacedStep<StepOf<Do>> | undefined {
  return placedSteps(ground).findLast((each) => each.at < at && kinds.some((kind) => kind === each.step.do)) as
    | PlacedStep<StepOf<Do>>
    | undefined
}

/** Where a piece of gear stands in the document; undefined where its shop is in a file of its own, or was only assumed. */
export function gearPath({ document }: RemedyGround, sort: 'fires' | 'baths' | 'ovens', name: string): JobPath | undefined {
  const listed = listIn(fieldOf(document, 'shop'), sort)
  const index = listed.findIndex((each) => sameName(fieldOf(each, 'name'), name))
  return index < 0 ? undefined : ['shop', sort, index]
}

/** Where a zone stands in the document; undefined for one that was only assumed. */
export function zonePath({ document, account: { job } }: RemedyGround, name: string): JobPath | undefined {
  const index = job.zones.filter(({ assumed }) => !assumed).findIndex((zone) => zone.name === name)
  return index < 0 || listIn(document, 'zones')[index] === undefined ? undefined : ['zones', index]
}

export function zoneNamed({ account: { job } }: RemedyGround, name: string | undefined): Zone | undefined {
  return job.zones.find((zone) => zone.name === name)
}

/** Where the sections begin [m from the working end]. */
export function sectionStartsM({ profile }: Pick<Job, 'profile'>): number[] {
  let atM = 0
  return profile.sections.map(({ lengthM }) => {
    const startM = atM
    atM += lengthM
    return startM
  })
}

export function writes(path: JobPath, value: unknown): JobEdit {
  return { path, value }
}

export function partText(part: Length, text: (metres: number) => string): { readonly from: string; readonly to: string } {
  return { from: text(part.fromM), to: text(part.toM) }
}

function listIn(holder: unknown, key: string): readonly unknown[] {
  const list = fieldOf(holder, key)
  return Array.isArray(list) ? list : []
}

function fieldOf(holder: unknown, key: string): unknown {
  return typeof holder === 'object' && holder !== null && Object.hasOwn(holder, key)
    ? (holder as Record<string, unknown>)[key]
    : undefined
}

function sameName(typed: unknown, name: string): boolean {
  return (typeof typed === 'string' || typeof typed === 'number') && String(typed).replace(/\s+/gu, ' ').trim() === name
}
