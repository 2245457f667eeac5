import { exp } from '#engine/arithmetic/elementary.ts'
import type { MeshGrade } from '#engine/geometry/mesh.ts'
import { bodyOf } from '#engine/simulation/body.ts'
import type { Job } from '#engine/simulation/job.ts'
import { type Treatment, treat } from '#engine/simulation/treatment.ts'
import { crossSections, NO_SECTIONS, shifted } from './cross-sections.ts'
import { historyAt, type Response, responseOf, type SpotHistory } from './history.ts'
import { withLadder } from './ladder.ts'
import { outlookOf } from './members.ts'
import { bandOfNodes, type NodeOutlook, nodeHardness } from './node-outlook.ts'
import type { Outlook } from './outlook.ts'
import { skinOutlooks } from './skin-outlook.ts'
import { type SpotPlan, spotPlan } from './spots.ts'

/** Members unless more are asked for: the band of a draft is a first look. */
export const DEFAULT_MEMBERS: { readonly [Grade in MeshGrade]: number } = { sketch: 0, draft: 60, normal: 400, fine: 400 }
export const DEFAULT_SEED = 20251

const LN_FILM_STEP = 0.3

export interface ForecastOptions {
  readonly grade: MeshGrade
  readonly members: number
  readonly seed: number
  readonly onProgress?: (done: number, total: number, says: string) => void
  /** Films the treatment, and works out hardness and its band for every node. */
  readonly pictured?: boolean
}

/** One job's treatment with its outlook: the nominal run on the asked mesh, its spread from sampled unknowns. */
export function forecastJob(
  job: Job,
  options: ForecastOptions,
): { readonly treatment: Treatment; readonly outlook: Outlook; readonly nodes?: NodeOutlook } {
  const { grade, members, seed, onProgress } = options
  const total = job.process.length + 2
  const treatment = treat(job, {
    grade,
    traceAtM: traceHeight(job, grade === 'sketch' ? 'sketch' : 'draft'),
    ...(grade === 'draft' && members > 0 ? { filmFactors: FILM_FACTORS.slice(0, 1) } : {}),
    filmed: options.pictured === true,
    onStep: (step) => onProgress?.(step, total, job.process[step]!.do),
  })
  const coarse = grade === 'sketch' || grade === 'draft'
  const hardness = options.pictured ? nodeHardness(job, treatment) : undefined
  const sections = grade === 'sketch' ? NO_SECTIONS : crossSections(job, treatment)
  const plain = spotPlan(job, treatment.body, sections.edgesAt)
  const plan = hardness === undefined ? plain : withLadder(plain, treatment.body, hardness.temperedHrc, coarse)
  onProgress?.(total - 2, total, 'band')
  const response = members === 0 ? undefined : filmResponse(job, treatment, plan)
  onProgress?.(total - 1, total, 'band')
  const history = shifted(historyAt(treatment, plan.spots), plan.edges)
  const judged = outlookOf(job, plan, history, response, { members, seed })
  const outlook: Outlook = {
    ...judged,
    sections: sections.solved,
    skins: skinOutlooks(job, treatment, plan, history, judged, grade === 'sketch'),
  }
  const nodes = hardness === undefined ? undefined : { ...hardness, bandHrc: bandOfNodes(outlook, plan, treatment.body) }
  onProgress?.(total, total, 'done')
  return { treatment, outlook, ...(nodes === undefined ? {} : { nodes }) }
}

const FILM_FACTORS = [exp(LN_FILM_STEP), exp(-LN_FILM_STEP)]

/**
 * How the places answer to the film, from two more quenches out of the same heat (one in a draft, which takes the slope as the same
 * on both sides); a finer forecast takes the slopes of a draft mesh.
 */
export function filmResponse(job: Job, treatment: Treatment, plan: SpotPlan): Response | undefined {
  const heat = job.process.findLast((step) => step.do === 'heat')
  if (heat === undefined || !job.process.some((step) => step.do === 'quench')) return undefined
  const coarse =
    treatment.variants.length > 0
      ? treatment
      : treat(job, { grade: 'draft', traceAtM: 0, onlyHardening: true, filmFactors: FILM_FACTORS })
  const [filmUp, filmDown] = coarse.variants.map((state) => historyAt({ body: coarse.body, state }, plan.spots))
  if (filmUp === undefined) throw new Error('film response: the hardening runs are missing')
  return responseOf(historyAt(coarse, plan.spots), filmUp, filmDown, LN_FILM_STEP, heat.toK)
}

/** A job hardened on a draft mesh, with the answer to the film: what the planner tries tempers on. */
export function hardenedDraft(job: Job): {
  readonly treatment: Treatment
  readonly plan: SpotPlan
  readonly history: SpotHistory
  readonly response: Response | undefined
} {
  const treatment = treat(job, { grade: 'draft', traceAtM: 0, onlyHardening: true, filmFactors: FILM_FACTORS })
  const plan: SpotPlan = { ...spotPlan(job, treatment.body), probes: [], along: [] }
  const history = historyAt(treatment, plan.spots)
  return { treatment, plan, history, response: filmResponse(job, treatment, plan) }
}

/** The place to watch: the thickest height of the first zone that must be hard, else of the whole piece. */
function traceHeight(job: Job, grade: MeshGrade): number {
  const body = bodyOf(job, grade)
  const zone = job.zones.find(({ aim }) => (aim.lowHrc ?? 0) >= 30)
  const fromM = zone?.fromM ?? 0
  const toM = zone?.toM ?? body.lengthM
  const middle = 0.5 * (fromM + toM)
  let best = middle
  let bestRadius = 0
  for (let i = 0; i < body.mesh.xM.length; i++) {
    const x = body.mesh.xM[i]!
    if (x < fromM || x > toM) continue
    const radius = body.localRadiusM[i]! - 0.02 * Math.abs(x - middle)
    if (radius > bestRadius) {
      bestRadius = radius
      best = x
    }
  }
  return best
}
