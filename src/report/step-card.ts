import type { Forecast } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import { aimWords, bandText, hardnessText } from './figure-text.ts'
import { element, escapeText } from './svg.ts'

/** What is filled in by hand at a step, by what is done there. */
const BLANKS: Readonly<Record<string, readonly string[]>> = {
  heat: ['at heat at', 'read', 'colour seen'],
  normalise: ['read', 'times done'],
  anneal: ['read', 'shut in at'],
  'stress-relieve': ['read', 'out at'],
  carry: ['took'],
  quench: ['bath before', 'bath after', 'out at'],
  temper: ['oven read', 'in at', 'middle up at', 'out at'],
  'warm-bath': ['bath before', 'bath after'],
  'run-colours': ['colour seen', 'took'],
}

/** A quench in air has no bath to read. */
const IN_AIR = ['stood at', 'black at', 'hand-warm at']

/** The steps as a card to carry to the fire: a box to tick, the clock, the cautions at their step, blanks to fill in. */
export function stepList({ steps, baths }: Forecast): string {
  const inAir = new Set(baths.filter(({ kind }) => kind.endsWith('air')).map(({ step }) => step))
  return element(
    'ol',
    { class: 'steps' },
    ...steps.map((step, i) =>
      element(
        'li',
        {},
        element('span', { class: 'box', role: 'img', 'aria-label': 'box to tick' }, ''),
        element(
          'div',
          {},
          element(
            'h3',
            {},
            element('span', {}, escapeText(`${i + 1}  ${headline(step)}`)),
            element('span', { class: 'clock' }, escapeText(formatDuration(step.end_s - step.start_s))),
          ),
          element('p', {}, escapeText(step.says)),
          ...(step.cautions.length === 0
            ? []
            : [element('p', { class: 'caution' }, '<b>Take care. </b>', escapeText(step.cautions.join(' ')))]),
          blanks(inAir.has(i) ? IN_AIR : (BLANKS[step.do] ?? ['done at'])),
        ),
      ),
    ),
  )
}

/** `Quench, oil drum`. */
export function headline({ do: does, in: where }: Forecast['steps'][number]): string {
  const words = does.replaceAll('-', ' ')
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${where === undefined ? '' : `, ${where}`}`
}

/** What came of it, beside what was forecast; for the shop's book. */
export function proofList({ zones }: Forecast): string {
  return element(
    'div',
    { class: 'proof' },
    element('h3', {}, 'Proof'),
    ...zones.map(({ name, aim, tempered_HRC }) =>
      element(
        'div',
        { class: 'blanks' },
        element(
          'span',
          {},
          escapeText(`${name}: aim ${aimWords(aim)}, forecast ${hardnessText(tempered_HRC)} (${bandText(tempered_HRC)})`),
        ),
        blank('file skates at'),
        blank('tester'),
      ),
    ),
    blanks(['cracks looked for', 'done by', 'date']),
  )
}

function blanks(names: readonly string[]): string {
  return element('div', { class: 'blanks' }, ...names.map(blank))
}

function blank(name: string): string {
  return element('span', { class: /colour|by|cracks/u.test(name) ? 'blank wide' : 'blank' }, escapeText(name), '<i></i>')
}
