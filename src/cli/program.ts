import { Command, InvalidArgumentError, Option } from 'commander'
import { CARD_SIZES, type CardSize } from '#report/card-sizes.ts'
import type { Action, Shared } from './actions.ts'

const UNBUILT = {
  identify: 'name a bar from evidence',
  stock: 'length of bar to cut',
  rivet: 'rivet length, hole and head',
} as const

/**
 * The command line: what can be asked, and with which words. `act` is told what was asked; reading, working and printing are its.
 */
export function program(version: string, act: (action: Action) => void): Command {
  const root = new Command('quenchwright')
    .description('What to do with a piece of steel in your shop, and what will come of it.')
    .version(version)
    .showHelpAfterError('quenchwright --help lists what can be asked.')
    .configureHelp({ sortSubcommands: false })

  shared(
    root
      .command('forecast')
      .argument('<job>', 'job file with a process, YAML or JSON')
      .description('what will come of a job: hardness skin to core, with what stands against it'),
  )
    .option('--report <file.html>', 'draw it all on one page, for screen and paper')
    .option('--members <n>', 'bars and days to try; more give a steadier band', whole(2, 20_000))
    .option('--seed <n>', 'which bars and days', whole(0, 2 ** 31 - 1))
    .addOption(new Option('--draft', 'coarse and quick').conflicts('fine'))
    .option('--fine', 'fine and slow')
    .action((job: string, options) => act({ ask: 'forecast', job, ...options }))

  shared(
    root
      .command('plan')
      .argument('<job>', 'job file; a process in it is set aside')
      .description('ways to do it with the gear of this shop, best first'),
  )
    .option('--report <file.html>', 'draw the best way on one page')
    .option('--members <n>', 'bars and days to try', whole(2, 20_000))
    .option('--seed <n>', 'which bars and days', whole(0, 2 ** 31 - 1))
    .option('--take <n>', 'take this route', whole(1, 100))
    .option('--out <job.yaml>', 'write the job with the route taken')
    .action((job: string, options) => act({ ask: 'plan', job, ...options }))

  shared(
    root
      .command('card')
      .argument('<job>', 'job file with a process')
      .description('one sheet to carry to the fire: steps, clocks, cautions, blanks; HTML to print from a browser'),
  )
    .addOption(new Option('--size <paper>', 'paper').choices(CARD_SIZES).default('A5' satisfies CardSize))
    .option('--out <file.html>', 'where it goes; - is standard output')
    .option('--address <url>', 'of the bench that its code opens; usually this machine, http://localhost:4615/')
    .option('--members <n>', 'bars and days to try', whole(2, 20_000))
    .option('--seed <n>', 'which bars and days', whole(0, 2 ** 31 - 1))
    .addOption(new Option('--draft', 'coarse and quick').conflicts('fine'))
    .option('--fine', 'fine and slow')
    .action((job: string, options) => act({ ask: 'card', job, ...options }))

  shared(
    root
      .command('steel')
      .argument('[name]', 'grade, as 4140 or O1')
      .description('what a steel is, how it is treated, what temper gives'),
  )
    .option('--analysis <list>', 'per cent by weight, as "C=0.40,Mn=0.85,Cr=0.95"')
    .option('--grain-size <n>', 'ASTM grain size number')
    .option('--austenitise <heat>', 'as "845 C"')
    .option('--temper <heat>', 'one temper to add to the table, as "400 C"')
    .option('--hold <time>', 'how long that temper holds, as "1 h"')
    .option('--times <n>', 'how often', whole(1, 10))
    .action((name: string | undefined, options) => act({ ask: 'steel', name, ...options }))

  shared(
    root
      .command('convert')
      .argument('<hardness>', 'as "52 HRC"')
      .argument('<scale>', 'HRC, HV, HBW or HRB')
      .description('one hardness on another scale'),
  ).action((hardness: string, scale: string, options) => act({ ask: 'convert', hardness, scale, ...options }))

  shared(
    root
      .command('schema')
      .argument('<name>', 'job, steel, forecast, routes, ...')
      .description('JSON Schema of an input or an answer'),
  ).action((name: string, options) => act({ ask: 'schema', name, ...options }))

  shared(root.command('tour').description('plan and forecast of an example, and its page'))
    .option('--report <file.html>', 'where the page goes')
    .action((options) => act({ ask: 'tour', ...options }))

  root
    .command('serve')
    .description('the planning bench, a page to open in a browser on this machine')
    .option('--port <n>', 'where; usually 4615, or a free one where that is taken', whole(0, 65_535))
    .option('--host <address>', 'who may open it; 0.0.0.0 for the whole network, left out for this machine only')
    .action((options) => act({ ask: 'serve', ...options }))

  for (const [name, description] of Object.entries(UNBUILT))
    root
      .command(name, { hidden: true })
      .description(description)
      .argument('[anything...]')
      .allowUnknownOption()
      .helpOption(false)
      .action(() => act({ ask: 'unbuilt', name, description }))
  return root
}

function shared(command: Command): Command {
  return command
    .option('--json', 'one JSON document on standard output and nothing else')
    .addOption(
      new Option('--units <system>', 'units to read in').choices(['metric', 'inch']).default('metric' satisfies Shared['units']),
    )
    .option('--sources', 'name every source')
}

function whole(least: number, most: number): (typed: string) => number {
  return (typed) => {
    const value = /^\d{1,10}$/u.test(typed) ? Number(typed) : Number.NaN
    if (!(value >= least && value <= most))
      throw new InvalidArgumentError(`A whole number from ${least} to ${most} belongs here.`)
    return value
  }
}
