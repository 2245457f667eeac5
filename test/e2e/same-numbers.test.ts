import { execFile } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, describe, expect, test } from 'vitest'
import type { Figure, Forecast } from '#contract/answers.ts'
import { forecast } from '#contract/index.ts'
import { readJobText } from '#contract/read-job.ts'
import { jobFileText } from '#contract/write-job.ts'
import { HAS_BROWSER } from './browser.ts'
import { onThePage } from './on-the-page.ts'
import { benchPage } from './pages/bench-page.ts'
import { eachSays } from './pages/eyes.ts'
import { piecePage } from './pages/piece-page.ts'
import { stage } from './pages/stage.ts'
import { exampleText } from './pages/workshop.ts'

const ROOT = join(import.meta.dirname, '..', '..')

/** The chisel of the examples with its shop written in: one file that holds everything. */
function chisel(): { readonly job: object; readonly text: string } {
  const job = {
    ...(readJobText(exampleText('cold-chisel.yaml'), 'chisel') as object),
    shop: readJobText(exampleText('shop.yaml'), 'shop'),
  }
  return { job, text: jobFileText(job) }
}

/** As the page's table has it. */
const cell = ({ value, low, high }: Figure): string => [value, low, high].map(Math.round).join(' ')
const figuresIn = (words: string): string[] =>
  [...words.matchAll(/(\d+) \((\d+) to (\d+)\)/gu)].map((found) => found.slice(1).join(' '))

describe.skipIf(!HAS_BROWSER)('one job file', () => {
  const device = onThePage()
  const folder = mkdtempSync(join(tmpdir(), 'one-job-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  test('gives the same numbers on the page, in the library and on the command line', async () => {
    const { job, text } = chisel()
    const file = join(folder, 'chisel.yaml')
    writeFileSync(file, text)
    const page = await device.open(undefined, '/bench')
    await benchPage(page).jobFile(file)
    const { stdout } = await promisify(execFile)(
      process.execPath,
      ['--conditions=source', '--import', 'tsx', 'src/cli/main.ts', 'forecast', file, '--json', '--units', 'metric'],
      { cwd: ROOT, env: { ...process.env, NO_COLOR: '1' }, maxBuffer: 64_000_000 },
    )
    const told = JSON.parse(stdout) as Forecast
    const answer = forecast(job, { units: 'metric' })
    expect(told).toEqual(JSON.parse(JSON.stringify(answer)))

    await piecePage(page).fullAnswer()
    const around = stage(page)
    const zones = await around.zoneWords()
    expect(zones.map(figuresIn)).toEqual(answer.zones.map(({ tempered_HRC }) => [cell(tempered_HRC)]))
    expect(zones.map((words) => /chance (?:over |under )?(\d+) in 100$/u.exec(words)?.[1])).toEqual(
      answer.zones.map(({ chance }) => String(Math.min(99, Math.max(1, Math.round(chance * 100))))),
    )
    const rows = (await around.alongRows()).map(figuresIn)
    const shown = answer.along.filter((_, i, all) => i % 4 === 0 || i === all.length - 1)
    expect(rows).toEqual(
      shown.map((row) =>
        [row.skin_quenched_HRC, row.skin_tempered_HRC, row.centre_quenched_HRC, row.centre_tempered_HRC].map(cell),
      ),
    )
    const side = await piecePage(page).side('Treatment')
    const found = await eachSays(side.locator('.findings-list li > button'))
    expect(found.toSorted()).toEqual(answer.findings.map((finding) => finding.says).toSorted())
  }, 180_000)
})
