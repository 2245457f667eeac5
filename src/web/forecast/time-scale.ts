import type { Forecast } from '#contract/answers.ts'

/** A stretch of the time line: one round of a step, or the air between two steps. */
export interface Stretch {
  /** Index in the forecast's steps. */
  readonly step: number
  readonly do: string
  readonly startS: number
  readonly endS: number
  /** Which round of how many. */
  readonly round: number
  readonly rounds: number
  /** The piece cools in the air after its quench. */
  readonly air: boolean
}

/** Where times lie on the line that carries the whole treatment, as a share of its length, and back. */
export interface TimeScale {
  readonly stretches: readonly Stretch[]
  readonly startS: number
  readonly endS: number
  /** 0 at the start, 1 at the end; times beyond are drawn at the ends. */
  readonly shareOf: (timeS: number) => number
  readonly timeAt: (share: number) => number
  /** The stretch that a time lies in; at a joint the later one. */
  readonly stretchAt: (timeS: number) => Stretch | undefined
}

type Steps = Pick<Forecast, 'steps'>['steps']

/** Stretches without a break from the first step to the last; rounds of a step one by one. */
export function stretchesOf(steps: Steps): Stretch[] {
  const stretches: Stretch[] = []
  for (const [step, { do: kind, start_s, end_s, times = 1 }] of steps.entries()) {
    const before = stretches.at(-1)
    if (before !== undefined && start_s - before.endS > 0.05)
      stretches.push({ ...before, startS: before.endS, endS: start_s, round: 1, rounds: 1, air: true })
    const roundS = (end_s - start_s) / times
    for (let round = 0; round < times; round++) {
      const startS = start_s + round * roundS
      const endS = round === times - 1 ? end_s : startS + roundS
      if (endS > startS) stretches.push({ step, do: kind, startS, endS, round: round + 1, rounds: times, air: false })
    }
  }
  return stretches
}

/** The least share of any stretch, in e-folds of its duration: a walk of three seconds must be seen and taken hold of. */
const LEAST_E_FOLDS = 2.2
/** Later rounds are like the first, and have less of the line. */
const LATER_ROUND = 0.5
/** Within a stretch time runs evenly up to about this long after its start, and by its logarithm from there [s]. */
const EVEN_UNTIL_S: Readonly<Record<string, number>> = { quench: 1, carry: 2, 'run-colours': 2 }
const EVEN_UNTIL_OTHERWISE_S = 60

/**
 * One line for hours and seconds: every stretch has a share of it by the logarithm of its duration, and within a stretch time since its
 * start runs by its logarithm. Rises everywhere; times and places go there and back.
 */
export function timeScale(steps: Steps): TimeScale {
  const stretches = stretchesOf(steps)
  const weights = stretches.map(
    ({ startS, endS, round }) => (LEAST_E_FOLDS + Math.log1p(endS - startS)) * (round > 1 ? LATER_ROUND : 1),
  )
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  let from = 0
  const laid = stretches.map((stretch, i) => {
    const share = weights[i]! / all
    const even = stretch.air ? EVEN_UNTIL_OTHERWISE_S : (EVEN_UNTIL_S[stretch.do] ?? EVEN_UNTIL_OTHERWISE_S)
    const place = { stretch, from, share, even, folds: Math.log1p((stretch.endS - stretch.startS) / even) }
    from += share
    return place
  })
  const startS = stretches[0]?.startS ?? 0
  const endS = stretches.at(-1)?.endS ?? 0
  return {
    stretches,
    startS,
    endS,
    shareOf: (timeS) => {
      if (!(timeS > startS)) return 0
      if (timeS >= endS) return 1
      const at = laid.findLast(({ stretch }) => timeS >= stretch.startS)!
      return at.from + (at.share * Math.log1p((timeS - at.stretch.startS) / at.even)) / at.folds
    },
    timeAt: (share) => {
      if (!(share > 0) || laid.length === 0) return startS
      if (share >= 1) return endS
      const at = laid.findLast((each) => share >= each.from)!
      const within = Math.expm1(((share - at.from) / at.share) * at.folds) * at.even
      return Math.min(at.stretch.endS, at.stretch.startS + within)
    },
    stretchAt: (timeS) => stretches.findLast(({ startS: from }) => timeS >= from) ?? stretches[0],
  }
}

/** A time of one treatment in another that differs a little: as long into the same step, or at its end where that is shorter. */
export function carriedTime(from: TimeScale, to: TimeScale, timeS: number): number {
  const was = from.stretchAt(timeS)
  if (was === undefined || timeS >= from.endS) return timeS
  const now = to.stretches.find(({ step, round, air }) => step === was.step && round === was.round && air === was.air)
  return now === undefined ? timeS : now.startS + Math.min(timeS - was.startS, now.endS - now.startS)
}
