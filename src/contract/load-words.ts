import { BATH_LIMITS } from '#engine/findings/bath-limits.ts'
import type { Wording } from '#engine/findings/wording.ts'
import type { HeatRecord, QuenchRecord } from '#engine/simulation/records.ts'

/** Heat that steel takes from the room to a hardening heat, change and all, by the kelvin [J/(kg K)]: EN 1993-1-2 gives 690 on average to 850 degC. */
const STEEL_J_PER_KG_K = 690
/** A bench kiln, where nobody says [W]: common practice, no source. */
const KILN_W = 3000
const ROOM_K = 293.15
/** Less than this and this share of the time up is not worth telling [s]. */
const TOLD_S = 180
const TOLD_SHARE = 0.3

/** What a kiln has to give: it holds its heat in the forecast, and a small one cannot with a heavy load. Empty where that is little, and for a fire. */
export function loadSays({ fire, massKg, toK, outsideUpS }: HeatRecord, wording: Wording): string {
  if (fire.kind !== 'muffle') return ''
  const joules = massKg * STEEL_J_PER_KG_K * (toK - ROOM_K)
  const timeS = joules / KILN_W
  if (timeS < TOLD_S || timeS < TOLD_SHARE * (outsideUpS ?? 0)) return ''
  return ` It takes ${(joules / 3.6e6).toPrecision(2)} kWh: a kiln of ${KILN_W / 1000} kW needs ${wording.time(timeS)} for that alone, and as much again for each piece beside it; count the hold from when its own reading is back.`
}

const MOST_TOLD = 20

/** How many like pieces the bath stands one after another before it is out of its range; empty where that is many. */
export function rowSays({ bath, bathStartK, bathEndK }: QuenchRecord, wording: Wording): string {
  const limits = BATH_LIMITS[bath.kind]
  const riseK = bathEndK - bathStartK
  if (limits === undefined || riseK < 0.5 || bathEndK > limits.hotK) return ''
  const pieces = Math.floor((limits.hotK - bathStartK) / riseK)
  if (pieces >= MOST_TOLD) return ''
  return pieces <= 1
    ? ` Let it cool before the next: a second like piece takes it over ${wording.temperature(limits.hotK)}.`
    : ` ${pieces} like pieces in a row and it is at ${wording.temperature(Math.min(limits.hotK, bathStartK + pieces * riseK))}: then let it cool.`
}
