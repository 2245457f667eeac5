import type { Forecast } from '#contract/answers.ts'
import { inOrder, SEVERITY_WORDS } from './figure-text.ts'
import { findingMark } from './finding-marks.ts'
import { element, escapeText } from './svg.ts'

/** What was found, the gravest first, with the number that its mark on the drawing has: what, why, what to do. */
export function findingList(forecast: Forecast): string {
  const findings = inOrder(forecast.findings)
  return element(
    'section',
    { class: 'found' },
    element('h2', {}, 'What was found'),
    findings.length === 0
      ? element('p', {}, 'Nothing stands against it. Do the steps as they are written and prove it with a file.')
      : element(
          'ol',
          { class: 'findings' },
          ...findings.map((finding, i) =>
            element(
              'li',
              {},
              element(
                'svg',
                { class: 'picture', width: 22, height: 22, viewBox: '0 0 22 22', 'aria-hidden': 'true' },
                findingMark(i + 1, finding.severity, 11, 11),
              ),
              element(
                'div',
                {},
                element('p', { class: 'says' }, escapeText(finding.says)),
                element('p', {}, escapeText(finding.because)),
                element('p', { class: 'do' }, escapeText(finding.remedy)),
                ...(finding.caution === undefined
                  ? []
                  : [element('p', { class: 'caution' }, '<b>Take care. </b>', escapeText(finding.caution))]),
                element('p', { class: 'kind' }, `<b>${SEVERITY_WORDS[finding.severity]}</b>`, escapeText(placeWords(finding))),
              ),
            ),
          ),
        ),
  )
  function placeWords({ where }: (typeof findings)[number]): string {
    const places = [where?.zone, where?.step === undefined ? undefined : `step ${where.step + 1}`].filter(
      (each) => each !== undefined,
    )
    return places.length === 0 ? '' : ` · ${places.join(' · ')}`
  }
}
