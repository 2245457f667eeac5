import { exp, pow } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'
import { advanceParameter } from './tempering-parameter.ts'

/** Tempers of one kind, one after the other: each heats to `peakK` and gives by itself the parameter `parameterK` for the constant 20. */
export interface TemperRound {
  readonly peakK: number
  readonly parameterK: number
  readonly times: number
}

/** What became of the austenite that the quench left, in shares of the whole. */
export interface AusteniteTempered {
  /** Still austenite. */
  readonly left: number
  /** Turned to bainite in the tempers themselves. */
  readonly bainite: number
  /** Turned to martensite as a temper cooled, by the parameter of the tempers that came after; 0 for the last, whose martensite is fresh. */
  readonly martensite: readonly { readonly share: number; readonly laterK: number }[]
}

const GAS_CONSTANT = 8.314
const CONSTANT = 20

/**
 * Decomposition to bainite in carbon and low-alloy steel: half in one hour at 240 degC, nearly all at 295 (230..250 and 290..300), Q 115..130 kJ/mol; first
 * order in time. M. Cohen and others, from memory. Silicon puts it off, as it does cementite: 40 K for each wt% (memory, as embrittlement moves).
 */
const DECOMPOSES = { halfInHourK: 513.15, activation: 125000, perSiliconK: 40, siliconFrom: 0.3, siliconMost: 1.8 } as const
/**
 * Conditioning of the austenite of rich steel, which then turns to martensite as the temper cools: half in one hour at 490 degC, hardly at 450, nearly all at
 * 540. The range is known (450..550 degC, from memory); the activation, that of alloy carbide, is of the right order only.
 */
const CONDITIONS = { halfInHourK: 763.15, activation: 230000 } as const
/** Below this no temper touches austenite [K]. */
const COLDEST_K = 423

/** How far a change went in one round: first order, half in one hour at `halfK`. */
function progress(peakK: number, seconds: number, halfK: number, activation: number): number {
  const rate = (Math.LN2 / 3600) * exp((activation / GAS_CONSTANT) * (1 / halfK - 1 / peakK))
  return 1 - exp(-rate * seconds)
}

/** Seconds at the peak that a round comes to. */
function secondsAtPeak({ peakK, parameterK }: TemperRound): number {
  return parameterK > 0 ? 3600 * pow(10, parameterK / peakK - CONSTANT) : 0
}

/**
 * What `rounds` of tempering make of `retained` austenite (share of the whole, 0..1). `rich` (0..1) is how far the steel is one with a secondary peak,
 * whose austenite outlasts 300 degC; between the two kinds in proportion.
 */
export function austeniteTempered(
  { Si }: Pick<Composition, 'Si'>,
  rich: number,
  retained: number,
  rounds: readonly TemperRound[],
): AusteniteTempered {
  const { halfInHourK, perSiliconK, siliconFrom, siliconMost } = DECOMPOSES
  const halfK = halfInHourK + perSiliconK * Math.min(siliconMost, Math.max(0, Si - siliconFrom))
  let lean = (1 - rich) * retained
  let stable = rich * retained
  const formed: { share: number; laterK: number }[] = []
  for (const round of rounds) {
    if (round.peakK < COLDEST_K) continue
    const seconds = secondsAtPeak(round)
    const turns = progress(round.peakK, seconds, halfK, DECOMPOSES.activation)
    const conditioned = progress(round.peakK, seconds, CONDITIONS.halfInHourK, CONDITIONS.activation)
    for (let i = 0; i < round.times; i++) {
      lean *= 1 - turns
      for (const each of formed) each.laterK = advanceParameter(each.laterK, CONSTANT, round.peakK, seconds)
      if (stable * conditioned > 1e-4) formed.push({ share: stable * conditioned, laterK: 0 })
      stable *= 1 - conditioned
    }
  }
  return { left: lean + stable, bainite: (1 - rich) * retained - lean, martensite: formed }
}

/** Share of fresh martensite that nothing has tempered. */
export function freshShare({ martensite }: AusteniteTempered): number {
  return martensite.reduce((sum, { share, laterK }) => sum + (laterK > 0 ? 0 : share), 0)
}
