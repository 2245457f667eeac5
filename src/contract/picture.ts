import type { Forecast } from './answers.ts'
import type { ForecastRequest } from './forecast-parts.ts'
import type { Picture } from './picture-fields.ts'
import { pictured } from './pictured.ts'
import { mends } from './remedy-edits.ts'

export { type Picture, STRUCTURES, type Structure } from './picture-fields.ts'
export { historyOf, type PointHistory } from './point-history.ts'

/**
 * A forecast with the picture of the piece through its treatment; the forecast is the same, bit for bit, as `forecast` gives for the same
 * request. Throws `InputProblems` on bad input.
 */
export function forecastWithPicture(
  job: unknown,
  request: ForecastRequest = {},
): { readonly forecast: Forecast; readonly picture: Picture } {
  return pictured(job, request, mends)
}
