import type { Forecast } from './answers.ts'
import { type ForecastRequest, worked } from './forecast-parts.ts'
import { mends } from './remedy-edits.ts'

export type { ForecastRequest } from './forecast-parts.ts'

/**
 * What will come of a job: hardness from skin to core with its band, findings, and the steps with their clocks.
 * `job` is what a job file holds, parsed from YAML or JSON. Throws `InputProblems` on bad input.
 */
export function forecast(job: unknown, request: ForecastRequest = {}): Forecast {
  return worked(job, request, false, mends).forecast
}
