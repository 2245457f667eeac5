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
function crossSectionWords(section: CrossSection, units: System): string {
  const { name, x_mm, corner, face, centre, judged, equivalentRound } = section
  return [
    `${name}, ${sizeWords(section, units)} at ${lengthOf(x_mm, units)}, HRC quenched: corner ${hardnessWords(corner)}; face ${hardnessWords(face)}; middle ${hardnessWords(centre)};`,
    `${offWords(section, units, equivalentRound.across_mm)}.${judged ? ' Zones are judged by its corner and face too.' : ''}`,
  ].join(' ')
}

function alike({ equivalentRound: { centre, face, corner } }: CrossSection): boolean {
  return [corner, face, centre].every(({ quenched_HRC }) => Math.abs(quenched_HRC) < 1)
}

/** The true cross-sections of a piece: a sentence for each whose corner, face or middle the equivalent round misjudges, and one for all the others. */
export function crossSectionLines({ crossSections = [] }: Forecast, units: System): string[] {
  const others = crossSections.filter((each) => alike(each) && !each.judged)
  const told = crossSections.filter((each) => !others.includes(each)).map((each) => crossSectionWords(each, units))
  if (others.length === 0) return told
  const heights = [...new Set(others.map(({ x_mm }) => lengthOf(x_mm, units)))]
  const softest = Math.min(
    ...others.map(({ centre, face, corner }) => Math.min(centre.quenched_HRC, face.quenched_HRC, corner.quenched_HRC)),
  )
  const hardest = Math.max(...others.map(({ corner, face }) => Math.max(corner.quenched_HRC, face.quenched_HRC)))
  const figure = (hrc: number): string => (hrc < SOFTEST_HRC ? `under ${SOFTEST_HRC}` : `${Math.round(hrc)}`)
  const from = figure(softest)
  const range = from === figure(hardest) ? from : `${from} to ${figure(hardest)}`
  return [
    ...told,
    `at ${heights.join(', ')}: corner, face and middle come out as in the equivalent round, within 1 HRC (${range} quenched).`,
  ]
}

/** The true cross-sections of a piece that is not round; nothing where none was solved. */
export function crossSectionList(forecast: Forecast, units: System): string {
  const lines = crossSectionLines(forecast, units)
  if (lines.length === 0) return ''
  return element(
    'section',
    {},
    element('h2', {}, 'Corners and faces of the true section'),
    element('ul', {}, ...lines.map((each) => element('li', {}, escapeText(each)))),
    element('p', { class: 'note' }, 'Best estimates, heat flowing across the section alone; sharp corners.'),
  )
}
