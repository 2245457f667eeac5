import { forecastJob } from '#engine/ensemble/forecast.ts'
import type { Outlook } from '#engine/ensemble/outlook.ts'
import type { EngineFinding } from '#engine/findings/finding.ts'
import { findingsOf } from '#engine/findings/findings.ts'
import type { Wording } from '#engine/findings/wording.ts'
import { bodyOf } from '#engine/simulation/body.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { ProcessStep } from '#engine/simulation/process.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import { colourRoutes } from './colour-routes.ts'
import { firesFor, heatTimer } from './fires.ts'
import { quenchMeans, type Refusal } from './media.ts'
import type { Rounding } from './rounding.ts'
import { annealed } from './soft-routes.ts'
import { steelPractice } from './steel-practice.ts'
import { temperGear } from './temper-gear.ts'
import { shopfloorOf, type Tried, tryAll } from './trials.ts'
import { cannotAnneal, fireTooCool, type None, noBath, noFire, noOven, whyNone } from './why-none.ts'
import { hardZonesOf, layoutOf } from './zones.ts'

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
  readonly none?: None
  readonly refused: readonly Refusal[]
}

export interface ProposalOptions {
  readonly members: number
  readonly seed: number
  readonly wording: Wording
  readonly rounding: Rounding
  readonly onProgress?: (done: number, total: number, says: string) => void
}

const MOST_ROUTES = 4
/** Below this chance a way is not proposed. */
const LEAST_CHANCE = 0.1
/** Of the best one's chance: ways that do worse than this are left out. */
const WORTH_SHOWING = 0.5
/** A best estimate further outside its aim is a miss, whatever the band [HRC]. */
const MISS_HRC = 1
/** A struck end may come out hard in no more than this share of pieces: it throws splinters. */
const STRUCK_RISK = 0.3

/**
 * Complete processes for a job that has none, ranked by the chance that every zone meets its aim: gear first, then the gentler
 * bath and the plainer way where chances are alike. Air-hardening steels are never normalised. The job must have zones.
 */
export function proposeProcesses(job: Job, options: ProposalOptions): Proposal {
  const { rounding, wording } = options
  const practice = steelPractice(job.steel)
  const layout = layoutOf(job, bodyOf(job, 'draft'))
  const toK = rounding.temperatureK(practice.austeniteK)
  const fires = firesFor(job, toK)
  if (fires.length === 0) return { routes: [], none: noFire(), refused: [] }
  if (layout.hard.length === 0) {
    const soft = annealed(job, practice, fires, layout.thickestM, rounding)
    return soft === undefined
      ? { routes: [], none: cannotAnneal(practice), refused: [] }
      : decided(job, layout, [soft], [], options)
  }
  const { means, refused } = quenchMeans(job, practice, layout, rounding)
  if (means.length === 0) return { routes: [], refused, none: noBath(job, refused, practice) }
  const timer = heatTimer(job, layout.thickestM)
  const fire = fires.find((each) => timer(each, toK, undefined).reached)
  if (fire === undefined) return { routes: [], refused, none: fireTooCool(fires[0]!.name, toK, wording) }
  const floor = { ...shopfloorOf({ job, layout, practice, fire, gear: temperGear(job, practice), rounding, wording }), timer }
  const total = means.length + MOST_ROUTES
  let step = 0
  const onTry = (says: string): void => options.onProgress?.(step++, total, says)
  if (floor.gear.length === 0) {
    const tried = colourRoutes(floor, means, options, onTry)
    return tried.every(({ chance }) => chance < LEAST_CHANCE)
      ? { routes: [], refused, none: noOven(practice) }
      : decided(job, layout, tried, refused, options)
  }
  return decided(job, layout, tryAll(floor, means, onTry), refused, options)
}

type LayoutOf = ReturnType<typeof layoutOf>

/** The best of what was tried, forecast in full; or why none of it will do. */
function decided(
  job: Job,
  layout: LayoutOf,
  tried: readonly Tried[],
  refused: readonly Refusal[],
  options: ProposalOptions,
): Proposal {
  const sorted = distinct([...tried].sort((a, b) => score(b) - score(a) || a.missHrc - b.missHrc))
  // A drawn end promises more than a flame may keep: the plain ways are measured by the best of themselves.
  const plain = sorted.filter(({ process }) => !process.some((step) => step.do === 'temper' && step.part !== undefined))
  const best = Math.max(0, ...plain.map(({ chance }) => chance))
  const hopeful = sorted.filter(({ chance }) => chance >= Math.max(LEAST_CHANCE / 2, WORTH_SHOWING * best)).slice(0, MOST_ROUTES)
  const total = hopeful.length + 1
  const finals = hopeful.map((each, index) => {
    options.onProgress?.(index, total, each.says)
    return inFull(job, each, options)
  })
  const routes = finals
    .filter((route) => isProposed(job, route))
    .sort((a, b) => rank(b) - rank(a))
    .map(({ route }) => route)
  options.onProgress?.(total, total, 'done')
  const most = routes[0]?.chance ?? 0
  if (routes.length > 0) return { routes: routes.filter(({ chance }) => chance >= WORTH_SHOWING * most), refused }
  const nearly = [...finals].sort((a, b) => b.route.chance - a.route.chance)[0]
  const hardest = Math.max(0, ...tried.map(({ quenched }) => quenched))
  const closest = tried.filter(({ quenched }) => quenched >= 0.5 * hardest).sort((a, b) => a.missHrc - b.missHrc)[0]
  const nearest = nearly ?? (closest === undefined ? undefined : inFull(job, closest, options))
  return { routes: [], refused, none: whyNone(job, layout, nearest?.route, options.wording) }
}

/** One of each sort, the best: two dips in the same bath that differ in depth, or in how hard the piece is moved, are one to a smith. */
function distinct(sorted: readonly Tried[]): readonly Tried[] {
  const seen = new Set<string>()
  return sorted.filter(({ process }) => {
    const sort = process.flatMap((step) => {
      if (step.do === 'heat') return [step.part === undefined ? 'heated whole' : 'end heated']
      if (step.do === 'quench') return [step.in, step.depthM === undefined ? 'whole' : 'dipped']
      return step.do === 'temper' && step.part !== undefined ? ['drawn'] : []
    })
    const key = sort.join(', ')
    const isNew = !seen.has(key)
    seen.add(key)
    return isNew
  })
}

/** A tenth of chance is worth one step of gentleness, a twentieth one step of plainness. */
function score({ chance, fierceness, fuss }: Tried): number {
  return chance - GENTLENESS * fierceness - PLAINNESS * fuss
}
const GENTLENESS = 0.08
const PLAINNESS = 0.03

interface Final {
  readonly route: Route
  readonly tried: Tried
}

function rank({ route, tried }: Final): number {
  const warns = route.findings.filter(({ severity }) => severity === 'warn').length
  return route.chance - GENTLENESS * tried.fierceness - PLAINNESS * (tried.fuss + warns)
}

function isProposed(job: Job, { route }: Final): boolean {
  if (route.chance < LEAST_CHANCE || !route.holdsGear || route.findings.some(({ severity }) => severity === 'stop')) return false
  return route.outlook.zones.every(({ zone: { aim, assumed }, temperedHrc: { value }, tooHard }) => {
    if (assumed && job.struck && tooHard > STRUCK_RISK) return false
    return (
      value >= (aim.lowHrc ?? 0) - MISS_HRC - (aim.lowHrc === undefined ? 100 : 0) && value <= (aim.highHrc ?? 100) + MISS_HRC
    )
  })
}

/** How much hotter a drawn end is taken when the first flame leaves it too hard [K]. */
const HOTTER_K = 40

function inFull(job: Job, tried: Tried, options: ProposalOptions): Final {
  const first = forecastRoute(job, tried, options)
  const harder = withHotterDraw(job, tried, first.route, options)
  if (harder === undefined) return first
  const second = forecastRoute(job, harder, options)
  return second.route.chance > first.route.chance ? second : first
}

function forecastRoute(job: Job, tried: Tried, options: ProposalOptions): Final {
  const whole: Job = { ...job, process: tried.process }
  const { treatment, outlook } = forecastJob(whole, { grade: 'draft', members: options.members, seed: options.seed })
  const findings = findingsOf({ job: whole, treatment, outlook, wording: options.wording })
  const route: Route = {
    says: tried.says,
    process: tried.process,
    treatment,
    outlook,
    findings,
    chance: outlook.chance,
    holdsGear: !findings.some(isBeyondGear),
  }
  return { route, tried }
}

/** The same with a hotter flame on the drawn ends, where those stay too hard and the steel leaves room under Ac1. */
function withHotterDraw(job: Job, tried: Tried, { outlook }: Route, { rounding }: ProposalOptions): Tried | undefined {
  const drawn = tried.process.some((step) => step.do === 'temper' && step.part !== undefined)
  const hard = hardZonesOf(job.zones)
  const stillHard = outlook.zones.some(({ zone, tooHard }) => !hard.includes(zone) && tooHard > STRUCK_RISK / 2)
  if (!drawn || !stillHard) return undefined
  const mostK = steelPractice(job.steel).facts.critical.ac1K - HOTTER_K
  const process = tried.process.map((step) =>
    step.do === 'temper' && step.part !== undefined
      ? { ...step, atK: rounding.atMostK(Math.min(step.atK + HOTTER_K, mostK)), holdS: step.holdS + 60 }
      : step,
  )
  return { ...tried, process }
}

/** Findings that say that the gear does not hold a route. A line that stands too low is the smith's choice, not the tank's. */
function isBeyondGear({ id, severity, where }: EngineFinding): boolean {
  switch (id) {
    case 'oven-cannot-reach':
    case 'bath-too-hot':
      return severity === 'stop'
    case 'bath-too-shallow':
      return where?.zone === undefined && severity !== 'note'
    case 'bath-too-small':
      return severity !== 'note'
    default:
      return false
  }
}
