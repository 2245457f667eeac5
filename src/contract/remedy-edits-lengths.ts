import { shoulderAtLine } from '#engine/findings/shape-findings.ts'
import { partLengths } from '#engine/planning/hard-lengths.ts'
import { INCH_ROUNDING, METRIC_ROUNDING } from '#engine/planning/rounding.ts'
import type { Bath } from '#engine/surface-heat/gear.ts'
import type { RemedyGround } from './remedy-edits-ground.ts'
import { lengthSetting, type Setting } from './remedy-edits-settings.ts'

/** Everything that is wanted of a line across the piece: how much is heated, how much goes under. */

const AIR: Bath = { name: 'still air', kind: 'still air', temperatureK: 293.15 }

/** How far from the working end to heat, so that the hard zones come to heat and the soft ones beyond do not; absent where they lie too close. */
export function endHeatedM(ground: RemedyGround): number | undefined {
  const rounding = ground.units === 'inch' ? INCH_ROUNDING : METRIC_ROUNDING
  return partLengths(ground.layout(), AIR, true, rounding).find(({ kind }) => kind === 'end heated')?.heatToM
}

/** Hard zones are under by this much at least, and soft ones out by as much [m]: common practice, no source. */
const BEYOND_ZONE_M = 0.003
/** Room below the end of the piece in the bath [m]. */
const GAP_M = 0.025

/**
 * Depths to dip to that cover the hard zones, leave the soft ones out, are clear of shoulders and fit the bath: the nearest to `wantedM`, then the
 * nearest on its other side.
 */
export function clearDips(ground: RemedyGround, bath: Bath, wantedM: number): Setting[] {
  const { account, units } = ground
  const { hardToM, softFromM } = ground.layout()
  const mostM = Math.min(
    (softFromM ?? account.lengthM) - BEYOND_ZONE_M,
    account.lengthM - 0.005,
    (bath.depthM ?? Number.POSITIVE_INFINITY) - GAP_M,
  )
  const leastM = Math.max(0.005, hardToM + BEYOND_ZONE_M)
  const stepM = units === 'metric' ? 0.001 : 0.0254 / 16
  const dips: Setting[] = []
  for (let m = leastM; m <= mostM + 1e-9; m += stepM) {
    const dip = lengthSetting(m, units, 'up')
    if (dip.si <= mostM + 1e-9) dips.push(dip)
  }
  const off = ({ si }: Setting): number => Math.abs(si - wantedM)
  const nearest = (side: readonly Setting[]): Setting | undefined =>
    [...side].sort((a, b) => off(a) - off(b)).find(({ si }) => shoulderAtLine(account.job.profile, si) === undefined)
  return [nearest(dips.filter(({ si }) => si <= wantedM)), nearest(dips.filter(({ si }) => si > wantedM))]
    .filter((dip) => dip !== undefined)
    .sort((a, b) => off(a) - off(b))
}
