import type { Length, ProcessStep } from '#engine/simulation/process.ts'
import { durationText } from '#units/duration.ts'
import { lengthText, type System } from '#units/length.ts'
import { celsiusFromKelvin, temperatureText } from '#units/temperature.ts'
import { rateText } from '#units/temperature-rate.ts'
import { nameOfColour } from './temper-colours.ts'

/**
 * Steps in the words of a job file: `process:` of a job takes them as they stand, and reads the same steps from them.
 * Everything is written out, so that nothing is left to be assumed.
 */
export function processInWords(process: readonly ProcessStep[], units: System): Record<string, unknown>[] {
  return process.map((step) => stepInWords(step, units))
}

function stepInWords(step: ProcessStep, units: System): Record<string, unknown> {
  const length = (lengthM: number): string => lengthText(lengthM, units)
  const heat = (temperatureK: number): string => temperatureText(temperatureK, units)
  const partOf = (part: Length | undefined): { part?: { from: string; to: string } } =>
    part === undefined ? {} : { part: { from: length(part.fromM), to: length(part.toM) } }
  const depthOf = (depthM: number | undefined): string => (depthM === undefined ? 'whole' : length(depthM))
  switch (step.do) {
    case 'normalise':
      return {
        do: step.do,
        in: step.in,
        to: heat(step.toK),
        hold: durationText(step.holdS),
        times: step.times,
        ...(step.coolIn === undefined ? {} : { cool: step.coolIn }),
        ...wrapped(step),
      }
    case 'anneal': {
      const place = step.coolIn === undefined ? {} : { cool: step.coolIn }
      const cool = step.coolKPerS === undefined ? place : { cool: rateText(step.coolKPerS, units) }
      return { do: step.do, in: step.in, to: heat(step.toK), hold: durationText(step.holdS), ...cool, ...wrapped(step) }
    }
    case 'stress-relieve':
      return { do: step.do, in: step.in, to: heat(step.toK), hold: durationText(step.holdS), ...wrapped(step) }
    case 'heat': {
      const even = step.even ? {} : { even: false }
      return {
        do: step.do,
        in: step.in,
        to: heat(step.toK),
        hold: durationText(step.holdS),
        ...even,
        ...partOf(step.part),
        ...wrapped(step),
      }
    }
    case 'carry':
      return { do: step.do, for: durationText(step.forS) }
    case 'quench':
      return { do: step.do, in: step.in, depth: depthOf(step.depthM), for: durationText(step.forS), agitation: step.agitation }
    case 'temper':
      return {
        do: step.do,
        in: step.in,
        at: heat(step.atK),
        hold: durationText(step.holdS),
        times: step.times,
        ...partOf(step.part),
      }
    case 'warm-bath': {
      const { acrossM, lengthM, atK } = step.with
      return { do: step.do, in: step.in, with: { across: length(acrossM), length: length(lengthM), at: heat(atK) } }
    }
    case 'run-colours':
      return {
        do: step.do,
        stop: (step.byColour === true ? nameOfColour(celsiusFromKelvin(step.stopAtK)) : undefined) ?? heat(step.stopAtK),
        in: step.in,
        depth: depthOf(step.depthM),
      }
  }
}

function wrapped({ atmosphere }: { readonly atmosphere?: string }): { atmosphere?: string } {
  return atmosphere === undefined ? {} : { atmosphere }
}
