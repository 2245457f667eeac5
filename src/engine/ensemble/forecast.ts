import { exp } from '#engine/arithmetic/elementary.ts'
import type { MeshGrade } from '#engine/geometry/mesh.ts'
import { bodyOf } from '#engine/simulation/body.ts'
import type { Job } from '#engine/simulation/job.ts'
import { NOMINAL } from '#engine/simulation/scenario.ts'
import { type Treatment, treat } from '#engine/simulation/treatment.ts'
import { historyAt, type Response, responseOf, type SpotHistory } from './history.ts'
import { outlookOf } from './members.ts'
import type { Outlook } from './outlook.ts'
import { type SpotPlan, spotPlan } from './spots.ts'

export const DEFAULT_MEMBERS = 400
export const DEFAULT_SEED = 20251

const LN_FILM_STEP = 0.3
const HEAT_STEP_K = 15

export interface ForecastOptions {
  readonly grade: MeshGrade
  readonly members: number
  readonly seed: number
  readonly onProgress?: (done: number, total: number, says: string) => void
}

/** One job's treatment with its outlook: the nominal run on the asked mesh, its spread from sampled unknowns. */
export function forecastJob(job: Job, options: ForecastOptions): { readonly treatment: Treatment; readonly outlook: Outlook } {
  const total = job.process.length + 4
  const traceAtM = traceHeight(job)
  const treatment = treat(job, {
    grade: options.grade,
    traceAtM,
    onStep: (step) => options.onProgress?.(step, total, job.process[step]!.do),
  })
  const plan = spotPlan(job, treatment.body)
  const base = historyAt(treatment, plan.spots)
  const response = job.process.some((step) => step.do === 'quench')
    ? sensitivities(job, treatment, plan, base, options, (done) => options.onProgress?.(job.process.length + done, total, 'band'))
    : undefined
  const outlook = outlookOf(job, plan, base, response, options)
  options.onProgress?.(total, total, 'done')
  return { treatment, outlook }
}

/** Three more hardening runs on a draft mesh; a draft forecast serves as its own base. */
export function sensitivities(
  job: Job,
  treatment: Treatment,
  plan: SpotPlan,
  fine: SpotHistory,
  options: Pick<ForecastOptions, 'grade'>,
  done: (count: number) => void,
): Response {
  const run = (scenario: Partial<typeof NOMINAL>): SpotHistory =>
    historyAt(
      treat(job, { grade: 'draft', traceAtM: 0, onlyHardening: true, scenario: { ...NOMINAL, ...scenario } }),
      plan.spots,
    )
  const base = options.grade === 'draft' ? fine : run({})
  done(1)
  const filmUp = run({ filmFactor: exp(LN_FILM_STEP) })
  done(2)
  const filmDown = run({ filmFactor: exp(-LN_FILM_STEP) })
  done(3)
  const hotter = run({ heatOffsetK: HEAT_STEP_K })
  return responseOf(base, { filmUp, filmDown, hotter }, { lnFilm: LN_FILM_STEP, heatK: HEAT_STEP_K })
}

/** The place to watch: the thickest height of the first zone that must be hard, else of the whole piece. */
export function traceHeight(job: Job): number {
  const body = bodyOf(job, 'draft')
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

