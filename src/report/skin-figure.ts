import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { hardnessText, SOFTEST_HRC } from './figure-text.ts'
import { element, escapeText, label, line, pathThrough, picture } from './svg.ts'

type Skin = NonNullable<Forecast['skin']>[number]

/** A depth under the skin: hundredths of a millimetre, or thousandths of an inch. */
function depthOf(mm: number, units: System): string {
  return units === 'inch' ? `${Number((mm / 25.4).toFixed(3))} in` : `${Number(mm.toFixed(2))} mm`
}

/** Scale, carbon, hardness and file of one skin in a sentence or two. */
export function skinWords(
  { where, scale_mm, metalLost_mm, decarburised_mm, grindOff_mm, surface_HRC, fileReads }: Skin,
  units: System,
): string {
  const at = where.zone ?? `hottest place, ${depthOf(where.x_mm, units)} from the working end`
  const scale =
    scale_mm.value >= 0.005
      ? `${depthOf(scale_mm.value, units)} of scale`
      : metalLost_mm.value >= 0.005
        ? `${depthOf(metalLost_mm.value, units)} gone into scale`
        : 'hardly any scale'
  if (decarburised_mm.value < 0.01) return `${at}: ${scale}, and the carbon is kept. ${fileReads.says}`
  const grind =
    grindOff_mm.value < 0.01
      ? 'no softer for it'
      : `${hardnessText(surface_HRC)} at the surface, as hard as underneath ${depthOf(grindOff_mm.value, units)} down (${depthOf(grindOff_mm.low, units)} to ${depthOf(grindOff_mm.high, units)})`
  return `${at}: ${scale}, carbon lost to ${depthOf(decarburised_mm.value, units)}; ${grind}. ${fileReads.says}`
}

/** What the fires did to the skin, in words and a little picture for each zone; nothing where no fire was looked into. */
export function skinSection({ skin }: Forecast, units: System): string {
  if (skin === undefined || skin.length === 0) return ''
  return element(
    'section',
    { class: 'skin' },
    element('h2', {}, 'The skin under the scale'),
    ...skin.map((each, i) =>
      element('div', {}, element('p', {}, escapeText(skinWords(each, units))), skinPicture(each, units, `skin-${i}`)),
    ),
    element(
      'p',
      { class: 'note' },
      'Hardness everywhere else is that of the steel underneath. Full line: finished hardness by depth, with its band; broken line: carbon, as a share of the bar`s. Heats at the anvil and the bark of the bar are not counted.',
    ),
  )
}

const WIDE = 320
const HIGH = 150
const LEFT = 34
const TOP = 10
const RIGHT = WIDE - 10
const FOOT = HIGH - 26
const HARDEST = 70

function skinPicture({ profile, where }: Skin, units: System, id: string): string {
  const deepest = Math.max(...profile.map(({ depth_mm }) => depth_mm), 0.1)
  const bulk = Math.max(...profile.map(({ carbon_wtpct }) => carbon_wtpct.value))
  const x = (mm: number): number => LEFT + ((RIGHT - LEFT) * mm) / deepest
  const y = (hrc: number): number => FOOT - ((FOOT - TOP) * (Math.max(hrc, SOFTEST_HRC) - SOFTEST_HRC)) / (HARDEST - SOFTEST_HRC)
  const share = (carbon: number): number => FOOT - ((FOOT - TOP) * carbon) / (bulk * 1.1)
  const band = [
    ...profile.map(({ depth_mm, hardness_HRC }): [number, number] => [x(depth_mm), y(hardness_HRC.high)]),
    ...[...profile].reverse().map(({ depth_mm, hardness_HRC }): [number, number] => [x(depth_mm), y(hardness_HRC.low)]),
  ]
  const surface = profile[0]
  const sound = profile[profile.length - 1]
  return picture(
    id,
    { widthPx: WIDE, heightPx: HIGH },
    `Hardness by depth, ${where.zone ?? 'hottest place'}`,
    surface === undefined || sound === undefined
      ? ''
      : `From ${hardnessText(surface.hardness_HRC)} at the surface to ${hardnessText(sound.hardness_HRC)} at ${depthOf(sound.depth_mm, units)}.`,
    ...[20, 40, 60].map((hrc) => line(LEFT, y(hrc), RIGHT, y(hrc), 'grid')),
    ...[20, 40, 60].map((hrc) => label(LEFT - 6, y(hrc) + 4, String(hrc), { class: 'soft', 'text-anchor': 'end' })),
    element('path', { d: pathThrough(band, true), fill: 'currentColor', 'fill-opacity': 0.12 }),
    element('path', {
      d: pathThrough(profile.map(({ depth_mm, hardness_HRC }) => [x(depth_mm), y(hardness_HRC.value)])),
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': 2,
    }),
    element('path', {
      d: pathThrough(profile.map(({ depth_mm, carbon_wtpct }) => [x(depth_mm), share(carbon_wtpct.value)])),
      fill: 'none',
      stroke: 'currentColor',
      'stroke-dasharray': '4 3',
    }),
    line(LEFT, FOOT, RIGHT, FOOT, 'grid'),
    label(LEFT, FOOT + 16, '0', { class: 'soft' }),
    label(RIGHT, FOOT + 16, depthOf(deepest, units), { class: 'soft', 'text-anchor': 'end' }),
  )
}
