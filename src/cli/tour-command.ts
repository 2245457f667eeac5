import { reportPage } from '#report/report-page.ts'
import type { Asked } from './actions.ts'
import { jobFile, writeReport } from './files.ts'
import { forecastWith, signature, withoutField } from './forecast-command.ts'
import { forecastText } from './forecast-text.ts'
import { json } from './json.ts'
import { routesWith } from './plan-command.ts'
import { planSummary } from './routes-text.ts'
import { examplePath, type Surroundings } from './surroundings.ts'
import { set } from './terminal.ts'

const FORECAST_EXAMPLE = 'stepped-bottom-tool.yaml'
const PLAN_EXAMPLE = 'plans/rivet-bottom-tool.yaml'
const REPORT = 'reports/rivet-bottom-tool.html'

/** What a first look shows: a plan, a forecast and its page, for a tool of the example shop. */
export async function tourCommand(action: Asked<'tour'>, around: Surroundings): Promise<void> {
  const { terminal, print } = around
  const { units } = action
  const aloud = action.json !== true
  const say = (text: string) => {
    if (aloud) print(text)
  }
  say(
    set(
      'A workshop keeps the iron gates and bridge railings of a town. It needs a bottom tool for the railing rivets: a head with a dished face on a shank for the vice. What to do, with the gear that is there?',
      terminal.columns,
    ),
  )
  say('')
  const plan = jobFile(examplePath(PLAN_EXAMPLE))
  const routes = await routesWith(around, plan.job, { readFile: plan.readFile, units })
  say(planSummary(routes, terminal))
  say('')
  say(terminal.soft('-'.repeat(terminal.columns)))
  say(set('The smith has settled on a way. What will come of it?', terminal.columns))
  say('')
  const job = jobFile(examplePath(FORECAST_EXAMPLE))
  const forecast = await forecastWith(around, job.job, { readFile: job.readFile, units, field: true })
  const report = action.report ?? REPORT
  writeReport(report, reportPage(forecast, { units, generatedBy: signature(around) }))
  say(forecastText(forecast, terminal, { units, sources: action.sources === true }))
  say('')
  say(terminal.strong(`The page is in ${report}: open it in a browser, print it, carry it to the fire.`))
  say(set('Your own tool: write it down like examples/stepped-bottom-tool.yaml, then', terminal.columns))
  say('  npm run -s quenchwright -- forecast YOUR-JOB.yaml --report reports/yours.html')
  say('  npm run -s quenchwright -- --help')
  if (!aloud) print(json({ plan: routes, forecast: withoutField(forecast), report }))
}
