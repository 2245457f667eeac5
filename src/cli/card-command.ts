import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename, extname } from 'node:path'
import { planLink } from '#contract/plan-link.ts'
import { CardTooSmall, cardPage } from '#report/card.ts'
import { CARD_FORMATS, type CardSize } from '#report/card-sizes.ts'
import type { System } from '#units/length.ts'
import type { Asked } from './actions.ts'
import { InputFault } from './faults.ts'
import { jobFile, writeReport } from './files.ts'
import { forecastWith, signature } from './forecast-command.ts'
import { json } from './json.ts'
import type { Surroundings } from './surroundings.ts'
import { set } from './terminal.ts'

/** `card JOB`: the treatment of one tool on one sheet of paper, as a page to open and print. */
export async function cardCommand(action: Asked<'card'>, around: Surroundings): Promise<void> {
  const { size, units } = action
  const out = action.out ?? `${basename(action.job, extname(action.job))}-card-${size.toLowerCase()}.html`
  if (out === '-' && action.json === true)
    throw new InputFault('--out - and --json both want standard output; name a file with --out, or leave --json out')
  const { job, readFile } = jobFile(action.job)
  const address = action.address === undefined ? await usualAddress() : addressOf(action.address)
  const forecast = await forecastWith(around, job, {
    readFile,
    units,
    grade: action.draft === true ? 'draft' : action.fine === true ? 'fine' : 'normal',
    ...(action.members === undefined ? {} : { members: action.members }),
    ...(action.seed === undefined ? {} : { seed: action.seed }),
  })
  const link = await planLink(address, withShop(job, readFile))
  const html = cardOn(size, () => cardPage(forecast, { size, units, link, generatedBy: signature(around), faceSrc: ownFace() }))
  if (out === '-') return around.print(html.trimEnd())
  writeReport(out, html, '--out')
  around.print(
    action.json === true ? json({ piece: forecast.piece, size, file: out, link }) : said(out, size, units, address, around),
  )
}

function said(out: string, size: CardSize, units: System, address: string, { terminal }: Surroundings): string {
  const { widthMm, heightMm } = CARD_FORMATS[size]
  const sheet =
    units === 'metric' ? `${widthMm} x ${heightMm} mm` : `${(widthMm / 25.4).toFixed(1)} x ${(heightMm / 25.4).toFixed(1)} in`
  return [
    terminal.strong(`The card is in ${out}.`),
    set(`Open it in a browser and print it: paper ${size} (${sheet}), scale 100 %, margins none, on one side.`, terminal.columns),
    set(
      /^https?:\/\/(?:localhost|127\.)/u.test(address)
        ? `Its code opens the plan at ${address}, on this machine while "quenchwright serve" runs; for a phone give the address that the phone reaches: --address http://...`
        : `Its code opens the plan at ${address}.`,
      terminal.columns,
    ),
  ].join('\n')
}

function cardOn(size: CardSize, make: () => string): string {
  try {
    return make()
  } catch (error) {
    if (!(error instanceof CardTooSmall)) throw error
    throw new InputFault(`--size ${size}: ${error.message}${error.take === undefined ? '' : `; write --size ${error.take}`}`)
  }
}

/** Where `serve` answers when it is told nothing else. */
async function usualAddress(): Promise<string> {
  const { USUAL_PORT } = await import('#server/serve.ts')
  return `http://localhost:${USUAL_PORT}/`
}

function addressOf(typed: string): string {
  if (!URL.canParse(typed) || !/^https?:$/u.test(new URL(typed).protocol))
    throw new InputFault(`--address ${typed}: write the address of the bench with its beginning, as http://forge.local:4615/`)
  return new URL(typed).href
}

/** The job with the shop that it names by file written into it: a link carries no files. */
function withShop(job: unknown, readFile: (name: string) => unknown): unknown {
  if (typeof job !== 'object' || job === null || !('shop' in job) || typeof job.shop !== 'string') return job
  const held = readFile(job.shop)
  const inner =
    typeof held === 'object' && held !== null && Object.keys(held).join() === 'shop' && 'shop' in held ? held.shop : held
  return { ...job, shop: inner }
}

/** Source Sans 3 (SIL Open Font License), to travel with the card: it takes less room than most, and prints the same everywhere. */
function ownFace(): string {
  const path = createRequire(import.meta.url).resolve(
    '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2',
  )
  return `url(data:font/woff2;base64,${readFileSync(path).toString('base64')})`
}
