import { outlineOf } from './outline.ts'
import { volumeM3Of } from './outline-chain.ts'
import type { Profile } from './profile.ts'
import { areaM2 } from './section-shapes.ts'

export { areaM2, equivalentRatio, equivalentRoundM } from './section-shapes.ts'

/**
 * Volume of the piece in its true shape [m3]: straight tapers by the prismatoid rule; what dishes, bores and tips take away and fillets
 * add is that of the equivalent body, which is exact for hollows and for rounds.
 *
 * - throws: as `outlineOf`
 */
export function volumeM3(profile: Profile): number {
  const straight = profile.sections.reduce((sum, { shape, from, to, lengthM }) => {
    const middle = {
      acrossM: (from.acrossM + to.acrossM) / 2,
      widthM: ((from.widthM ?? from.acrossM) + (to.widthM ?? to.acrossM)) / 2,
    }
    return sum + (lengthM / 6) * (areaM2(shape, from) + 4 * areaM2(shape, middle) + areaM2(shape, to))
  }, 0)
  const bare: Profile = { sections: profile.sections.map(({ shape, from, to, lengthM }) => ({ shape, from, to, lengthM })) }
  return straight + volumeM3Of(outlineOf(profile)) - volumeM3Of(outlineOf(bare))
}
