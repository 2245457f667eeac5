import type { Bath } from './gear.ts'
import { probeFilm } from './probe-films.ts'

/** A bath whose film is never less than this share of its greatest keeps no blanket that a smith would see. */
const NO_BLANKET = 0.25

/**
 * Temperature of a surface at which a still bath's blanket of vapour breaks [K], as its film has it: half way, in proportion, from its least to its
 * greatest. Undefined in air and in a bath that keeps none (brine, vegetable oil).
 *
 * Published on steel (memory): water of 20 degC 650..750, 40 degC 500..600, 60 degC 400..450; mineral oil 480..520 slow, 600..650 medium,
 * 680..720 fast. The film, which is that of a whole probe, breaks within 40 K of these.
 */
export function blanketEndK({ kind, temperatureK }: Pick<Bath, 'kind' | 'temperatureK'>): number | undefined {
  if (kind === 'still air' || kind === 'moving air') return undefined
  const rows = probeFilm(kind, temperatureK)
  const greatest = Math.max(...rows.map(([, h]) => h))
  const peak = rows.findIndex(([, h]) => h === greatest)
  const least = Math.min(...rows.slice(peak).map(([, h]) => h))
  if (least > NO_BLANKET * greatest) return undefined
  const breaks = Math.sqrt(least * greatest)
  for (let i = rows.length - 1; i > peak; i--) {
    const [hotK, hot] = rows[i]!
    const [coldK, cold] = rows[i - 1]!
    if (cold >= breaks) return hotK - ((hotK - coldK) * (breaks - hot)) / (cold - hot)
  }
  return undefined
}
