import { forecastJob, hardenedDraft } from '#engine/ensemble/forecast.ts'
import type { Outlook } from '#engine/ensemble/outlook.ts'
import type { EngineFinding } from '#engine/findings/finding.ts'
import { findingsOf } from '#engine/findings/findings.ts'
import type { Wording } from '#engine/findings/wording.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { ProcessStep } from '#engine/simulation/process.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import { type HardeningCandidate, hardeningCandidates, type Refusal } from './candidates.ts'
import { middleUpS } from './soak.ts'
import { type SteelPractice, steelPractice } from './steel-practice.ts'
import { bestTemper, type TriedTemper } from './temper-choice.ts'
import { noBath, whyNone } from './why-none.ts'

/** One complete way to make the tool, forecast in full. */
export interface Route {
  readonly says: string
  readonly process: readonly ProcessStep[]
  readonly treatment: Treatment
  readonly outlook: Outlook
  readonly findings: readonly EngineFinding[]
  readonly chance: number
  /** Whether the shop's gear holds it: oven, bath depth and volume. */
  readonly holdsGear: boolean
}

export interface Proposal {
  readonly routes: readonly Route[]
  readonly none?: { readonly because: string; readonly nearest: string }
  readonly refused: readonly Refusal[]
}

export interface ProposalOptions {
  readonly members: number
  readonly seed: number
  readonly wording: Wording
  readonly onProgress?: (done: number, total: number, says: string) => void
}

/** Below this chance a way is not worth proposing. */
const LEAST_CHANCE = 0.1
const MOST_ROUTES = 4
const TEMPER_HOLD_S = 2 * 3600
/** Findings that say that the gear does not hold a route. */
const GEAR_FINDINGS: ReadonlySet<string> = new Set([
  'oven-cannot-reach',
  'bath-too-shallow',
  'bath-too-small',
  'bath-too-hot',
  'bath-too-cold',
])

interface Tried {
  readonly candidate: HardeningCandidate
  readonly temper: TriedTemper
  readonly process: readonly ProcessStep[]
}

/**
 * Complete processes for a job that has none, ranked by the chance that every zone meets its aim: gear first, then the gentler
 * bath and the plainer way where chances are alike. Air-hardening steels are never normalised.
 */
export function proposeProcesses(job: Job, options: ProposalOptions): Proposal {
  const practice = steelPractice(job.steel)
  const { candidates, refused } = hardeningCandidates(job, practice, (fire) => middleUpS(job, fire, practice.austeniteK))
  if (candidates.length === 0) return { routes: [], refused, none: noBath(refused, practice) }
  if (job.shop.ovens.length === 0)
    return {
      routes: [],
      refused,
      none: {
        because: 'the shop names no oven to temper in',
        nearest: 'add an oven to the shop, or temper by colour and write that process down yourself',
      },
    }
  const total = candidates.length + MOST_ROUTES
  const tried = candidates.flatMap((candidate, index): Tried[] => {
    options.onProgress?.(index, total, candidate.says)
    return tryCandidate(job, practice, candidate)
  })
  const worthwhile = tried
    .filter(({ temper }) => temper.chance >= LEAST_CHANCE)
    .sort(byPromise)
    .slice(0, MOST_ROUTES)
  const finals = (worthwhile.length > 0 ? worthwhile : [...tried].sort(byPromise).slice(0, 1)).map((each, index) => {
    options.onProgress?.(candidates.length + index, total, each.candidate.says)
    return inFull(job, each, options)
  })
  const routes = finals.filter((route) => route.chance >= LEAST_CHANCE && route.holdsGear).sort((a, b) => rank(b) - rank(a))
  options.onProgress?.(total, total, 'done')
  if (routes.length > 0) return { routes, refused }
  const [nearest] = finals
  return { routes: [], refused, none: whyNone(job, nearest, options.wording) }
}

/** Hardens once on a draft mesh, then looks for the temper that suits each oven. */
function tryCandidate(job: Job, practice: SteelPractice, candidate: HardeningCandidate): Tried[] {
  const hardening: Job = { ...job, process: candidate.steps }
  const { plan, history, response } = hardenedDraft(hardening)
  return job.shop.ovens.flatMap((oven): Tried[] => {
    const times = practice.cycles
    const hottestK = oven.maxK + oven.readsLowK
    const common = { holdS: TEMPER_HOLD_S, times, hottestK }
    const clear =
      practice.embrittlingK === undefined
        ? undefined
        : bestTemper(hardening, plan, history, response, { ...common, avoidK: practice.embrittlingK })
    const any = bestTemper(hardening, plan, history, response, common)
    const temper = clear !== undefined && any !== undefined && clear.chance >= any.chance - 0.2 ? clear : any
    if (temper === undefined) return []
    const atK = Math.round(temper.trueK - oven.readsLowK)
    const steps: ProcessStep[] = [
      ...candidate.steps,
      { do: 'temper', in: oven.name, atK: Math.min(atK, oven.maxK), holdS: TEMPER_HOLD_S, times },
    ]
    return [{ candidate, temper, process: steps }]
  })
}

function byPromise(a: Tried, b: Tried): number {
  return score(b) - score(a)
}

/** A tenth of chance is worth one step of gentleness, a twentieth one step of plainness. */
function score({ candidate, temper }: Tried): number {
  return temper.chance - 0.08 * candidate.fierceness - 0.03 * candidate.fuss
}

function rank(route: Route): number {
  const stops = route.findings.filter(({ severity }) => severity === 'stop').length
  const warns = route.findings.filter(({ severity }) => severity === 'warn').length
  return route.chance - 0.25 * stops - 0.03 * warns
}

function inFull(job: Job, tried: Tried, options: ProposalOptions): Route {
  const whole: Job = { ...job, process: tried.process }
  const { treatment, outlook } = forecastJob(whole, { grade: 'draft', members: options.members, seed: options.seed })
  const findings = findingsOf({ job: whole, treatment, outlook, wording: options.wording })
  return {
    says: tried.candidate.says,
    process: tried.process,
    treatment,
    outlook,
    findings,
    chance: outlook.chance,
    holdsGear: !findings.some(({ id }) => GEAR_FINDINGS.has(id)),
  }
}
