import type { Wording } from '#engine/findings/wording.ts'
import { convert, scaleLimits } from '#engine/metallurgy/hardness-scales.ts'
import type { Cooled } from '#engine/simulation/records.ts'

const COOLS: { readonly [Place in Cooled['in']]: string } = {
  'still air': 'Then still air, to black and cold',
  furnace: 'Then slow, shut in',
  ashes: 'Then deep into dry ashes',
  vermiculite: 'Then deep into vermiculite',
  lime: 'Then deep into dry lime',
}

/** Quicker than this through the change is not worth telling [s]. */
const SLOW_S = 60

/** Where a piece cools that is not to harden, how slowly where that matters, and how hard it is after it. */
export function coolingSays({ in: place, coldS, slowestS, softestHv, hardestHv }: Cooled, wording: Wording): string {
  const slow =
    slowestS === undefined || slowestS < SLOW_S || place === 'furnace'
      ? ''
      : `, ${wording.time(slowestS)} from ${wording.temperature(1073.15)} to ${wording.temperature(773.15)}`
  const cold = coldS < 3600 ? '' : `, cold after ${wording.time(coldS)}`
  const hard = softestHv === undefined || hardestHv === undefined ? '' : ` ${hardnessAfter(softestHv, hardestHv)}`
  return `${COOLS[place]}${slow}${cold}.${hard}`
}

/** Hardness up to which a bar is filed and drilled without trouble [HB]: common practice, no source. */
const MACHINES_HB = 300
/** What is harder has hardened [HV]. */
const HARDENED_HV = 550

function hardnessAfter(softestHv: number, hardestHv: number): string {
  if (hardestHv > HARDENED_HV) return 'It hardens in that: no way to make it soft.'
  const low = brinell(softestHv)
  const high = brinell(hardestHv)
  const range = high - low < 15 ? `About ${high} HB` : `${low} to ${high} HB`
  return `${range} then${high > MACHINES_HB ? ', too hard for file and drill' : ''}.`
}

/** To the nearest five, as a Brinell reading is. */
function brinell(hv: number): number {
  return Math.round(convert(Math.max(scaleLimits('HV')[0], hv), 'HV', 'HBW').value / 5) * 5
}
