import type { Figure, Forecast } from '#contract/answers.ts'
import { crossSectionLines } from '#report/cross-section-words.ts'
import {
  aimWords,
  BASIS_WORDS,
  bandText,
  bareLength,
  chanceText,
  hardnessText,
  inOrder,
  lengthOf,
  SEVERITY_WORDS,
  SOFTEST_HRC,
  temperatureOf,
  vickersText,
} from '#report/figure-text.ts'
import { skinWords } from '#report/skin-figure.ts'
import { headline } from '#report/step-card.ts'
import { formatDuration } from '#units/duration.ts'
import type { System } from '#units/length.ts'
import { LETTER_KEY, pieceInLetters } from './piece-in-letters.ts'
import { clean, set, type Terminal, table } from './terminal.ts'

export interface ForecastText {
  readonly units: System
  readonly sources: boolean
}

/** A forecast for a person at a terminal. */
export function forecastText(forecast: Forecast, terminal: Terminal, { units, sources }: ForecastText): string {
  const { columns, strong, soft } = terminal
  return [
    `${strong(clean(forecast.piece))}, ${clean(forecast.steel)}`,
    ...verdicts(forecast, terminal),
    '',
    ...pieceInLetters(forecast, units, columns),
    '',
    soft(set(`${bathWords(forecast, units)}${LETTER_KEY}.`, columns)),
    '',
    strong('What to expect'),
    ...zoneLines(forecast, units, terminal),
    ...probeLines(forecast, units, terminal),
    ...sectionLines(forecast, units, terminal),
    ...skinLines(forecast, units, terminal),
    '',
    strong('What was found'),
    ...findingLines(forecast, terminal),
    '',
    strong('What to do'),
    ...stepLines(forecast, terminal),
    '',
    ...footLines(forecast, terminal, sources),
  ].join('\n')
}

function verdicts({ zones }: Forecast, { columns }: Terminal): string[] {
  return zones.map(({ name, chance, aim }) =>
    set(`${name}: ${chanceText(chance)} that all of it comes to ${aimWords(aim)}.`, columns),
  )
}

function bathWords({ baths }: Forecast, units: System): string {
  const bath = baths.at(-1)
  if (bath === undefined) return ''
  const named = bath.name === bath.kind ? bath.name : `${bath.name}, ${bath.kind}`
  if (/air$/u.test(bath.kind)) return `Cools in ${named}. `
  return `Bath: ${named}, ${temperatureOf(bath.start_C, units)}, ends at ${temperatureOf(bath.end_C, units)}. `
}

function zoneLines({ zones }: Forecast, units: System, terminal: Terminal): string[] {
  if (zones.length === 0)
    return [set('No zones were asked for. Name one in the job (zones:) to get its chance.', terminal.columns)]
  const rows = zones.map((zone) => [
    zone.name,
    `${bareLength(zone.from_mm, units)} to ${lengthOf(zone.to_mm, units)}`,
    `${aimWords(zone.aim)}${zone.assumed ? ' *' : ''}`,
    bare(zone.quenched_HRC),
    bare(zone.tempered_HRC, zone.tempered_HV),
  ])
  const first = zones[0]
  return [
    table(['zone', 'where', 'aim', 'quenched, HRC', 'tempered, HRC'], rows, terminal),
    terminal.soft(
      set(
        `Nine in ten between the figures in brackets. ${zones.some(({ assumed }) => assumed) ? '* assumed, nobody asked. ' : ''}${
          first === undefined
            ? ''
            : `Quenched: ${BASIS_WORDS[first.quenched_HRC.basis]}; tempered: ${BASIS_WORDS[first.tempered_HRC.basis]}.`
        }`,
        terminal.columns,
      ),
    ),
  ]
}

/** `52 (50 to 54)`; the head of the column names the scale. */
function bare(figure: Figure, vickers?: Figure): string {
  const short = hardnessText(figure).replace(/ HRC$/u, '')
  const soft = vickers !== undefined && figure.low < SOFTEST_HRC + 2 ? `, ${vickersText(vickers)}` : ''
  return (figure.high < SOFTEST_HRC ? short : `${short} (${bandText(figure)})`) + soft
}

function probeLines({ probes }: Forecast, units: System, terminal: Terminal): string[] {
  if (probes.length === 0) return []
  const rows = probes.map((probe) => [
    probe.name,
    temperatureOf(probe.peak_C, units),
    probe.cooling_800_500_s === null ? 'never' : formatDuration(probe.cooling_800_500_s),
    bare(probe.quenched_HRC),
    bare(probe.tempered_HRC),
  ])
  return ['', table(['place', 'hottest', '800-500 °C', 'quenched, HRC', 'tempered, HRC'], rows, terminal)]
}

/** What the true cross-sections say beside their equivalent rounds. */
function sectionLines(forecast: Forecast, units: System, { columns }: Terminal): string[] {
  return crossSectionLines(forecast, units).map((each) => set(`Section: ${each}`, columns))
}

/** One line for the skin of each zone: what lies over the steel that the figures above speak of. */
function skinLines({ skin = [] }: Forecast, units: System, { columns }: Terminal): string[] {
  return skin.map((each) => set(`Skin of the ${skinWords(each, units)}`, columns))
}

function findingLines(forecast: Forecast, { columns, strong }: Terminal): string[] {
  if (forecast.findings.length === 0)
    return [set('Nothing stands against it. Do the steps as they are written and prove it with a file.', columns)]
  return inOrder(forecast.findings).flatMap((finding, i) => {
    const said = set(`${SEVERITY_WORDS[finding.severity]}: ${finding.says}`, columns, `${String(i + 1).padStart(2)}  `)
    return [
      ...said.split('\n').map(strong),
      set(finding.because, columns, '    '),
      set(finding.remedy, columns, '  → '),
      ...(finding.caution === undefined ? [] : [set(`Take care: ${finding.caution}`, columns, '  ! ')]),
    ]
  })
}

function stepLines({ steps }: Forecast, { columns, strong, soft }: Terminal): string[] {
  return steps.flatMap((step, i) => {
    const title = `${String(i + 1).padStart(2)}  ${clean(headline(step))}`
    const clock = formatDuration(step.end_s - step.start_s)
    return [
      strong(title) + soft(clock.padStart(Math.max(clock.length + 2, columns - title.length))),
      set(step.says, columns, '    '),
      ...step.cautions.map((caution, k) => set(k === 0 ? `Take care. ${caution}` : caution, columns, '  ! ')),
    ]
  })
}

function footLines(
  { assumptions, sources, members, seed, grade }: Forecast,
  { columns, soft }: Terminal,
  wanted: boolean,
): string[] {
  const taken =
    assumptions.length === 0 ? [] : [soft(set(`Taken for granted: ${assumptions.map(({ says }) => says).join(' ')}`, columns))]
  if (!wanted)
    return [
      ...taken,
      soft(
        set(
          `${members} bars and days tried (seed ${seed}, ${grade}). --sources names every source; --report FILE.html draws it all.`,
          columns,
        ),
      ),
    ]
  return [
    soft('Taken for granted'),
    ...assumptions.map(({ says, because }) => set(`${says} Because ${because}`, columns, '- ')),
    '',
    soft('Sources'),
    ...sources.map((source) => set(`${source}`, columns, '- ')),
    '',
    soft(`${members} bars and days tried (seed ${seed}, ${grade}).`),
  ]
}
