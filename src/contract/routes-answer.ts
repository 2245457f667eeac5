import { DEFAULT_SEED } from '#engine/ensemble/forecast.ts'
import { INCH_ROUNDING, METRIC_ROUNDING } from '#engine/planning/rounding.ts'
import { proposeProcesses } from '#engine/planning/routes.ts'
import { withStruckEnd } from '#engine/simulation/struck-end.ts'
import type { Routes } from './answers.ts'
import { answerOf, type ForecastRequest } from './forecast-parts.ts'
import { parseJob } from './parse-job.ts'
import { processInWords } from './print-job.ts'
import { InputProblems } from './problems.ts'
import { wordingFor } from './wording.ts'

const MEMBERS = 200

/**
 * Complete processes for a job that has none, best first, each with its forecast; or `none` with the reason and the nearest that
 * can be had. A process in the job is set aside. Throws `InputProblems` on bad input.
 */
export function proposeRoutes(job: unknown, request: ForecastRequest = {}): Routes {
  const parsed = parseJob(job, { ...request, process: 'absent-ok' })
  if (parsed.job.zones.length === 0)
    throw new InputProblems([
      {
        field: 'zones',
        says: 'nothing to plan for: say what must become how hard, as { name: edge, from: 0 mm, to: 30 mm, aim: 54..58 HRC }',
      },
    ])
  const asked = withStruckEnd({ ...parsed.job, process: [] })
  const units = request.units ?? 'metric'
  const proposal = proposeProcesses(asked, {
    members: request.members ?? MEMBERS,
    seed: request.seed ?? DEFAULT_SEED,
    wording: wordingFor(units),
    rounding: units === 'inch' ? INCH_ROUNDING : METRIC_ROUNDING,
    ...(request.onProgress === undefined ? {} : { onProgress: request.onProgress }),
  })
  return {
    routes: proposal.routes.map((route) => ({
      says: route.says,
      process: processInWords(route.process, units),
      forecast: answerOf(
        { ...asked, process: route.process },
        route.treatment,
        route.outlook,
        'draft',
        parsed.assumptions,
        request,
      ),
      chance: Math.round(1000 * route.chance) / 1000,
      holdsGear: route.holdsGear,
    })),
    ...(proposal.none === undefined ? {} : { none: proposal.none }),
    refused: proposal.refused.map(({ says, because }) => ({ says, because })),
  }
}
