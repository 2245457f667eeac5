import type { Forecast } from '#contract/answers.ts'
import { type ForecastRequest, forecast } from '#contract/index.ts'
import { reportPage } from '#report/report-page.ts'
import type { Asked } from './actions.ts'
import { jobFile, writeReport } from './files.ts'
import { forecastText } from './forecast-text.ts'
import { json } from './json.ts'
import { progressOn } from './progress.ts'
import { programVersion, type Surroundings } from './surroundings.ts'

/** `forecast JOB`. */
export async function forecastCommand(action: Asked<'forecast'>, around: Surroundings): Promise<void> {
  const { job, readFile } = jobFile(action.job)
  const answer = await forecastWith(around, job, {
    readFile,
    units: action.units,
    grade: action.draft === true ? 'draft' : action.fine === true ? 'fine' : 'normal',
    field: action.report !== undefined,
    ...(action.members === undefined ? {} : { members: action.members }),
    ...(action.seed === undefined ? {} : { seed: action.seed }),
  })
  if (action.report !== undefined)
    writeReport(action.report, reportPage(answer, { units: action.units, generatedBy: signature(around) }))
  around.print(
    action.json === true
      ? json(withoutField(answer))
      : [
          forecastText(answer, around.terminal, { units: action.units, sources: action.sources === true }),
          ...(action.report === undefined ? [] : [`The page is in ${action.report}.`]),
        ].join('\n'),
  )
}

/** Hardness node by node is for the picture; JSON readers ask the library for it. */
export function withoutField({ field: _, ...rest }: Forecast): Forecast {
  return rest
}

/** The facade's forecast with its progress shown. */
export async function forecastWith({ errors }: Surroundings, job: unknown, request: ForecastRequest): Promise<Forecast> {
  const progress = progressOn(errors)
  try {
    return await forecast(job, { ...request, onProgress: progress.onProgress })
  } finally {
    progress.stop()
  }
}

/** Said at the foot of a page. */
export function signature({ today }: Surroundings): string {
  return `Quenchwright ${programVersion()}, ${today}`
}
