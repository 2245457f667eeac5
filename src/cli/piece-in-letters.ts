import type { Forecast } from '#contract/answers.ts'
import { aimOf, bareLength, heightOf, inOrder, lengthOf, SOFTEST_HRC } from '#report/figure-text.ts'
import { radiusAt, widestMm } from '#report/height-scale.ts'
import type { System } from '#units/length.ts'
import { clean } from './terminal.ts'

const MOST_ROWS = 20
const LEAST_ROWS = 7
/** A letter is about twice as tall as it is wide. */
const TALL_BY_WIDE = 2
const MOST_HALF = 13
const ZONE_COLUMNS = 17
const HEIGHT_COLUMNS = 9

/**
 * The piece in a few lines: upright, working end down, outside left of the centre line, cut half right of it shaded by
 * hardness; its zones at the left, at the right the findings' numbers, heights, and hardness along it with band and aim.
 */
export function pieceInLetters(forecast: Forecast, units: System, columns: number): string[] {
  const { length_mm, outline_mm } = forecast
  const mmPerRow = Math.max(length_mm / MOST_ROWS, (TALL_BY_WIDE * widestMm(outline_mm)) / MOST_HALF)
  const rows = Math.max(LEAST_ROWS, Math.min(MOST_ROWS, Math.round(length_mm / mmPerRow)))
  const mm = length_mm / rows
  const heights = Array.from({ length: rows }, (_, i) => length_mm - (i + 0.5) * mm)
  const halves = heights.map((x) => Math.max(1, Math.min(MOST_HALF, Math.round((radiusAt(outline_mm, x) / mm) * TALL_BY_WIDE))))
  const widest = Math.max(...halves)
  const chartColumns = Math.max(0, Math.min(44, columns - ZONE_COLUMNS - 2 * widest - 3 - 4 - HEIGHT_COLUMNS))
  const chart = chartColumns >= 16 ? chartOf(forecast, chartColumns) : undefined
  const levelRow = levelRowOf(forecast, heights)
  const line = (zone: string, piece: string, mark: string, height: string, curve: string) =>
    `${zone.padEnd(ZONE_COLUMNS)}${piece}${mark.padStart(4)}${height.padStart(HEIGHT_COLUMNS)} ${curve}`.trimEnd()
  const end = (left: string, middle: string, right: string, half: number) =>
    `${' '.repeat(widest - half)}${left}${'─'.repeat(half)}${middle}${'─'.repeat(half)}${right}${' '.repeat(widest - half)}`
  const body = heights.map((x, i) => {
    const wet = i === levelRow
    const piece = rowOf(forecast, x, halves[i] ?? 1, halves[i - 1], widest, wet)
    return line(
      zoneAt(forecast, x, mm) || (wet ? '≈≈≈'.padStart(ZONE_COLUMNS) : ''),
      piece,
      marksAt(forecast, x, mm),
      wet ? `▽ ${lengthOf(forecast.baths.at(-1)?.line_mm ?? 0, units)}` : '',
      chart?.row(x, mm) ?? '',
    )
  })
  const bath = forecast.baths.at(-1)
  const whole = bath !== undefined && bath.line_mm === null && !/air$/u.test(bath.kind)
  return [
    ...(whole ? [line('≈'.repeat(ZONE_COLUMNS - 1), '≈'.repeat(2 * widest + 3), ' ≈≈≈', '▽ whole', '')] : []),
    line('', end('┌', '┬', '┐', halves[0] ?? 1), '', lengthOf(length_mm, units), chart?.head ?? ''),
    ...body,
    line('', end('└', '┴', '┘', halves.at(-1) ?? 1), '', bareLength(0, units), chart?.foot ?? ''),
  ]
}

function rowOf(forecast: Forecast, x: number, half: number, above: number | undefined, widest: number, wet: boolean): string {
  const tone = toneAt(forecast, x)
  const out = ' '.repeat(widest - Math.max(half, above ?? half))
  const grown = half - (above ?? half)
  const pad = wet ? '≈' : ' '
  const inside = (left: string, right: string) => `${left}┊${right}`
  let row: string
  if (grown >= 2) {
    // A shoulder: the wider part begins here.
    const edge = '─'.repeat(grown - 1)
    row = `${out}┌${edge}┘${inside(' '.repeat(half - grown), tone.repeat(half - grown))}└${edge}┐${out}`
  } else if (grown <= -2) {
    const edge = '─'.repeat(-grown - 1)
    row = `${out}└${edge}┐${inside(' '.repeat(half), tone.repeat(half))}┌${edge}┘${out}`
  } else if (grown === -1) row = `${out} ╲${inside(' '.repeat(half), tone.repeat(half))}╱ ${out}`
  else row = `${out}${grown === 1 ? '╱' : '│'}${inside(' '.repeat(half), tone.repeat(half))}${grown === 1 ? '╲' : '│'}${out}`
  return wet ? row.replace(/^ +| +$/gu, (blanks) => pad.repeat(blanks.length)) : row
}

/** Shade of the cut half by hardness as tempered. */
function toneAt({ along }: Forecast, x: number): string {
  const at = nearest(along, x)
  const hrc = at === undefined ? 0 : (at.skin_tempered_HRC.value + at.centre_tempered_HRC.value) / 2
  return hrc < SOFTEST_HRC + 10 ? ' ' : hrc < 42 ? '░' : hrc < 52 ? '▒' : '▓'
}

function nearest(along: Forecast['along'], x: number): Forecast['along'][number] | undefined {
  return along.reduce<Forecast['along'][number] | undefined>(
    (best, each) => (best === undefined || Math.abs(each.x_mm - x) < Math.abs(best.x_mm - x) ? each : best),
    undefined,
  )
}

function levelRowOf({ baths, length_mm }: Forecast, heights: readonly number[]): number {
  const bath = baths.at(-1)
  if (bath === undefined || bath.line_mm === null || /air$/u.test(bath.kind) || bath.line_mm > length_mm) return -1
  const mm = bath.line_mm
  return heights.reduce((best, x, i) => (Math.abs(x - mm) < Math.abs((heights[best] ?? 0) - mm) ? i : best), 0)
}

/** Name of the zone at its middle row, a bracket along it. */
function zoneAt({ zones }: Forecast, x: number, mm: number): string {
  const zone = zones.find(({ from_mm, to_mm }) => x + mm / 2 > from_mm && x - mm / 2 < to_mm)
  if (zone === undefined) return ''
  const top = x + mm / 2 >= zone.to_mm
  const bottom = x - mm / 2 <= zone.from_mm
  const middle = (zone.from_mm + zone.to_mm) / 2
  const named = Math.abs(x - middle) <= mm / 2 && x - middle > -mm / 2
  const bracket = top && bottom ? '─' : top ? '┌' : bottom ? '└' : '│'
  const room = ZONE_COLUMNS - 3
  const name = clean(zone.name)
  return `${named ? (name.length > room ? `${name.slice(0, room - 2)}..` : name).padStart(room) : ' '.repeat(room)} ${bracket}`
}

/** Numbers of the findings at this height. */
function marksAt(forecast: Forecast, x: number, mm: number): string {
  const here = inOrder(forecast.findings).flatMap((finding, i) => {
    const height = heightOf(finding, forecast)
    if (height === undefined) return []
    const clamped = Math.max(mm / 2, Math.min(height, forecast.length_mm - mm / 2))
    return Math.abs(clamped - x) <= mm / 2 && clamped - x > -mm / 2 ? [i + 1] : []
  })
  return here.length > 2 ? `${here[0]}..` : here.join(',')
}

interface Chart {
  readonly head: string
  readonly foot: string
  row(x: number, mm: number): string
}

const LEAST_HRC = 15
const MOST_HRC = 67

function chartOf({ along, zones }: Forecast, columns: number): Chart {
  const at = (hrc: number) =>
    Math.round(((Math.max(LEAST_HRC, Math.min(MOST_HRC, hrc)) - LEAST_HRC) / (MOST_HRC - LEAST_HRC)) * (columns - 1))
  const ticks = new Array<string>(columns).fill(' ')
  for (const hrc of [20, 30, 40, 50, 60]) ticks.splice(at(hrc) - 1, 2, ...String(hrc))
  return {
    head: ticks.join('').slice(0, columns).trimEnd(),
    foot: `${' '.repeat(Math.max(0, at(40) - 1))}HRC`,
    row(x, mm) {
      const here = nearest(along, x)
      if (here === undefined) return ''
      const { skin_tempered_HRC: skin, centre_tempered_HRC: centre } = here
      const cells = new Array<string>(columns).fill(' ')
      const zone = zones.find(({ from_mm, to_mm }) => x + mm / 2 > from_mm && x - mm / 2 < to_mm)
      const aim = zone === undefined ? undefined : aimOf(zone.aim)
      for (let i = at(skin.low); i <= at(skin.high); i++) cells[i] = '─'
      if (aim?.low !== undefined) cells[at(aim.low)] = '['
      if (aim?.high !== undefined) cells[at(aim.high)] = ']'
      cells[at(centre.value)] = '○'
      cells[at(skin.value)] = '●'
      return cells.join('').trimEnd()
    },
  }
}

/** Key to the marks of the drawing. */
export const LETTER_KEY =
  '● skin, ○ middle as tempered, ─ band of nine in ten, [ ] aim; at the right of the centre line the harder the darker'
