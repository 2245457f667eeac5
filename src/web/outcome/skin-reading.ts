import type { System } from '#units/length.ts'
import { grindOffMm, type Skin } from './grind.ts'
import { depthSays, depthsSay, hrcSays } from './told-figures.ts'

/** What a smith wants to know of a skin: in one line, and in more. */
export interface SkinReading {
  readonly short: string
  readonly says: readonly string[]
  /** The file would take the skin for the steel. */
  readonly deceives: boolean
}

/** Less of a difference a file does not tell [HRC]. */
const FELT_HRC = 3
/** From this share of a thin part on, what comes off both sides is told beside what there is. */
const THIN_SHARE = 0.1
/** Less scale than this is none: half a thousandth of an inch [mm]. */
const SEEN_MM = 0.013

export function readSkin(skin: Skin, units: System): SkinReading {
  const { grindOff_mm, fileReads, thickness_mm } = skin
  const grinds = grindOffMm(skin) !== undefined
  const [felt, under] = [fileReads.skin_HRC.value, fileReads.under_HRC.value]
  const deceives = grinds && felt < under - FELT_HRC
  const off = depthSays(grindOff_mm.value, units)
  const bothSides = 2 * grindOff_mm.value
  return {
    short: grinds ? `Skin: grind ${off} off${deceives ? '; a file alone deceives' : ''}` : 'Skin: nothing to grind off',
    says: [
      grinds
        ? `As hard as underneath from ${off} down; nine in ten such pieces ${depthsSay(grindOff_mm.low, grindOff_mm.high, units)}.${
            bothSides > THIN_SHARE * thickness_mm
              ? ` It is ${depthSays(thickness_mm, units)} thick there: leave it that much thicker.`
              : ''
          }`
        : 'It is as hard at the surface as underneath.',
      `${fileReads.says}${
        deceives
          ? ` It feels the outermost ${depthSays(0.08, units)}, ${hrcSays(felt)} HRC, and not the ${hrcSays(under)} HRC under it: grind the skin off, then judge.`
          : ''
      }`,
      lostSays(skin, units),
    ],
    deceives,
  }
}

/** What the fires took. */
function lostSays({ scale_mm, metalLost_mm, decarburised_mm }: Skin, units: System): string {
  const scale =
    scale_mm.value >= SEEN_MM
      ? `${depthSays(scale_mm.value, units)} of scale lies on it`
      : metalLost_mm.value >= SEEN_MM
        ? `${depthSays(metalLost_mm.value, units)} of metal went into scale`
        : 'Hardly any scale'
  return decarburised_mm.value < SEEN_MM
    ? `${scale}, and the carbon is kept.`
    : `${scale}; carbon is lost to ${depthSays(decarburised_mm.value, units)} down.`
}
