import { shapeFeatures } from '#engine/geometry/shape-features.ts'
import { blanketEndK } from '#engine/surface-heat/blanket.ts'
import { type Account, hardensAt, isOil, isWater, lastHardening, skinAt } from './account.ts'
import type { EngineFinding } from './finding.ts'
import type { Wording } from './wording.ts'

/** A hollow this deep for its width holds the vapour when it goes in mouth down: common practice, no source. */
const HOLDS_DEPTH_SHARE = 0.15

/**
 * A hollow in the working end goes into the bath mouth down, and the vapour that its hot wall makes cannot leave. The film knows nothing of it: the
 * forecast is that of an open face.
 */
export function steamFindings(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  if (last === undefined || !(isOil(last.quench.bath) || isWater(last.quench.bath))) return []
  const { bath, step } = last.quench
  const [first] = account.job.profile.sections
  const hole = shapeFeatures(account.job.profile).holes.find(({ xM }) => xM < 1e-6)
  const hollow = hole === undefined ? first?.dish : { acrossM: hole.acrossM, depthM: hole.bottomXM }
  if (hollow === undefined || hollow.depthM < HOLDS_DEPTH_SHARE * hollow.acrossM) return []
  if (!hardensAt(account, 0) && !hardensAt(account, hollow.depthM)) return []
  const breaksK = blanketEndK({ kind: bath.kind, temperatureK: bath.temperatureK })
  const skinK = skinAt(account, 0)?.peakK ?? 0
  const blanket =
    breaksK === undefined || breaksK > skinK
      ? `${isWater(bath) ? 'Steam' : 'Vapour'} gathers there all the same`
      : `The blanket of this bath stands down to about ${say.temperature(breaksK)} on an open face, and far longer where it cannot leave`
  return [
    {
      id: 'steam-in-hollow',
      severity: isWater(bath) ? 'warn' : 'note',
      where: { step, xM: 0 },
      says: `The hollow in the working end traps ${isWater(bath) ? 'steam' : 'vapour'} when it goes in mouth down: it may stay soft inside.`,
      because: `It is ${say.length(hollow.acrossM)} wide and ${say.length(hollow.depthM)} deep. ${blanket}; the forecast is that of an open face.`,
      remedy:
        'Put it in mouth up or well aslant, and drive the bath into the hollow with a stream or by moving it; prove it inside with a file.',
      caution: 'A trapped pocket spits hot liquid back: face shield, sleeves down, and never over it.',
    },
  ]
}
