/**
 * Times at which steps must end: those where the tables of a stage have kinks and those asked for, in order and once each, within (0, endS].
 * Two closer than 1e-9 of the stage count as one.
 */
export function milestones(endS: number, ...times: readonly (readonly number[])[]): number[] {
  const all = times.flat().filter((timeS) => timeS > 0 && timeS < endS)
  const sorted = [...new Set(all), endS].sort((a, b) => a - b)
  return sorted.filter((timeS, i) => i === sorted.length - 1 || sorted[i + 1]! - timeS > 1e-9 * endS)
}
