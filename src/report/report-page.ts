import type { Forecast, Routes } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { roundLevels } from './contours.ts'
import { crossSectionList } from './cross-section-words.ts'
import { aimWords, chanceText, lengthOf, SOFTEST_HRC } from './figure-text.ts'
import { findingList } from './finding-list.ts'
import { hardnessAlong, KEY, keySample } from './hardness-along.ts'
import { probeTable, zoneTable } from './hardness-tables.ts'
import { heightScaleFor } from './height-scale.ts'
import { pieceDrawing } from './piece-drawing.ts'
import { REPORT_STYLE } from './report-style.ts'
import { skinSection } from './skin-figure.ts'
import { proofList, stepList } from './step-card.ts'
import { element, escapeText } from './svg.ts'
import { CRITICAL_WORDS, timeline } from './timeline.ts'

export interface ReportOptions {
  readonly units: System
  /** Other ways to the same end, when the forecast came out of a plan. */
  readonly routes?: Routes
  /** Said at the foot: program, version, and when, if the caller has a clock. */
  readonly generatedBy: string
}

/** The whole answer as one page that stands by itself: no script, nothing fetched; for a screen, a phone and paper. */
export function reportPage(forecast: Forecast, { units, routes, generatedBy }: ReportOptions): string {
  const body = element(
    'main',
    {},
    heading(forecast),
    element('div', { class: 'bench' }, figures(forecast, units), zoneTable(forecast, units), findingList(forecast)),
    card(forecast, units),
    timeSection(forecast, units),
    rest(forecast, units, routes),
    sources(forecast, generatedBy),
  )
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    element('title', {}, escapeText(`${forecast.piece}: what to do and what will come of it`)),
    `<style>${REPORT_STYLE}</style>`,
    '</head>',
    '<body>',
    GLOW,
    body,
    '</body>',
    '</html>',
    '',
  ].join('\n')
}

/** Colours of glowing steel from dark red (500 °C) to yellow (1100 °C), shared by the time lines of the page. */
const GLOW = element(
  'svg',
  { width: 0, height: 0, style: 'position:absolute', 'aria-hidden': 'true' },
  element(
    'defs',
    {},
    element(
      'linearGradient',
      { id: 'glow', x1: 0, y1: 1, x2: 0, y2: 0 },
      ...(
        [
          [0, '#4a1d16'],
          [0.35, '#8f2a17'],
          [0.6, '#c8481a'],
          [0.8, '#e8802a'],
          [1, '#f4c65a'],
        ] as const
      ).map(([offset, colour]) => element('stop', { offset, 'stop-color': colour })),
    ),
  ),
)

function heading({ piece, steel, zones, findings, grade, members }: Forecast): string {
  const stops = findings.filter(({ severity }) => severity === 'stop').length
  const first = stops === 0 ? '' : `${stops === 1 ? 'One thing' : `${stops} things`} to put right before you light the fire. `
  const worstFirst = [...zones].sort((a, b) => a.chance - b.chance)
  const told = worstFirst
    .slice(0, 2)
    .map(({ name, aim, chance }) => capital(`${name}: ${chanceText(chance)} that all of it comes to ${aimWords(aim)}.`))
  const verdict = [...told, ...(zones.length > 2 ? ['The other zones, which stand better, are below.'] : [])].join(' ')
  return element(
    'header',
    {},
    element('h1', {}, escapeText(piece)),
    element('p', { class: 'lead soft' }, escapeText(`${steel}. ${gradeWords(grade)}, ${members} bars and days tried.`)),
    element('p', { class: 'verdict' }, escapeText(first + verdict)),
  )
  function gradeWords(of: Forecast['grade']): string {
    return of === 'sketch' ? 'A sketch' : of === 'draft' ? 'A quick draft' : of === 'fine' ? 'A fine forecast' : 'Forecast'
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function figures(forecast: Forecast, units: System): string {
  const wide = heightScaleFor(forecast, { acrossPx: 144, tallPx: 400 })
  const paper = heightScaleFor(forecast, { acrossPx: 140, tallPx: 250 })
  const narrow = heightScaleFor(forecast, { acrossPx: 96, tallPx: 380 })
  return element(
    'section',
    { class: 'figure', 'aria-label': 'the piece and its hardness' },
    element(
      'div',
      { class: 'pair wide' },
      pieceDrawing(forecast, { units, scale: wide, id: 'piece-wide', plan: 'full' }),
      hardnessAlong(forecast, { scale: wide, id: 'along-wide', widthPx: 274, nameZones: false }),
    ),
    element(
      'div',
      { class: 'pair paper' },
      pieceDrawing(forecast, { units, scale: paper, id: 'piece-paper', plan: 'full' }),
      hardnessAlong(forecast, { scale: paper, id: 'along-paper', widthPx: 250, nameZones: false }),
    ),
    element(
      'div',
      { class: 'pair narrow' },
      pieceDrawing(forecast, { units, scale: narrow, id: 'piece-narrow', plan: 'narrow' }),
      hardnessAlong(forecast, { scale: narrow, id: 'along-narrow', widthPx: 210, nameZones: true }),
    ),
    element(
      'div',
      { class: 'keys' },
      element(
        'ul',
        { class: 'key' },
        ...KEY.map(({ kind, says }) => element('li', {}, keySample(kind), element('span', {}, escapeText(says)))),
      ),
      element('p', { class: 'note' }, escapeText(drawingNote(forecast))),
    ),
  )
}

function drawingNote({ field, sections = [] }: Forecast): string {
  const values = (field?.tempered_HRC ?? []).map((hrc) => Math.max(hrc, SOFTEST_HRC))
  const least = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const most = values.reduce((a, b) => Math.max(a, b), 0)
  const even = most === SOFTEST_HRC ? `under ${SOFTEST_HRC} HRC` : `${Math.round((least + most) / 2)} HRC`
  const lines =
    values.length === 0
      ? ''
      : roundLevels(least, most).length === 0
        ? `The cut half: ${even} throughout after the last temper. `
        : 'Lines in the cut half: hardness after the last temper, HRC; the darker the harder. '
  const round = sections.some(({ shape }) => shape !== 'round')
    ? 'Flats and corners are drawn as the round that cools alike. '
    : ''
  return `${lines}${round}To scale. Numbered marks: what was found there.`
}

function card(forecast: Forecast, units: System): string {
  const scale = heightScaleFor(forecast, { acrossPx: 130, tallPx: 420 })
  return element(
    'section',
    { class: 'card' },
    element('h2', {}, escapeText(`Card: ${forecast.piece}, ${forecast.steel}`)),
    element(
      'div',
      { class: 'sheet' },
      element('div', { class: 'figure-small' }, pieceDrawing(forecast, { units, scale, id: 'piece-card', plan: 'narrow' })),
      element('div', {}, stepList(forecast), proofList(forecast)),
    ),
  )
}

function timeSection(forecast: Forecast, units: System): string {
  return element(
    'section',
    { class: 'time' },
    element('h2', {}, 'Skin and middle through the treatment'),
    element('div', { class: 'wide-only' }, timeline(forecast, { units, id: 'time-wide', widthPx: 1180, heightPx: 330 })),
    element('div', { class: 'middle-only' }, timeline(forecast, { units, id: 'time-middle', widthPx: 700, heightPx: 300 })),
    element('div', { class: 'narrow-only' }, timeline(forecast, { units, id: 'time-narrow', widthPx: 380, heightPx: 300 })),
    element(
      'p',
      { class: 'note' },
      escapeText(
        `${lengthOf(forecast.curves.x_mm, units)} from the working end; full line the skin, broken line the middle. Every step has its own clock, its early part drawn wide.${onlyFirst(forecast)} ${CRITICAL_WORDS}`,
      ),
    ),
  )
}

/** A step done twice lasts twice as long as what is drawn of it. */
function onlyFirst({ steps, curves }: Forecast): string {
  const drawnS = curves.time_s.at(-1)
  const endS = steps.at(-1)?.end_s
  return drawnS !== undefined && endS !== undefined && drawnS < endS - 60
    ? ' Of a step done more than once, the first time is drawn.'
    : ''
}

function rest(forecast: Forecast, units: System, routes: Routes | undefined): string {
  return element(
    'div',
    { class: 'rest' },
    probeTable(forecast, units),
    crossSectionList(forecast, units),
    skinSection(forecast, units),
    routes === undefined ? '' : routeList(routes),
    assumptionList(forecast),
  )
}

function routeList({ routes, none, refused }: Routes): string {
  return element(
    'section',
    {},
    element('h2', {}, 'Ways to do it in this shop'),
    ...(none === undefined
      ? []
      : [element('p', {}, escapeText(`None meets every aim: ${none.because} The nearest: ${none.nearest}`))]),
    element(
      'ol',
      { class: 'routes' },
      ...routes.map((route, i) =>
        element(
          'li',
          {},
          element('h3', {}, escapeText(`${i + 1}  ${route.says}`)),
          element(
            'p',
            {},
            escapeText(
              `${capital(chanceText(route.chance))} that every zone meets its aim. ${route.holdsGear ? 'Your gear can hold it.' : 'Your gear cannot hold all of it.'}`,
            ),
          ),
        ),
      ),
    ),
    ...(refused.length === 0
      ? []
      : [
          element(
            'p',
            { class: 'note' },
            escapeText(`Left out: ${refused.map(({ says, because }) => `${says} (${because})`).join('; ')}`),
          ),
        ]),
  )
}

function assumptionList({ assumptions }: Forecast): string {
  if (assumptions.length === 0) return ''
  return element(
    'section',
    {},
    element('h2', {}, 'What was taken for granted'),
    element(
      'ul',
      { class: 'said' },
      ...assumptions.map(({ says, because }) =>
        element('li', {}, escapeText(says), ' ', element('span', { class: 'soft' }, escapeText(`Because ${because}`))),
      ),
    ),
  )
}

function sources({ sources: named, members, seed, grade }: Forecast, generatedBy: string): string {
  return element(
    'footer',
    { class: 'sources' },
    element('h2', {}, 'Where the figures come from'),
    element('ul', {}, ...named.map((source) => element('li', {}, escapeText(source)))),
    element(
      'p',
      {},
      escapeText(
        `${generatedBy}; ${grade}, ${members} members, seed ${seed}. Follow your local codes and the makers’ sheets; where they say otherwise, they rule.`,
      ),
    ),
  )
}
