import { convertHardness, describeSteel, jsonSchemaOf } from '#contract/index.ts'
import { BASIS_WORDS } from '#report/figure-text.ts'
import type { Action, Asked } from './actions.ts'
import { cardCommand } from './card-command.ts'
import { InputFault } from './faults.ts'
import { forecastCommand } from './forecast-command.ts'
import { json } from './json.ts'
import { planCommand } from './plan-command.ts'
import { steelText } from './steel-text.ts'
import type { Surroundings } from './surroundings.ts'
import { set } from './terminal.ts'
import { tourCommand } from './tour-command.ts'

/** Answers what was asked. Throws `InputFault` or `InputProblems` where the input is at fault. */
export async function answer(action: Action, around: Surroundings): Promise<void> {
  switch (action.ask) {
    case 'forecast':
      return forecastCommand(action, around)
    case 'plan':
      return planCommand(action, around)
    case 'card':
      return cardCommand(action, around)
    case 'tour':
      return tourCommand(action, around)
    case 'steel':
      return steelCommand(action, around)
    case 'convert':
      return convertCommand(action, around)
    case 'schema':
      return around.print(json(await jsonSchemaOf(action.name as Parameters<typeof jsonSchemaOf>[0])))
    case 'serve': {
      // The server is loaded only by those who ask for it.
      const { serveCommand } = await import('./serve-command.ts')
      return serveCommand(action, around)
    }
    case 'unbuilt':
      throw new InputFault(`${action.name} (${action.description}) is not built yet; quenchwright --help lists what is`)
  }
}

async function steelCommand(action: Asked<'steel'>, { terminal, print }: Surroundings): Promise<void> {
  const { name, analysis, grainSize, austenitise, temper, hold, times } = action
  if ((name === undefined) === (analysis === undefined))
    throw new InputFault('steel: give the name of a grade, or --analysis "C=0.40,Mn=0.85", one of the two')
  if (temper === undefined && (hold !== undefined || times !== undefined))
    throw new InputFault('--hold and --times belong to --temper; write --temper "400 C" too')
  const steel = await describeSteel(analysis === undefined ? { grade: name } : { analysis: shares(analysis) }, {
    ...(grainSize === undefined ? {} : { grainSize: figureOf(grainSize, '--grain-size') }),
    ...(austenitise === undefined ? {} : { austenitise }),
    ...(temper === undefined ? {} : { temper }),
    ...(hold === undefined ? {} : { hold }),
    ...(times === undefined ? {} : { times }),
  })
  print(
    action.json === true ? json(steel) : steelText(steel, terminal, { units: action.units, sources: action.sources === true }),
  )
}

/** `C=0.40,Mn=0.85` as a job file would hold it. */
function shares(list: string): Record<string, number> {
  const found: Record<string, number> = {}
  for (const part of list.split(/[,;]\s*|\s+(?=[A-Za-z])/u).filter((each) => each.trim() !== '')) {
    const [, symbol, figure] = /^\s*([A-Za-z]{1,2})\s*[=:]\s*(.+?)\s*%?\s*$/u.exec(part) ?? []
    if (symbol === undefined || figure === undefined)
      throw new InputFault(`--analysis: "${part}": write each as C=0.40, with commas between`)
    if (Object.hasOwn(found, symbol)) throw new InputFault(`--analysis: ${symbol} stands there twice; keep one of the two`)
    found[symbol] = figureOf(figure, `--analysis: ${symbol}`)
  }
  if (Object.keys(found).length === 0) throw new InputFault('--analysis: nothing in it; write it as "C=0.40,Mn=0.85"')
  return found
}

function figureOf(typed: string, where: string): number {
  if (!/^[+-]?(?:\d{1,6}(?:\.\d{1,9})?|\.\d{1,9})$/u.test(typed.trim()))
    throw new InputFault(`${where}: "${typed}": a plain figure belongs here, as 0.40`)
  return Number(typed)
}

async function convertCommand(action: Asked<'convert'>, { terminal, print }: Surroundings): Promise<void> {
  const figure = await convertHardness(action.hardness, action.scale as Parameters<typeof convertHardness>[1])
  if (action.json === true) return print(json(figure))
  const scale = action.scale.toUpperCase()
  const shown = (value: number) =>
    String(scale === 'HV' || scale === 'HBW' || scale === 'HB' ? Math.round(value) : Math.round(value * 10) / 10)
  print(
    [
      set(
        `${action.hardness} is about ${shown(figure.value)} ${scale} (${shown(figure.low)} to ${shown(figure.high)}).`,
        terminal.columns,
      ),
      terminal.soft(set(`${BASIS_WORDS[figure.basis]}: ${figure.source}`, terminal.columns)),
    ].join('\n'),
  )
}
