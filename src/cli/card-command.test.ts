import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, expect, test } from 'vitest'
import { jobFromLink } from '#contract/plan-link.ts'
import { readJobText } from '#contract/read-job.ts'
import { run } from './run.ts'
import { terminalOf } from './terminal.ts'

const EXAMPLES = fileURLToPath(new URL('../../examples/', import.meta.url))
const CHISEL = join(EXAMPLES, 'cold-chisel.yaml')
const folder = mkdtempSync(join(tmpdir(), 'quenchwright-card-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

async function card(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = ''
  let err = ''
  const code = await run(['card', ...words], {
    terminal: terminalOf({ columns: 80 }, { LANG: 'C.UTF-8' }),
    write: (text) => {
      out += text
    },
    writeError: (text) => {
      err += text
    },
    errors: process.stderr,
    today: '2025-03-14',
    debug: false,
    stopped: () => Promise.resolve(),
  })
  return { code, out, err }
}

/** A small piece, normalised step after step. */
function pin(name: string, steps: number): string {
  const path = join(folder, name)
  const step = { do: 'normalise', in: 'hearth', to: '870 °C', hold: '2 min' }
  const job = {
    piece: 'pin',
    struck: false,
    steel: { grade: 'O1' },
    profile: [{ shape: 'round', across: '8 mm', length: '20 mm' }],
    shop: { fires: [{ name: 'hearth', kind: 'coal' }], baths: [], ovens: [] },
    process: Array.from({ length: steps }, () => step),
  }
  writeFileSync(path, JSON.stringify(job))
  return path
}

const QUICK = ['--draft', '--members', '2']

test('a page to print, with its own type, and how to print it', async () => {
  const file = join(folder, 'chisel.html')
  const { code, out, err } = await card(CHISEL, '--size', 'A6', '--out', file, ...QUICK)
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(out).toContain(`The card is in ${file}.`)
  expect(out.replaceAll('\n', ' ')).toContain('paper A6 (148 x 105 mm), scale 100 %, margins none, on one side')
  expect(out).toContain('--address')
  const html = readFileSync(file, 'utf8')
  expect(html).toContain('@page{size:148mm 105mm;margin:0}')
  expect(html).toContain('url(data:font/woff2;base64,')
  expect(html).toContain('Quenchwright 0.')
  expect(html.split('class="qw-tick"').length - 1).toBe(5)
})

test('as JSON: where it is, and a link that holds the job with its shop written in', async () => {
  const file = join(folder, 'chisel-letter.html')
  const { code, out } = await card(
    CHISEL,
    '--size',
    'Letter',
    '--units',
    'inch',
    '--out',
    file,
    '--json',
    '--address',
    'http://forge.local:8080/bench#x',
    ...QUICK,
  )
  expect(code).toBe(0)
  const said: { piece: string; size: string; file: string; link: string } = JSON.parse(out)
  expect(said).toMatchObject({ piece: 'cold chisel', size: 'Letter', file })
  expect(said.link).toMatch(/^http:\/\/forge\.local:8080\/bench#plan=1\./u)
  const read = (name: string) => readJobText(readFileSync(join(EXAMPLES, name), 'utf8'), name) as object
  expect(await jobFromLink(said.link)).toEqual({ ...read('cold-chisel.yaml'), shop: read('shop.yaml') })
  expect(readFileSync(file, 'utf8')).toMatch(/\d °F|\d\u00a0°F/u)
})

test('on standard output, the page and nothing else', async () => {
  const { code, out } = await card(pin('pin.json', 1), '--out', '-', ...QUICK)
  expect(code).toBe(0)
  expect(out).toMatch(/^<!doctype html>[\s\S]*<\/html>\n$/u)
  expect(out).toContain('@page{size:148mm 210mm')
})

test('what does not go onto the sheet, and slips: said with the mend, nothing written', async () => {
  const long = pin('long.json', 16)
  const file = join(folder, 'long.html')
  const small = await card(long, '--size', '3x5', '--out', file, ...QUICK)
  expect(small.code).toBe(2)
  expect(small.err).toMatch(/--size 3x5: .* nothing is left out of a card; A4 takes them; write --size A4/u)
  expect(existsSync(file)).toBe(false)
  const short = pin('short.json', 1)
  const slips = [
    [['--size', 'A3'], 'Allowed choices are A6, 3x5, A5, A4, Letter'],
    [['--address', 'forge'], '--address forge: write the address of the bench with its beginning'],
    [['--out', join(folder, 'card.yaml')], 'the name of a page ends in .html'],
    [['--out', '-', '--json'], 'leave --json out'],
  ] as const
  for (const [words, says] of slips) {
    const { code, out, err } = await card(short, ...words, ...QUICK)
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toContain(says)
  }
})
