import type { Profile } from '#engine/geometry/profile.ts'
import { type Account, skinAt } from './account.ts'

/** Thickness of the piece at one of its heights [m]. */
export interface Thickness {
  readonly xM: number
  readonly acrossM: number
}

/** Thickness at both ends of every section, in order along the piece. */
export function thicknesses({ sections }: Profile): Thickness[] {
  let startM = 0
  return sections.flatMap(({ from, to, lengthM }) => {
    const ends = [
      { xM: startM, acrossM: from.acrossM },
      { xM: startM + lengthM, acrossM: to.acrossM },
    ]
    startM += lengthM
    return ends
  })
}

/** Thickness at a height, linear within its section; the thinner side at a step. */
export function thicknessAtM({ sections }: Profile, xM: number): number {
  let startM = 0
  let found = Number.POSITIVE_INFINITY
  for (const { from, to, lengthM } of sections) {
    if (xM >= startM - 1e-9 && xM <= startM + lengthM + 1e-9)
      found = Math.min(found, from.acrossM + ((to.acrossM - from.acrossM) * (xM - startM)) / lengthM)
    startM += lengthM
  }
  return Number.isFinite(found) ? found : (sections[sections.length - 1]?.to.acrossM ?? 0)
}

/** Thickness on the two sides of a step, or at the two ends of the taper that holds `xM`. */
export function sidesAt({ sections }: Profile, xM: number): { readonly thinM: number; readonly thickM: number } {
  let startM = 0
  for (const [i, section] of sections.entries()) {
    const endM = startM + section.lengthM
    const next = sections[i + 1]
    if (Math.abs(endM - xM) < 1e-6 && next !== undefined) return sorted(section.to.acrossM, next.from.acrossM)
    if (xM < endM) return sorted(section.from.acrossM, section.to.acrossM)
    startM = endM
  }
  const acrossM = thicknessAtM({ sections }, xM)
  return { thinM: acrossM, thickM: acrossM }
}

function sorted(a: number, b: number): { readonly thinM: number; readonly thickM: number } {
  return { thinM: Math.min(a, b), thickM: Math.max(a, b) }
}

/** The thinnest place that was hot enough to harden and went under. A point (a punch's or a scriber's) is no thin section. */
export function thinnestUnderM(account: Account, lengthUnderM: number): Thickness | undefined {
  const { profile } = account.job
  const first = profile.sections[0]
  const pointM = first !== undefined && first.shape !== 'flat' && first.from.acrossM < 0.003 ? 0.5 * first.lengthM : 0
  const places = [
    ...thicknesses(profile).filter(({ xM }) => xM <= lengthUnderM && xM >= pointM),
    ...(pointM > 0 ? [{ xM: pointM, acrossM: thicknessAtM(profile, pointM) }] : []),
    { xM: lengthUnderM, acrossM: thicknessAtM(profile, lengthUnderM) },
  ]
  const hot = places.filter(({ xM }) => (skinAt(account, xM)?.peakK ?? 0) > account.steel.critical.ac1K)
  return hot.sort((a, b) => a.acrossM - b.acrossM)[0]
}
