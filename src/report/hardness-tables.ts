import type { Forecast } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import type { System } from '#units/length.ts'
import {
  aimWords,
  BASIS_WORDS,
  bareLength,
  besideText,
  chanceText,
  hardnessText,
  lengthOf,
  temperatureOf,
} from './figure-text.ts'
import { element, escapeText } from './svg.ts'

/** Zone by zone: as quenched, tempered, and the chance that all of it meets its aim. */
export function zoneTable({ zones }: Forecast, units: System): string {
  if (zones.length === 0)
    return element(
      'section',
      { class: 'zones' },
      element('h2', {}, 'What to expect'),
      element('p', {}, 'No zones were asked for. Name one in the job to get its chance.'),
    )
  const heads = ['Zone', 'As quenched', 'Tempered', 'Chance']
  return element(
    'section',
    { class: 'zones' },
    element('h2', {}, 'What to expect, zone by zone'),
    element(
      'table',
      { class: 'stack' },
      element('thead', {}, element('tr', {}, ...heads.map((head) => element('th', { scope: 'col' }, head)))),
      element(
        'tbody',
        {},
        ...zones.map((zone) => {
          return element(
            'tr',
            {},
            element(
              'th',
              { scope: 'row' },
              escapeText(zone.name),
              element(
                'small',
                {},
                escapeText(
                  `${bareLength(zone.from_mm, units)} to ${lengthOf(zone.to_mm, units)}; aim ${aimWords(zone.aim)}${zone.assumed ? ' (assumed)' : ''}`,
                ),
              ),
            ),
            cell(heads[1] ?? '', `<b>${escapeText(hardnessText(zone.quenched_HRC))}</b>`, ` ${besideText(zone.quenched_HRC)}`),
            cell(
              heads[2] ?? '',
              `<b>${escapeText(hardnessText(zone.tempered_HRC))}</b>`,
              ` ${besideText(zone.tempered_HRC, zone.tempered_HV)}`,
            ),
            element(
              'td',
              { class: 'chance', 'data-head': heads[3] ?? '' },
              escapeText(chanceText(zone.chance)),
              meter(zone.chance),
            ),
          )
        }),
      ),
    ),
    element(
      'p',
      { class: 'note' },
      escapeText(
        `Nine in ten pieces are thought to lie between the two figures. Quenched: ${basis(zones[0]?.quenched_HRC.basis)}; tempered: ${basis(zones[0]?.tempered_HRC.basis)}.`,
      ),
    ),
  )
}

function basis(kind: keyof typeof BASIS_WORDS | undefined): string {
  return kind === undefined ? '' : BASIS_WORDS[kind]
}

function cell(head: string, markup: string, small: string): string {
  return element('td', { 'data-head': head }, markup, element('small', {}, escapeText(small)))
}

/** Ten boxes, as many filled as pieces in ten would come out. */
function meter(chance: number): string {
  const on = Math.round(chance * 10)
  return element(
    'svg',
    { class: 'meter', width: 111, height: 10, viewBox: '0 0 111 10', 'aria-hidden': 'true' },
    ...Array.from({ length: 10 }, (_, i) =>
      element('rect', { x: i * 11 + 0.5, y: 0.5, width: 9, height: 9, class: i < on ? 'on' : 'off' }),
    ),
  )
}

/** The places that the job asks about. */
export function probeTable({ probes }: Forecast, units: System): string {
  if (probes.length === 0) return ''
  const heads = ['Place', 'Hottest', '800 to 500 °C in the quench', 'As quenched', 'Tempered']
  return element(
    'section',
    {},
    element('h2', {}, 'Places you asked about'),
    element(
      'table',
      { class: 'stack' },
      element('thead', {}, element('tr', {}, ...heads.map((head) => element('th', { scope: 'col' }, head)))),
      element(
        'tbody',
        {},
        ...probes.map((probe) =>
          element(
            'tr',
            {},
            element(
              'th',
              { scope: 'row' },
              escapeText(probe.name),
              element('small', {}, escapeText(`${lengthOf(probe.x_mm, units)} up, ${lengthOf(probe.r_mm, units)} from the axis`)),
            ),
            cell(heads[1] ?? '', escapeText(temperatureOf(probe.peak_C, units)), ''),
            cell(
              heads[2] ?? '',
              probe.cooling_800_500_s === null ? 'never crossed' : escapeText(formatDuration(probe.cooling_800_500_s)),
              '',
            ),
            cell(
              heads[3] ?? '',
              `<b>${escapeText(hardnessText(probe.quenched_HRC))}</b>`,
              ` ${besideText(probe.quenched_HRC, probe.quenched_HV)}`,
            ),
            cell(
              heads[4] ?? '',
              `<b>${escapeText(hardnessText(probe.tempered_HRC))}</b>`,
              ` ${besideText(probe.tempered_HRC, probe.tempered_HV)}`,
            ),
          ),
        ),
      ),
    ),
  )
}
