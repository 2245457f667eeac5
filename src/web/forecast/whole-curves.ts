import type { Forecast } from '#contract/answers.ts'

/** Temperature of the skin and of the middle through the whole treatment. Times never fall. */
export interface WholeCurves {
  readonly timeS: readonly number[]
  readonly skinC: readonly number[]
  readonly centreC: readonly number[]
}

/** The curves of a forecast with every round of its repeated steps, which it tells once: the rounds after the first are like it. */
export function wholeCurves({ curves, steps }: Pick<Forecast, 'curves' | 'steps'>): WholeCurves {
  const { time_s, skin_C, centre_C } = curves
  const timeS: number[] = []
  const skinC: number[] = []
  const centreC: number[] = []
  const take = (i: number, laterS: number): void => {
    timeS.push(time_s[i]! + laterS)
    skinC.push(skin_C[i]!)
    centreC.push(centre_C[i]!)
  }
  let at = 0
  for (const { start_s, end_s, times = 1 } of steps) {
    if (times < 2) continue
    const roundS = (end_s - start_s) / times
    const until = start_s + roundS + 0.05
    while (at < time_s.length && time_s[at]! < start_s) take(at++, 0)
    const first = at
    while (at < time_s.length && time_s[at]! <= until) take(at++, 0)
    const after = at
    for (let round = 1; round < times; round++) {
      for (let i = first; i < after; i++) if (time_s[i]! > start_s) take(i, round * roundS)
    }
    while (at < time_s.length && time_s[at]! < end_s - 0.05) at++
    if (at < time_s.length && Math.abs(time_s[at]! - end_s) <= 0.05) at++
  }
  while (at < time_s.length) take(at++, 0)
  return { timeS, skinC, centreC }
}

/** What a curve reads at a time; straight between its points. */
export function readAt(timeS: ArrayLike<number>, values: ArrayLike<number>, atS: number): number {
  const last = timeS.length - 1
  if (last < 0) return Number.NaN
  if (!(atS > timeS[0]!)) return values[0]!
  if (atS >= timeS[last]!) return values[last]!
  let low = 0
  let high = last
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (timeS[middle]! <= atS) low = middle
    else high = middle
  }
  return values[low]! + ((atS - timeS[low]!) / (timeS[high]! - timeS[low]!)) * (values[high]! - values[low]!)
}
