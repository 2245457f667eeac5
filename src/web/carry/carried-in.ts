import { jobFromLink } from '#contract/plan-link.ts'
import { InputProblems, type Problem } from '#contract/problems.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { JobText } from '#web/job/job-text.ts'
import type { Told } from './carry.ts'
import { heldJob } from './job-document.ts'

interface CarriedIn {
  readonly told: Told
  readonly done?: string
}

/** A job is a page of text; a larger file is something else, and is not looked into. */
const MOST_BYTES = 2_000_000
const AS_IT_WAS = 'Nothing on the bench was changed by it.'

/** Each file on the bench as a new piece, the last one open. What is no job stays outside, with the reason. */
export async function filesOpened(bench: Bench, files: readonly File[]): Promise<CarriedIn> {
  const each: CarriedIn[] = []
  for (const file of files) each.push(await fileOpened(bench, file))
  const [first, ...others] = each
  if (first === undefined) return { told: { says: 'No file was handed in.' } }
  if (others.length === 0) return first
  const opened = each.flatMap(({ done }) => (done === undefined ? [] : [done]))
  const last = opened.at(-1)
  return {
    told: {
      says: `${opened.length} of ${each.length} files are on the bench.`,
      problems: each.flatMap(({ told: { says, problems = [], loud } }, i) => [
        ...(loud === true || problems.length > 0 ? [{ field: files[i]?.name ?? '', says }] : []),
        ...problems,
      ]),
      loud: each.some(({ told }) => told.loud),
    },
    ...(last === undefined ? {} : { done: last }),
  }
}

async function fileOpened(bench: Bench, file: File): Promise<CarriedIn> {
  const { name } = file
  if (file.size > MOST_BYTES)
    return refused(`${name} was not opened.`, [
      { field: '', says: `${(file.size / 1e6).toFixed(0)} MB; a job file has a page of text. Is it the right one?` },
    ])
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer())
  } catch (error) {
    return refused(`${name} was not opened.`, [
      {
        field: '',
        says:
          error instanceof TypeError
            ? 'not a text file in UTF-8; a job file is YAML or JSON'
            : 'this browser could not read it; is it still there, and is it a file and no folder?',
      },
    ])
  }
  const { document, problems } = await bench.crew.ask('read', [text, name]).answer
  // A file that cannot be read is told of by the line; the reader names it.
  if (document === undefined) return refused(`${name} was not opened.`, problems)
  return taken(bench, document, problems, name, `${name} is no job file`)
}

/** The plan that an address holds, on the bench as a new piece. */
export async function linkOpened(bench: Bench, address: string): Promise<CarriedIn> {
  let document: unknown
  try {
    document = await jobFromLink(address)
  } catch (error) {
    if (!(error instanceof InputProblems)) throw error
    return refused('The link was not opened.', error.problems)
  }
  const problems = await bench.crew.ask('problems', [document as JobText]).answer
  return taken(bench, document, problems, 'The plan of the link', 'The link holds no job')
}

function taken(bench: Bench, document: unknown, problems: readonly Problem[], name: string, foreign: string): CarriedIn {
  const held = heldJob(document)
  if (held.kind === 'foreign') return refused(`${foreign}: ${held.why}.`, [])
  const done = bench.add(held.job)
  if (problems.length === 0) return { told: { says: `${name} is on the bench.` }, done }
  const faults = problems.length === 1 ? 'one fault' : `${problems.length} faults`
  return { told: { says: `${name} is on the bench, with ${faults} to mend.`, problems }, done }
}

function refused(says: string, problems: readonly Problem[]): CarriedIn {
  return { told: { says, problems, mend: AS_IT_WAS, loud: true } }
}
