import type { ColourWindow } from '#engine/ensemble/colour-window.ts'
import type { Outlook } from '#engine/ensemble/outlook.ts'
import type { Wording } from '#engine/findings/wording.ts'
import { COLOUR_SIGMA_K } from '#engine/metallurgy/temper-oxide.ts'
import type { ColoursRecord, TemperRecord } from '#engine/simulation/records.ts'
import { celsiusFromKelvin } from '#units/temperature.ts'
import type { Forecast } from './answers.ts'
import { colourOfHeat } from './skin-colours.ts'
import { rounded } from './steel-figures.ts'

/** So near to each other the colour and the heat say the same [K]. */
const SAME_K = 8

/** The colour that bright skin shows, by what tables give it; undefined for none. */
function colourShown(shownK: number): string | undefined {
  if (shownK <= 0) return undefined
  const { name } = colourOfHeat(celsiusFromKelvin(shownK))
  return name === 'none' ? undefined : name
}

/** What to wait for while the colours run, how hot the edge then is, and what there is of time. */
export function coloursSay(record: ColoursRecord, window: ColourWindow | undefined, wording: Wording): string {
  if (record.reachedS === null)
    return `Let the colour run: the heat left in the body brings the edge to ${wording.temperature(record.hottestEdgeK)} and no further.`
  const after = wording.time(record.reachedS)
  return `Let the colour run: ${after} after the lift the edge is at ${wording.temperature(record.edgeK)} and ${showsSay(record, wording)}.${windowSays(window, wording)} Then all of it into the ${record.bath.name}.`
}

/** The same for a card. */
export function coloursLook(record: ColoursRecord, wording: Wording): string {
  const colour = colourShown(record.shownK) ?? 'no colour yet'
  return `${colour} after ${wording.time(record.reachedS ?? 0)}, truly ${wording.temperature(record.edgeK)}`
}

function showsSay({ edgeK, shownK }: ColoursRecord, wording: Wording): string {
  const colour = colourShown(shownK)
  if (colour === undefined) return 'shows no colour yet: it came there faster than a colour does'
  const away = edgeK - shownK
  const give = `give or take ${COLOUR_SIGMA_K} K`
  if (Math.abs(away) < SAME_K) return `shows ${colour}, ${give}`
  const why = away > 0 ? 'the colour lags behind so fast a heat' : 'the colour has had time to go on'
  return `shows ${colour}, which in five minutes would be ${wording.temperature(shownK)}: ${why}; ${give}`
}

function windowSays(window: ColourWindow | undefined, wording: Wording): string {
  if (window === undefined) return ''
  const { hardnessHrc, earlyHrc, lateHrc, within, aim } = window
  const costs =
    earlyHrc < 0.05 && lateHrc < 0.05
      ? ''
      : ` A second early leaves it ${earlyHrc.toFixed(1)} HRC harder, a second late ${lateHrc.toFixed(1)} HRC softer.`
  if (aim === undefined) return ` It has ${wording.hardness(hardnessHrc)} there.${costs}`
  if (within === undefined)
    return ` It has ${wording.hardness(hardnessHrc)} there, and does not come within its aim as far as it was followed.${costs}`
  const until = within.untilS === null ? 'on' : `to ${wording.time(within.untilS)}`
  return ` It has ${wording.hardness(hardnessHrc)} there; it is within its aim from ${wording.time(within.fromS)} ${until}.${costs}`
}

/** What bright steel shows after a temper, which an hour takes further than its heat. */
export function temperShows({ shownK, part, times }: TemperRecord, wording: Wording): string {
  const colour = part === undefined ? colourShown(shownK) : undefined
  if (colour === undefined) return ''
  return ` Rubbed bright before${times > 1 ? ' the first' : ''}, the working end comes out ${colour}, as ${wording.temperature(shownK)} gives in five minutes, give or take ${COLOUR_SIGMA_K} K.`
}

type Colours = NonNullable<Forecast['steps'][number]['colours']>

/** The same in figures. */
export function coloursInFigures(record: ColoursRecord, window: ColourWindow | undefined, along: Outlook['along']): Colours {
  const celsius = (kelvin: number): number => rounded(celsiusFromKelvin(kelvin), 1)
  const colour = colourShown(record.shownK)
  return {
    reached_s: record.reachedS === null ? null : rounded(record.reachedS, 2),
    edge_C: celsius(record.edgeK),
    ...(colour === undefined ? {} : { colour, byColour_C: celsius(record.shownK) }),
    within_K: COLOUR_SIGMA_K,
    rise_K_per_s: rounded(record.risePerS, 2),
    ...(window === undefined
      ? {}
      : {
          edge_HRC: rounded(window.hardnessHrc, 1),
          early_HRC_per_s: rounded(window.earlyHrc, 2),
          late_HRC_per_s: rounded(window.lateHrc, 2),
          ...(window.within === undefined
            ? {}
            : {
                window_s: {
                  from: rounded(window.within.fromS, 2),
                  until: window.within.untilS === null ? null : rounded(window.within.untilS, 2),
                },
              }),
          along: along.map(({ xM, skin }) => ({ x_mm: rounded(1000 * xM, 1), HRC: rounded(skin.temperedHrc.value, 1) })),
        }),
  }
}
