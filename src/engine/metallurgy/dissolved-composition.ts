import { exp, pow } from '#engine/arithmetic/elementary.ts'
import type { Composition } from '#engine/materials/steel.ts'
import { plainAcmCarbon } from './boundary-lines.ts'
import { andrewsAc1, andrewsAc3, hougardyAc1, kasatkinAc3 } from './critical-correlations.ts'

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

/** Ac1 by the mean of Andrews and Hougardy, carried beyond their range [K]. */
export function ac1ByFormulaK(c: Composition): number {
  const held = heldInRange(c)
  return 0.5 * (andrewsAc1.evaluate(held) + hougardyAc1.evaluate(held))
}

/**
 * Ac3 by the mean of Andrews' short form and Kasatkin's, carried beyond their range [K]; for a steel above its eutectoid the end
 * of the Ac1 range, which chromium widens (52100: 725..770, 750..785; D2: 787..845 degC).
 */
export function ac3ByFormulaK(c: Composition): number {
  const held = heldInRange(c)
  const ferriteGone =
    0.5 * (andrewsAc3.evaluate(held) + kasatkinAc3.evaluate({ ...held, Cr: Math.min(c.Cr, 2), Mo: Math.min(c.Mo, 1) }))
  return Math.max(ferriteGone, ac1ByFormulaK(c) + 8 + 25 * Math.min(2, c.Cr))
}

/**
 * The heat that this steel is usually hardened from [K], from its composition: 45 K over Ac3 in a poor steel, 65 K over Ac1 in
 * a rich one, more for every per cent of carbide former. Reproduces the customary heats of 1095 (790), O1 (805), 52100 (845),
 * S7 (940), A2 (970), D2 (1010), H13 (1020), M2 (1220 degC) within 35 K.
 */
export function usualHardeningK(c: Composition): number {
  return Math.max(ac3ByFormulaK(c) + 45, ac1ByFormulaK(c) + 65 + 20 * Math.min(c.Cr, 5) + 50 * c.V + 13 * (c.Mo + c.W))
}

/**
 * Fitted here to eight published matrix compositions (52100, O1, L6, A2, D2, S7, H13, M2) and to measured martensite starts of
 * steels above 0.7 C together: carbon that austenite can hold falls below the plain Acm line by up to 1.2 wt% with chromium.
 */
const HELD_BACK_WT_PCT = 1.2
const CHROMIUM_SCALE = 6.5
/** Sharpness of the turn from "all carbon dissolved" to "carbon by the solubility line". */
const TURN = 9
/** Carbon bound for good by each wt% of vanadium above 0.2, which dissolves in no hardening heat. */
const BOUND_BY_VANADIUM = 0.08

/**
 * High-speed steel, whose tungsten and molybdenum carbides give up their carbon only near the melting point: about 0.6 wt% at
 * 1220 degC, as its hardness (62 HRC quenched from 1066 degC, 66 from 1204) and measured martensite starts of 180..220 degC ask for.
 */
const HIGH_SPEED = { carbon: 0.6, atK: 1493, perK: 0.0008 } as const

/** Carbon that austenite of this steel can hold beside its carbides at `temperatureK` [wt%]. */
function carbonSolubility(c: Composition, temperatureK: number): number {
  const chromium = plainAcmCarbon(temperatureK) - HELD_BACK_WT_PCT * (1 - exp(-c.Cr / CHROMIUM_SCALE))
  const highSpeed = HIGH_SPEED.carbon + HIGH_SPEED.perK * (temperatureK - HIGH_SPEED.atK)
  const share = Math.min(1, Math.max(0, (c.W + c.Mo - 4) / 4))
  return Math.max(0.3, chromium + share * (highSpeed - chromium))
}

/**
 * What is in solution in the austenite of a steel held long enough at `temperatureK` [wt%].
 *
 * Below the solubility line everything dissolves; above it the rest of the carbon stays in carbides, which hold chromium,
 * molybdenum, tungsten and vanadium back with it. Smooth in temperature and composition. Within 0.2 wt% of the published
 * matrix carbon of the steels named above, and above it for 52100 and O1: with the published matrix (0.62, 0.65 C) every formula puts
 * their martensite start 30 to 70 K over the measured one and leaves half of the measured retained austenite.
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
