import type { System } from '#units/length.ts'
import type { JobText } from '#web/job/job-text.ts'

/** What a new piece begins as: a length of round bar, to be drawn into shape. */
export function firstDrawing(units: System): JobText {
  const bar =
    units === 'inch'
      ? ({ shape: 'round', across: '1 in', length: '5 in' } as const)
      : ({ shape: 'round', across: '25 mm', length: '125 mm' } as const)
  return { piece: 'new piece', profile: [bar] }
}
