import { shortCautionsOf } from '#engine/findings/cautions.ts'
import type { Wording } from '#engine/findings/wording.ts'
import type { Length } from '#engine/simulation/process.ts'
import type { Cooled, HeatRecord, QuenchRecord, StepRecord, TemperRecord } from '#engine/simulation/records.ts'
import type { Forecast } from './answers.ts'
import { coloursLook } from './colour-words.ts'
import { glowAt } from './glow-colours.ts'

type InShort = NonNullable<Forecast['steps'][number]['inShort']>

/** A step in as few words as it can be done by, for a card: what to do beside its gear's name, what to look for, what to mind. */
export function stepInShort(record: StepRecord, times: number, wording: Wording): InShort {
  const { does, look } = wordsOf(record, wording)
  return {
    does: times > 1 ? `${does}; ${timesInWords(times)}` : does,
    ...(look === undefined ? {} : { look }),
    cautions: shortCautionsOf(record, wording),
  }
}

/** `twice`, `3 times`. */
export function timesInWords(times: number): string {
  return times === 2 ? 'twice' : `${times} times`
}

interface Words {
  readonly does: string
  readonly look?: string
}

function wordsOf(record: StepRecord, wording: Wording): Words {
  switch (record.kind) {
    case 'heat':
    case 'normalise':
    case 'anneal':
    case 'stress-relieve':
      return heat(record, wording)
    case 'carry':
      return {
        does: `at the quench in ${wording.time(record.endS - record.startS)}`,
        ...(Number.isFinite(record.coldestSurfaceK)
          ? { look: `thinnest skin then ${wording.temperature(record.coldestSurfaceK)}` }
          : {}),
      }
    case 'quench':
      return quench(record, wording)
    case 'temper':
      return temper(record, wording)
    case 'warm-bath':
      return {
        does: `hot bar in, ${wording.temperature(record.bathStartK)} to ${wording.temperature(record.bathEndK)}, stir`,
      }
    case 'run-colours':
      return record.reachedS === null
        ? {
            does: 'let the colour run',
            look: `it stops short: the edge comes to ${wording.temperature(record.hottestEdgeK)} and no further`,
          }
        : {
            does: `let the colour run, then all of it in`,
            look: coloursLook(record, wording),
          }
  }
}

const AFTERWARDS: { readonly [Place in Cooled['in']]: string } = {
  'still air': ', air to black and cold',
  furnace: ', slow cooling, shut in',
  ashes: ', cold in dry ashes',
  vermiculite: ', cold in vermiculite',
  lime: ', cold in dry lime',
}

function heat(record: HeatRecord, wording: Wording): Words {
  const hold = record.holdS > 0 ? `, hold ${wording.time(record.holdS)}` : ''
  const glow = glowAt(record.toK)
  const up =
    record.outsideUpS === null
      ? 'this fire never gets it there'
      : `outside up in ${wording.time(record.outsideUpS)}, ${middle(record, wording)}`
  return {
    does: `${wording.temperature(record.toK)}${partOf(record.part, wording)}${hold}${record.cooled === undefined ? '' : AFTERWARDS[record.cooled.in]}`,
    look: glow === undefined ? up : `${up}; ${glow} in shade`,
  }
}

function middle({ middleUpS, coldestK }: HeatRecord, wording: Wording): string {
  if (middleUpS === null) return `middle only at ${wording.temperature(coldestK)} at the end`
  return middleUpS < 5 ? 'middle with it' : `middle ${wording.time(middleUpS)} later`
}

function quench(record: QuenchRecord, wording: Wording): Words {
  const stay = wording.time(record.endS - record.startS)
  if (/air$/u.test(record.bath.kind)) return { does: `stand it clear, nothing wet near, ${stay}` }
  const depth = record.depthM === null ? 'whole under' : `${wording.length(record.depthM)} deep, up and down`
  return {
    does: `${depth}, ${stay}`,
    look: `bath from ${wording.temperature(record.bathStartK)} to ${wording.temperature(record.bathEndK)}`,
  }
}

function temper(record: TemperRecord, wording: Wording): Words {
  const { part, setK, trueK, holdS, middleUpS } = record
  if (part !== undefined)
    return { does: `${wording.temperature(setK)}${partOf(part, wording)}, ${wording.time(holdS)}, the rest kept wet` }
  const truth = Math.abs(trueK - setK) < 1 ? '' : ` (truly ${wording.temperature(trueK)})`
  return {
    does: `${wording.temperature(setK)}${truth}, ${wording.time(holdS)} once the middle is up`,
    look: `middle up in ${wording.time(middleUpS)}`,
  }
}

function partOf(part: Length | undefined, wording: Wording): string {
  return part === undefined ? '' : `, ${wording.length(part.fromM)} to ${wording.length(part.toM)} of it`
}
