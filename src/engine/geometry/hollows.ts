import { asin, tan } from '#engine/arithmetic/angles.ts'
import type { Dish, Profile } from './profile.ts'

/** The sphere of a dish: its radius and the x of its centre, which lies before the face unless the dish is a half ball [m]. */
export function sphereOf(dish: Dish): { radiusM: number; centreXM: number } {
  const rim = dish.acrossM / 2
  const radiusM = (rim * rim + dish.depthM * dish.depthM) / (2 * dish.depthM)
  return { radiusM, centreXM: dish.depthM - radiusM }
}

/** Least wall beside a hole [m], in the true shape across its flats. */
export function leastWallM({ sections }: Profile, isFront: boolean, depthM: number, acrossM: number): number {
  let left = depthM
  let least = Number.POSITIVE_INFINITY
  for (const { from, to, lengthM } of isFront ? sections : [...sections].reverse()) {
    const [near, far] = isFront ? [from.acrossM, to.acrossM] : [to.acrossM, from.acrossM]
    const reached = Math.min(1, left / lengthM)
    least = Math.min(least, (near - acrossM) / 2, (near + reached * (far - near) - acrossM) / 2)
    left -= lengthM
    if (left <= 0) break
  }
  return least
}

/** Thickness of a dish's lip and the angle of its metal, for an end of outer radius `endM` whose side leans out by `slopeRad` [m, rad]. */
export function lipOf(
  dish: { readonly acrossM: number; readonly depthM: number },
  endM: number,
  slopeRad: number,
  atM: number,
): { thicknessM: number; angleRad: number } {
  const { radiusM, centreXM } = sphereOf(dish)
  const off = atM - centreXM
  const hollowM = Math.abs(off) < radiusM ? Math.sqrt(radiusM * radiusM - off * off) : 0
  const wallRad = asin(Math.min(1, dish.acrossM / 2 / radiusM))
  return { thicknessM: endM + atM * tan(slopeRad) - hollowM, angleRad: Math.PI / 2 - wallRad + slopeRad }
}
