import type { Length, ProcessStep } from '#engine/simulation/process.ts'
import type { Shop } from '#engine/surface-heat/gear.ts'
import { shown } from '#units/reading.ts'
import type { TypedTemperature } from '#units/temperature.ts'
import type { Assumption } from './assumption.ts'
import { type GearFinder, isAirIn } from './gear-names.ts'
import { outsidePiece } from './parse-zones.ts'
import type { Problem } from './problems.ts'
import type { TypedStep } from './process-schema.ts'

const LONGEST_HOLD_S = 100 * 3600

/** Times that are taken where nobody said [s], and how that is written: common practice, no source. */
const ASSUMED_HOLD = {
  normalise: [300, '5 min'],
  anneal: [3600, '1 h'],
  'stress-relieve': [3600, '1 h'],
  heat: [300, '5 min'],
  temper: [3600, '1 h'],
  draw: [0, 'no longer than it takes to get there'],
} as const
const ASSUMED_STAY_S = 300

export interface StepContext {
  readonly lengthM: number | undefined
  readonly shop: Shop
  readonly find: GearFinder
  readonly problems: Problem[]
  readonly assumptions: Assumption[]
}

/** One step in SI, or undefined with its problems added; `at` is its field, `lastBath` the bath of the quench before it. */
export function stepOf(
  typed: TypedStep,
  at: string,
  lastBath: string | undefined,
  context: StepContext,
): ProcessStep | undefined {
  const { shop, find, problems, assumptions, lengthM } = context
  const assume = (says: string, because: string): void => {
    assumptions.push({ says: `${at}: ${says}`, because })
  }
  const heatRange = (temperature: TypedTemperature, field: string, lowC: number, highC: number, mend: string): void => {
    const celsius = temperature.temperatureK - 273.15
    if (celsius < lowC || celsius > highC)
      problems.push({ field: `${at}.${field}`, says: `${shown(temperature.typed)}: ${mend}; write ${lowC} to ${highC} °C` })
  }
  const holdS = (
    kind: keyof typeof ASSUMED_HOLD,
    hold: { readonly typed: string; readonly durationS: number } | undefined,
  ): number => {
    if (hold === undefined) {
      const [seconds, words] = ASSUMED_HOLD[kind]
      assume(`held ${words}.`, 'the step gives no hold')
      return seconds
    }
    if (hold.durationS > LONGEST_HOLD_S)
      problems.push({ field: `${at}.hold`, says: `${shown(hold.typed)}: longer than 100 h; was min meant?` })
    return hold.durationS
  }
  const lengthOf = (part: { from: { typed: string; lengthM: number }; to: { typed: string; lengthM: number } }): Length => {
    if (!(part.from.lengthM < part.to.lengthM))
      problems.push({
        field: `${at}.part`,
        says: `${shown(part.to.typed)} is not beyond ${shown(part.from.typed)}; write from the working end on`,
      })
    outsidePiece(part.from, `${at}.part.from`, lengthM, problems)
    outsidePiece(part.to, `${at}.part.to`, lengthM, problems)
    return { fromM: part.from.lengthM, toM: Math.min(part.to.lengthM, lengthM ?? part.to.lengthM) }
  }
  const depthOf = (depth: { readonly typed: string; readonly lengthM?: number } | undefined): { depthM?: number } => {
    if (depth?.lengthM === undefined) return {}
    outsidePiece({ typed: depth.typed, lengthM: depth.lengthM }, `${at}.depth`, lengthM, problems)
    // All of the piece under is the whole, whichever way it was written.
    return lengthM !== undefined && depth.lengthM >= lengthM * (1 - 1e-9) ? {} : { depthM: depth.lengthM }
  }

  switch (typed.do) {
    case 'normalise':
    case 'anneal':
    case 'stress-relieve':
    case 'heat': {
      const gear = find(typed.in, ['fires', 'ovens'], `${at}.in`)
      heatRange(typed.to, 'to', 100, 1350, 'no heat for steel')
      const common = {
        toK: typed.to.temperatureK,
        holdS: holdS(typed.do, typed.hold),
        ...(typed.atmosphere === undefined ? {} : { atmosphere: typed.atmosphere }),
      }
      const part = typed.do === 'heat' && typed.part !== undefined ? { part: lengthOf(typed.part) } : {}
      if (gear === undefined) return undefined
      const coolIn = 'cool' in typed && typed.cool?.place !== undefined ? { coolIn: typed.cool.place } : {}
      if (typed.do === 'normalise') return { do: typed.do, in: gear, ...common, ...coolIn, times: typed.times ?? 1 }
      if (typed.do === 'anneal')
        return {
          do: typed.do,
          in: gear,
          ...common,
          ...coolIn,
          ...(typed.cool?.rateKPerS === undefined ? {} : { coolKPerS: typed.cool.rateKPerS }),
        }
      if (typed.do === 'stress-relieve') return { do: typed.do, in: gear, ...common }
      return { do: typed.do, in: gear, ...common, even: typed.even ?? true, ...part }
    }
    case 'carry':
      if (typed.for.durationS > LONGEST_HOLD_S)
        problems.push({ field: `${at}.for`, says: `${shown(typed.for.typed)}: longer than 100 h; was min meant?` })
      return { do: 'carry', forS: typed.for.durationS }
    case 'quench': {
      const gear = find(typed.in, ['baths'], `${at}.in`)
      const depth = depthOf(typed.depth)
      if (gear === undefined) return undefined
      const air = isAirIn(shop, gear)
      if (typed.for === undefined && !air) assume('5 min in the bath.', 'the step does not say how long')
      if (typed.agitation === undefined && !air)
        assume('moderate agitation: moved up and down all the while.', 'the step does not say how it is moved')
      const stayS = typed.for?.durationS ?? ASSUMED_STAY_S
      if (stayS > LONGEST_HOLD_S)
        problems.push({ field: `${at}.for`, says: `${shown(typed.for?.typed)}: longer than 100 h; was min meant?` })
      const agitation = typed.agitation ?? (air ? 'still' : 'moderate')
      return { do: 'quench', in: gear, ...depth, forS: stayS, agitation }
    }
    case 'temper': {
      const gear = find(typed.in, ['ovens', 'fires'], `${at}.in`)
      heatRange(typed.at, 'at', 50, 760, 'no tempering heat')
      const part = typed.part === undefined ? {} : { part: lengthOf(typed.part) }
      const hold = holdS(typed.part === undefined ? 'temper' : 'draw', typed.hold)
      if (gear === undefined) return undefined
      return { do: 'temper', in: gear, atK: typed.at.temperatureK, holdS: hold, times: typed.times ?? 1, ...part }
    }
    case 'warm-bath': {
      const gear = find(typed.in, ['baths'], `${at}.in`)
      heatRange(typed.with.at, 'with.at', 100, 1200, 'no heat for a bar that warms a bath')
      if (gear !== undefined && isAirIn(shop, gear))
        problems.push({ field: `${at}.in`, says: `"${gear}" is not warmed with a bar; name a bath of the shop` })
      if (typed.with.across.lengthM > 0.3 || typed.with.length.lengthM > 3)
        problems.push({
          field: `${at}.with`,
          says: 'a bar of up to 300 mm across and 3 m long can be lifted; write a smaller one',
        })
      if (gear === undefined) return undefined
      const { across, length, at: heat } = typed.with
      return { do: 'warm-bath', in: gear, with: { acrossM: across.lengthM, lengthM: length.lengthM, atK: heat.temperatureK } }
    }
    case 'run-colours': {
      const asked = typed.in ?? lastBath
      if (typed.in === undefined && lastBath !== undefined)
        assume(`stopped in the ${lastBath}.`, 'the step names no bath; the last quench was there')
      const gear = find(asked, ['baths'], `${at}.in`)
      heatRange(typed.stop, 'stop', 100, 650, 'no heat that is told by its colour')
      if (typed.stop.colour !== undefined) {
        const { name, temperatureC, source } = typed.stop.colour
        assume(
          `${name} is the colour that ${temperatureC} °C gives in some five minutes; where it comes faster the steel is hotter.`,
          `${source}; colours answer to time and alloy, which are worked out, and to polish and light: within 20 °C`,
        )
      }
      const depth = depthOf(typed.depth)
      return gear === undefined
        ? undefined
        : {
            do: 'run-colours',
            stopAtK: typed.stop.temperatureK,
            ...(typed.stop.colour === undefined ? {} : { byColour: true }),
            in: gear,
            ...depth,
          }
    }
  }
}
