import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { bareLength, lengthOf, SOFTEST_HRC } from './figure-text.ts'
import { element, escapeText } from './svg.ts'

type CrossSection = NonNullable<Forecast['crossSections']>[number]

/** `flat 5 x 12 mm`. */
function sizeWords({ shape, across_mm, width_mm }: CrossSection, units: System): string {
  return width_mm === undefined
    ? `${shape} ${lengthOf(across_mm, units)}`
    : `${shape} ${bareLength(across_mm, units)} x ${lengthOf(width_mm, units)}`
}

/** `52, tempered 48`. */
function hardnessWords({ quenched_HRC, tempered_HRC }: CrossSection['face']): string {
  const said = (hrc: number): string => (hrc < SOFTEST_HRC ? `under ${SOFTEST_HRC}` : `${Math.round(hrc)}`)
  return `${said(quenched_HRC)}, tempered ${said(tempered_HRC)}`
}

/** How far the equivalent round is off, in hardness as quenched and in cooling time. */
function offWords({ equivalentRound: { centre, face, corner } }: CrossSection, units: System, across: number): string {
  const hrc = [corner, face, centre].map(({ quenched_HRC }) => Math.abs(quenched_HRC))
  const name = `its equivalent round of ${lengthOf(across, units)}`
  if (Math.max(...hrc) < 1) return `${name} says the same within 1 HRC`
  return `${name} reads ${[
    ['at the corner', corner.quenched_HRC] as const,
    ['at the face', face.quenched_HRC] as const,
    ['in the middle', centre.quenched_HRC] as const,
  ]
    .filter(([, off]) => Math.abs(off) >= 1)
    .map(([where, off]) => `${Math.round(Math.abs(off))} HRC too ${off > 0 ? 'hard' : 'soft'} ${where}`)
    .join(', ')}`
}

/** One true cross-section in a sentence: corner, face, middle, and what the equivalent round would have said. */
export function crossSectionWords(section: CrossSection, units: System): string {
  const { name, x_mm, corner, face, centre, judged, equivalentRound } = section
  return [
    `${name}, ${sizeWords(section, units)} at ${lengthOf(x_mm, units)}, HRC quenched: corner ${hardnessWords(corner)}; face ${hardnessWords(face)}; middle ${hardnessWords(centre)};`,
    `${offWords(section, units, equivalentRound.across_mm)}.${judged ? ' Zones are judged by its corner and face too.' : ''}`,
  ].join(' ')
}

/** The true cross-sections of a piece that is not round; nothing where none was solved. */
export function crossSectionList({ crossSections = [] }: Forecast, units: System): string {
  if (crossSections.length === 0) return ''
  return element(
    'section',
    {},
    element('h2', {}, 'Corners and faces of the true section'),
    element('ul', {}, ...crossSections.map((each) => element('li', {}, escapeText(crossSectionWords(each, units))))),
    element('p', { class: 'note' }, 'Best estimates, heat flowing across the section alone; sharp corners.'),
  )
}
