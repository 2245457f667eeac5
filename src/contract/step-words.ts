import type { ColourWindow } from '#engine/ensemble/colour-window.ts'
import type { Wording } from '#engine/findings/wording.ts'
import type { HardnessAim } from '#engine/simulation/process.ts'
import type { HeatRecord, QuenchRecord, StepRecord, TemperRecord } from '#engine/simulation/records.ts'
import { coloursSay, temperShows } from './colour-words.ts'
import { coolingSays } from './cooling-words.ts'
import { loadSays, rowSays } from './load-words.ts'

/** An aim as a job file would write it. */
export function aimInWords({ lowHrc, highHrc }: HardnessAim): string {
  if (lowHrc !== undefined && highHrc !== undefined) return `${lowHrc}..${highHrc} HRC`
  if (lowHrc !== undefined) return `at least ${lowHrc} HRC`
  return `at most ${highHrc ?? 0} HRC`
}

/** One step, done so many times, in the words that one smith would use to another; `window`: what there is of time for colours that run. */
export function stepSays(record: StepRecord, times: number, wording: Wording, window?: ColourWindow): string {
  switch (record.kind) {
    case 'heat':
    case 'normalise':
    case 'anneal':
    case 'stress-relieve':
      return heatSays(record, times, wording)
    case 'carry':
      return `To the quench in ${wording.time(record.endS - record.startS)}.${coolingOnTheWay(record.coldestSurfaceK, wording)}`
    case 'quench':
      return quenchSays(record, wording)
    case 'temper':
      return temperSays(record, wording)
    case 'warm-bath':
      return `Warm the ${record.bath.name} with a hot bar: ${wording.temperature(record.bathStartK)} to ${wording.temperature(record.bathEndK)}. Stir it even.`
    case 'run-colours':
      return coloursSay(record, window, wording)
  }
}

function heatSays(record: HeatRecord, times: number, wording: Wording): string {
  const where =
    record.part === undefined
      ? ''
      : `, ${wording.length(record.part.fromM)} to ${wording.length(record.part.toM)} from the working end`
  const outside =
    record.outsideUpS === null
      ? `This fire never gets it there.`
      : `Outside at heat after ${wording.time(record.outsideUpS)}; ${middleSays(record, wording)}.`
  const hold = record.holdS > 0 ? `, hold ${wording.time(record.holdS)}` : ''
  const verb = { heat: 'Heat', normalise: 'Normalise: heat', anneal: 'Anneal: heat', 'stress-relieve': 'Relieve stress: heat' }[
    record.kind
  ]
  const bought = record.kind === 'normalise' || record.kind === 'anneal' ? refinementSays(record) : ''
  const after = record.cooled === undefined ? '' : ` ${coolingSays(record.cooled, wording)}${bought}`
  return `${verb} in the ${record.fire.name} to ${wording.temperature(record.toK)}${where}${hold}. ${outside}${loadSays(record, wording)}${after}${times > 1 ? ` ${times === 2 ? 'Twice' : `${times} times`} in all.` : ''}`
}

const LIES = {
  martensite: 'as hardened before',
  fine: 'in fine pearlite',
  rolled: 'in pearlite as rolled',
  spheroidised: 'in globules',
} as const

/** What a trip over Ac3 does to grain and carbides, by figures; each trip after the first buys half of what the one before did. */
function refinementSays({ refinement }: HeatRecord): string {
  if (refinement === undefined) return ''
  const { grainNumber, afterEach, prior, after, dissolvingS } = refinement
  const each = afterEach.map((number) => number.toFixed(1)).join(', ')
  const finest = afterEach[afterEach.length - 1] ?? grainNumber
  const lessPct = Math.round(100 * (1 - 1 / 1.083 ** Math.max(0, finest - Math.max(7, grainNumber))))
  const shallow = lessPct < 3 ? '' : `; so fine, it hardens perhaps ${lessPct} % less deep`
  const grain = ` Grain: ASTM ${grainNumber.toFixed(1)}, then ${each}${shallow}.`
  const carbides =
    prior === after
      ? ''
      : ` The carbide, ${LIES[prior]} before, lies ${LIES[after]}: it dissolves in about ${(dissolvingS[1] / dissolvingS[0]).toFixed(2)} of the time.`
  return grain + carbides
}

function middleSays(record: HeatRecord, wording: Wording): string {
  if (record.middleUpS === null) return `the middle is still at ${wording.temperature(record.coldestK)} when the hold ends`
  if (record.middleUpS < 5) return 'the middle comes up with it'
  return `the middle is up ${wording.time(record.middleUpS)} later`
}

function coolingOnTheWay(coldestSurfaceK: number, wording: Wording): string {
  return Number.isFinite(coldestSurfaceK)
    ? ` The thinnest skin is at ${wording.temperature(coldestSurfaceK)} when it goes in.`
    : ''
}

function quenchSays(record: QuenchRecord, wording: Wording): string {
  const air = record.bath.kind === 'still air' || record.bath.kind === 'moving air'
  const stay = wording.time(record.endS - record.startS)
  if (air) return `Stand it clear in ${record.bath.name} for ${stay}; nothing wet near it.`
  const depth =
    record.depthM === null ? 'whole' : `${wording.length(record.depthM)} deep, moving up and down so that no line stands`
  return `Into the ${record.bath.name} (${wording.temperature(record.bathStartK)}), ${depth}, ${stay}. The bath ends at ${wording.temperature(record.bathEndK)}.${rowSays(record, wording)}`
}

function temperSays(record: TemperRecord, wording: Wording): string {
  const rounds = record.times === 1 ? '' : `, ${record.times === 2 ? 'twice' : `${record.times} times`}, cold between`
  if (record.part !== undefined)
    return `Draw ${wording.length(record.part.fromM)} to ${wording.length(record.part.toM)} in the ${record.fire?.name ?? record.oven?.name ?? 'fire'} to ${wording.temperature(record.setK)}, ${wording.time(record.holdS)}, with the rest kept wet.`
  const truth = Math.abs(record.trueK - record.setK) < 1 ? '' : ` (truly ${wording.temperature(record.trueK)})`
  return `Temper in the ${record.oven?.name ?? record.fire?.name ?? 'oven'} at ${wording.temperature(record.setK)}${truth}, ${wording.time(record.holdS)} from when the middle is up, ${wording.time(record.middleUpS)} after it goes in${rounds}.${temperShows(record, wording)}`
}
