import { exp, pow } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'
import { eutectoidShiftBesideChromium, plainAcmCarbon } from './boundary-lines.ts'
import { andrewsAc1, andrewsAc3, kasatkinAc1, kasatkinAc3 } from './critical-correlations.ts'

/** Composition with each element held where carbides keep more of it from acting, so that the low-alloy formulas can be used beyond their range. */
function heldInRange(c: Composition): Composition {
  return {
    ...c,
    C: Math.min(c.C, 0.8),
    Cr: Math.min(c.Cr, 5),
    Mo: Math.min(c.Mo, 1.5),
    V: Math.min(c.V, 0.5),
    W: Math.min(c.W, 4),
  }
}

/**
 * Ac1 by the mean of Andrews and Kasatkin, carried beyond their range [K]. On published figures Andrews lies 6 K low and Kasatkin
 * 5 K high (nickel has the opposite sign in them, and the truth lies between): each alone errs by 12..14 K, the mean by 10.5.
 */
export function ac1ByFormulaK(c: Composition): number {
  const held = heldInRange(c)
  return 0.5 * (andrewsAc1.evaluate(held) + kasatkinAc1.evaluate(held))
}

/**
 * Ac3 by the mean of Andrews' short form and Kasatkin's, carried beyond their range [K]; for a steel above its eutectoid the end
 * of the Ac1 range, which chromium widens (52100: 725..770, 750..785; D2: 787..845 degC).
 */
export function ac3ByFormulaK(c: Composition): number {
  const held = heldInRange(c)
  const ferriteGone =
    0.5 * (andrewsAc3.evaluate(held) + kasatkinAc3.evaluate({ ...held, Cr: Math.min(c.Cr, 2), Mo: Math.min(c.Mo, 1) }))
  return Math.max(ferriteGone, ac1ByFormulaK(c) + 8 + 20 * Math.min(2, c.Cr))
}

/** Carbon and nickel of a carburised case, which no through-hardening steel has together [wt%], and the heat it is quenched from [K]. */
const CASE = { carbon: [0.75, 0.85], nickel: [0.5, 1], mostChromium: 2.5, heatK: 1150 } as const

/**
 * The heat that this steel is usually hardened from [K], from its composition: 45 K over Ac3 in a poor steel, 60 K over Ac1 in
 * a rich one, more for every per cent of carbide former. Reproduces the customary heats of 1095 (790), O1 (805), 52100 (845),
 * S7 (940), A2 (970), D2 (1010), H13 (1020), M2 (1220 degC) within 35 K.
 *
 * Rich in carbon and in nickel together is a carburised case, quenched from about 880 degC (850..900: common practice, no source)
 * with all its carbon dissolved.
 */
export function usualHardeningK(c: Composition): number {
  const usualK = Math.max(ac3ByFormulaK(c) + 45, ac1ByFormulaK(c) + 60 + 18 * Math.min(c.Cr, 5) + 40 * c.V + 16 * (c.Mo + c.W))
  if (c.Cr >= CASE.mostChromium) return usualK
  const isCase = within(c.C, CASE.carbon) * within(c.Ni, CASE.nickel)
  return usualK + isCase * Math.max(0, CASE.heatK - usualK)
}

/** 0 below the range, 1 above, in proportion between. */
function within(x: number, [from, to]: readonly [number, number]): number {
  return Math.min(1, Math.max(0, (x - from) / (to - from)))
}

/**
 * Carbon that austenite can hold falls below the plain Acm line: by chromium as `most (1 - exp(-Cr / scale)) + perWtPct Cr`, and by
 * the other alloy in a share of its shift of the eutectoid. Fitted here to nine published matrix compositions (1095, 52100, O1, L6,
 * A2, D2, S7, H13, and 52100 at 980 degC) and to measured martensite starts of steels above 0.7 C together. The matrix compositions
 * alone ask for more; the martensite starts alone for less.
 */
const CHROMIUM = { most: 0.5, scale: 2.6, perWtPct: 0.039 } as const
const SHARE_OF_SHIFT = 0.2
/** Sharpness of the turn from "all carbon dissolved" to "carbon by the solubility line". */
const TURN = 14
/** Carbon bound for good by each wt% of vanadium above 0.2, which dissolves in no hardening heat. */
const BOUND_BY_VANADIUM = 0.08

/**
 * High-speed steel, whose tungsten and molybdenum carbides give up their carbon only near the melting point: about 0.6 wt% at
 * 1220 degC, as its hardness (62 HRC quenched from 1066 degC, 66 from 1204) and measured martensite starts of 180..220 degC ask for.
 */
const HIGH_SPEED = { carbon: 0.6, atK: 1493, perK: 0.0008 } as const

/** Carbon that austenite of this steel can hold beside its carbides at `temperatureK` [wt%]. */
function carbonSolubility(c: Composition, temperatureK: number): number {
  const heldBack = CHROMIUM.most * (1 - exp(-c.Cr / CHROMIUM.scale)) + CHROMIUM.perWtPct * c.Cr
  const lowAlloy = plainAcmCarbon(temperatureK) - heldBack - SHARE_OF_SHIFT * eutectoidShiftBesideChromium(c)
  const highSpeed = HIGH_SPEED.carbon + HIGH_SPEED.perK * (temperatureK - HIGH_SPEED.atK)
  const share = Math.min(1, Math.max(0, (c.W + c.Mo - 4) / 4))
  return Math.max(0.3, lowAlloy + share * (highSpeed - lowAlloy))
}

/**
 * What is in solution in the austenite of a steel held long enough at `temperatureK` [wt%].
 *
 * Below the solubility line everything dissolves; above it the rest of the carbon stays in carbides, which hold chromium,
 * molybdenum, tungsten and vanadium back with it. Smooth in temperature and composition. Within 0.15 wt% of the published
 * matrix carbon of the steels named above (0.05 for most), and above it for 52100 and O1 (0.62, 0.65 C published).
 */
export function dissolvedComposition(c: Composition, temperatureK: number): Composition {
  const free = Math.max(0.02, c.C - BOUND_BY_VANADIUM * Math.max(0, c.V - 0.2))
  const carbon = c.C <= 0 ? 0 : Math.min(c.C, free / pow(1 + pow(free / carbonSolubility(c, temperatureK), TURN), 1 / TURN))
  const held = c.C - carbon
  return {
    ...c,
    C: carbon,
    Cr: c.Cr / (1 + 0.25 * held),
    Mo: c.Mo / (1 + 1.5 * held),
    W: c.W / (1 + 1.5 * held),
    V: c.V / (1 + 5 * held),
    Mn: c.Mn / (1 + 0.3 * held),
  }
}
