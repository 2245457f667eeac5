import type { Forecast } from '#contract/answers.ts'
import type { JobText, StepText } from '#web/job/job-text.ts'
import { stepsOf } from '#web/treatment/process-edits.ts'
import type { Answered } from '#web/work/desk.ts'
import { sameTreatment } from './route-question.ts'
import type { Proposed } from './routes-desk.ts'

/** A treatment laid out beside others: one that was proposed, or the one that the piece has. */
export interface LaidOut {
  readonly title: string
  readonly says: string
  readonly process: readonly StepText[]
  readonly forecast: Forecast
  /** That every zone meets its aim. */
  readonly chance?: number
  /** The chance is that of its weakest zone: all of them together can only have less. */
  readonly atBest?: boolean
  readonly holdsGear?: boolean
  readonly own: boolean
  readonly standing: boolean
}

/** So many proposals are laid out beside each other. */
const MOST_ROUTES = 5

/** The treatment that stands on the bench, if it is none of the proposals, and then the proposals, best first. */
export function laidOutRoutes({ routes }: Proposed, job: JobText, answered: Answered | undefined): readonly LaidOut[] {
  const standing = stepsOf(job)
  const proposals = routes.routes.slice(0, MOST_ROUTES).map(({ says, process, forecast, chance, holdsGear }, i): LaidOut => {
    const steps = process.map((step): StepText => ({ ...step, do: String(step.do) }))
    return {
      title: `Route ${i + 1}`,
      says,
      process: steps,
      forecast,
      chance,
      holdsGear,
      own: false,
      standing: sameTreatment(steps, standing),
    }
  })
  const current = answered !== undefined && sameTreatment(stepsOf(answered.job), standing) ? answered : undefined
  if (standing.length === 0 || current === undefined || proposals.some((each) => each.standing)) return proposals
  return [ownTreatment(standing, current), ...proposals]
}

function ownTreatment(process: readonly StepText[], { forecast }: Answered): LaidOut {
  const chances = forecast.zones.map(({ chance }) => chance)
  return {
    title: 'As it stands',
    says: 'the treatment on the bench',
    process,
    forecast,
    ...(chances.length === 0 ? {} : { chance: Math.min(...chances), atBest: chances.length > 1 }),
    own: true,
    standing: true,
  }
}
