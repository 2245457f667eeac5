import { colourWindow } from '#engine/ensemble/colour-window.ts'
import { COLOUR_SIGMA_K, hotterForColourK } from '#engine/metallurgy/temper-oxide.ts'
import type { ColoursRecord } from '#engine/simulation/records.ts'
import { type Account, drawings } from './account.ts'
import type { EngineFinding } from './finding.ts'
import type { Wording } from './wording.ts'

/** Colours lie some 15 K apart (five old tables); an eye and a hand need about three seconds for one of them. */
const COLOUR_WIDTH_K = 15
const LEAST_SECONDS = 3
/** Steel that wants less than this more for its colour is plain enough [K]. */
const AS_PLAIN_K = 5

/** Colours that do not come, cannot be caught, or say something else on this steel. */
export function coloursUnreliable(account: Account, say: Wording): EngineFinding[] {
  return drawings(account).colours.flatMap((record): EngineFinding[] => {
    if (record.reachedS === null) return [never(record, say)]
    const fast = races(account, record, say)
    return fast.length > 0 ? fast : onRichSteel(account, record, say)
  })
}

function never(record: ColoursRecord, say: Wording): EngineFinding {
  const { hottestEdgeK, stopAtK, shownK, step, byColour } = record
  const asked = byColour ? `the colour of ${say.temperature(stopAtK)}` : say.temperature(stopAtK)
  return {
    id: 'colours-unreliable',
    severity: 'warn',
    where: { step },
    says: `The colour never comes: the heat left in the body takes the edge to ${say.temperature(hottestEdgeK)} only.`,
    because: `It should stop at ${asked}${shownK > 0 ? `, and shows that of ${say.temperature(shownK)} at the most` : ''}; too much was cooled in the bath, or for too long.`,
    remedy: 'Dip less, or lift it sooner; or temper it in the oven.',
    figures: { cause: 'colour-never', temperK: stopAtK },
  }
}

/** What a second costs, as far as it is known. */
function secondsSay(window: ReturnType<typeof colourWindow>, say: Wording): string {
  if (window === undefined || window.lateHrc < 0.05) return ''
  return ` A second late costs ${window.lateHrc.toFixed(1)} HRC there, from ${say.hardness(window.hardnessHrc)}.`
}

/** The aim leaves an eye and a hand too little time, or without an aim the colour itself does. */
function races({ job, outlook }: Account, record: ColoursRecord, say: Wording): EngineFinding[] {
  const window = colourWindow(job, record, outlook)
  const within = window?.within
  const aimS = within === undefined || within.untilS === null ? undefined : within.untilS - within.fromS
  const colourS = colourLastsS(record)
  const seconds = aimS ?? colourS
  if (seconds >= LEAST_SECONDS) return []
  const told =
    aimS === undefined
      ? `At ${say.temperature(record.edgeK)} the edge has one colour for ${say.time(colourS)}`
      : `The edge is within its aim for ${say.time(aimS)}, and rises ${record.risePerS.toFixed(1)} K a second`
  return [
    {
      id: 'colours-unreliable',
      severity: 'warn',
      where: { step: record.step },
      says: 'The colours race to the edge: you will not catch the right one.',
      because: `${told}; an eye and a hand need about ${say.time(LEAST_SECONDS)}.${secondsSay(window, say)}`,
      remedy:
        'Leave it in the bath a little longer, so that less heat stays behind the edge; dip the edge again when it runs away.',
      figures: { cause: 'colour-races', temperK: record.stopAtK, windowS: seconds },
    },
  ]
}

/** How long one colour stands at the edge as it passes the stop [s]. */
function colourLastsS({ edge, reachedS, risePerS }: ColoursRecord): number {
  const after = edge.findIndex(({ timeS }) => timeS >= (reachedS ?? 0))
  const [a, b] = [edge[after - 1], edge[after]]
  const perS = a === undefined || b === undefined || a.shownK === 0 ? risePerS : (b.shownK - a.shownK) / (b.timeS - a.timeS)
  return perS > 0 ? COLOUR_WIDTH_K / perS : Number.POSITIVE_INFINITY
}

function onRichSteel({ steel: { composition, name } }: Account, record: ColoursRecord, say: Wording): EngineFinding[] {
  const hotterK = hotterForColourK(composition)
  if (hotterK < AS_PLAIN_K) return []
  return [
    {
      id: 'colours-unreliable',
      severity: 'note',
      where: { step: record.step },
      says: `The colours lie on ${name}: they are those of plain carbon steel.`,
      because: `It holds ${composition.Cr.toFixed(1)} % chromium and ${composition.Si.toFixed(1)} % silicon, and must be about ${Math.round(hotterK)} K hotter to show the same colour: at the stop the edge is at ${say.temperature(record.edgeK)} and shows the colour of ${say.temperature(record.shownK)}, give or take ${COLOUR_SIGMA_K} K.`,
      remedy: 'Temper it in the oven by a thermometer.',
      figures: { temperK: record.stopAtK },
    },
  ]
}
