import type { Forecast } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import type { Stretch } from './time-scale.ts'

const DOES: Readonly<Record<string, string>> = {
  heat: 'heat',
  normalise: 'normalise',
  anneal: 'anneal',
  carry: 'walk',
  'warm-bath': 'warm the bath',
  quench: 'quench',
  'run-colours': 'run colours',
  temper: 'temper',
}

/** A step on the time line in a word or two: what it is done in where that tells more (`oil drum`), else what is done. */
export function stretchName(
  { air, do: kind, step }: Omit<Stretch, 'startS' | 'endS' | 'round' | 'rounds'>,
  { steps }: Pick<Forecast, 'steps'>,
): string {
  if (air) return 'air'
  return kind === 'quench' ? (steps[step]?.in ?? 'quench') : (DOES[kind] ?? kind)
}

/** The same with how long it takes and which round it is: `temper 1 h 20 min, 2nd of 2`. */
export function stretchSays(stretch: Stretch, forecast: Pick<Forecast, 'steps'>): string {
  const { startS, endS, round, rounds } = stretch
  const of = rounds > 1 ? `, ${round} of ${rounds}` : ''
  return `${stretchName(stretch, forecast)} ${formatDuration(endS - startS)}${of}`
}
