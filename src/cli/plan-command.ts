import { dirname, isAbsolute, relative, resolve } from 'node:path'
import { isMap, isScalar, parseDocument, visit } from 'yaml'
import type { Routes } from '#contract/answers.ts'
import { type ForecastRequest, proposeRoutes } from '#contract/index.ts'
import { reportPage } from '#report/report-page.ts'
import type { Asked } from './actions.ts'
import { InputFault } from './faults.ts'
import { type JobFile, jobFile, writeJob, writeReport } from './files.ts'
import { signature, withoutField } from './forecast-command.ts'
import { json } from './json.ts'
import { progressOn } from './progress.ts'
import { routesText } from './routes-text.ts'
import type { Surroundings } from './surroundings.ts'

/** `plan JOB`. */
export async function planCommand(action: Asked<'plan'>, around: Surroundings): Promise<void> {
  if (action.take !== undefined && action.out === undefined)
    throw new InputFault('--take says which route; write --out JOB.yaml for where it goes')
  const file = jobFile(action.job)
  const routes = await routesWith(around, file.job, {
    readFile: file.readFile,
    units: action.units,
    field: action.report !== undefined,
    ...(action.members === undefined ? {} : { members: action.members }),
    ...(action.seed === undefined ? {} : { seed: action.seed }),
  })
  const said: string[] = []
  if (action.out !== undefined) {
    writeJob(action.out, jobWithRoute(file, routes, action.take ?? 1, action.out))
    said.push(`Route ${action.take ?? 1} is in ${action.out}; quenchwright forecast ${action.out} works it out finely.`)
  }
  if (action.report !== undefined) {
    const best = routes.routes[(action.take ?? 1) - 1]
    if (best === undefined)
      throw new InputFault(`--report ${action.report}: there is no route to draw; ${routes.none?.because ?? 'none was found'}`)
    writeReport(action.report, reportPage(best.forecast, { units: action.units, routes, generatedBy: signature(around) }))
    said.push(`The page is in ${action.report}.`)
  }
  around.print(
    action.json === true
      ? json(withoutFields(routes))
      : [routesText(routes, around.terminal, { units: action.units, sources: action.sources === true }), ...said].join('\n'),
  )
}

/** The facade's plan with its progress shown. */
export async function routesWith({ errors }: Surroundings, job: unknown, request: ForecastRequest): Promise<Routes> {
  const progress = progressOn(errors)
  try {
    return await proposeRoutes(job, { ...request, onProgress: progress.onProgress })
  } finally {
    progress.stop()
  }
}

/** The routes without what is only for pictures. */
function withoutFields(routes: Routes): Routes {
  return { ...routes, routes: routes.routes.map((route) => ({ ...route, forecast: withoutField(route.forecast) })) }
}

/** The job's own text with the route as its process; comments stay, and a shop by file name is still found. */
function jobWithRoute(file: JobFile, { routes, none }: Routes, take: number, out: string): string {
  const route = routes[take - 1]
  if (route === undefined)
    throw new InputFault(
      routes.length === 0
        ? `--out: there is no route to take; ${none?.because ?? 'none was found'}`
        : `--take ${take}: there are only ${routes.length} routes`,
    )
  const document = parseDocument(file.text, { stringKeys: true })
  const process = document.createNode(route.process)
  visit(process, {
    Map: (_, map) => {
      map.flow = true
    },
  })
  document.set('process', process)
  const shop = isMap(document.contents) ? document.contents.get('shop', true) : undefined
  if (isScalar(shop) && typeof shop.value === 'string' && !isAbsolute(shop.value)) {
    const beside = resolve(dirname(file.path), shop.value)
    document.set('shop', relative(dirname(resolve(out)), beside).replaceAll('\\', '/'))
  }
  return document.toString({ lineWidth: 0 })
}
