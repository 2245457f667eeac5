import { exp, ln, log10 } from '#engine/arithmetic/elementary.ts'
import type { Steel } from '#engine/materials/steel.ts'
import { type GradeTreatment, treatmentById } from '#engine/materials/treatment.ts'
import { austeniteAt, retainedAusteniteFraction } from '#engine/metallurgy/austenite.ts'
import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import { usualHardeningK } from '#engine/metallurgy/dissolved-composition.ts'
import { type HardeningResponse, hardeningResponse } from '#engine/metallurgy/hardening-response.ts'
import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { fullMartensiteHrc } from '#engine/metallurgy/martensite-hardness.ts'
import { embrittlingRanges } from '#engine/metallurgy/tempering-embrittlement.ts'
import { temperingResponse } from '#engine/metallurgy/tempering-response.ts'
import type { Medium, SteelFacts } from './steel-facts.ts'

/** Soak that is long enough to show what the steel can do [s]. */
const LONG_SOAK_S = 1200

/** What the catalogue holds of a steel, and where it is silent, what its analysis gives. */
export function steelFacts(steel: Steel): SteelFacts {
  const treatment = steel.gradeId === undefined ? undefined : treatmentById(steel.gradeId)
  const found = criticalTemperatures(steel.composition, steel.gradeId === undefined ? {} : { gradeId: steel.gradeId })
  const critical = {
    ac1K: found.ac1K.value,
    ac3K: Math.max(found.ac3K.value, found.ac1K.value + 5),
    msK: found.msK.value,
  }
  const hardening = hardeningRange(treatment) ?? workedOutRange(steel, critical)
  const middleK = 0.5 * (hardening.fromK + hardening.toK)
  const austenite = austeniteAt(steel, middleK, LONG_SOAK_S).composition
  const response = hardeningResponse(steel, austenite)
  const tempering = temperingResponse(steel, austenite)
  // A lean steel does not harden fully at any cooling that a response speaks of; its martensite is still what its carbon makes it.
  const fullHrc = Math.max(hrcFromHv(response.quenchedHv(QUICKEST_S)), fullMartensiteHrc(austenite.C) - SHORT_OF_FULL_HRC)
  const richestC = steel.range.C?.[1] ?? steel.composition.C
  const soak = leastSoak(treatment)
  return {
    name: steel.name,
    ...(steel.gradeId === undefined ? {} : { gradeId: steel.gradeId }),
    composition: steel.composition,
    critical,
    hardening,
    ...(soak === undefined ? {} : { soak }),
    media: mediaOf(treatment) ?? workedOutMedia(steel),
    cycles: cyclesOf(steel, treatment),
    grainSize: steel.grainSize,
    fullHrc: {
      value: fullHrc,
      high: fullHrc + Math.max(0, fullMartensiteHrc(richestC) - fullMartensiteHrc(steel.composition.C)) + 1,
    },
    fullCoolingS: slowestFullS(response, fullHrc),
    usualRetained: retainedAusteniteFraction(austeniteAt(steel, hardening.toK, LONG_SOAK_S).composition, HAND_WARM_K),
    temperedHrc: (quenchedHrc, { atK, holdS, times }) => {
      const parameterK = atK * (tempering.constant + log10(Math.max((holdS * times) / 3600, 1e-3)))
      return hrcFromHv(tempering.temperedHv(hvFromHrc(quenchedHrc), 1, parameterK))
    },
    afterTempers: (quenchedHrc, retained, { atK, holdS, times }) => {
      const hours = Math.max(holdS / 3600, 1e-3)
      const hv = tempering.temperedHv(hvFromHrc(quenchedHrc), 1, atK * (tempering.constant + log10(hours * times)))
      const after = tempering.afterTempers(hv, retained, [{ peakK: atK, parameterK: atK * (20 + log10(hours)), times }])
      return { overHrc: hrcFromHv(after.hv) - hrcFromHv(hv), left: after.left, fresh: after.fresh }
    },
    embrittling: embrittlingRanges(steel).filter(({ onlySlowCooling }) => !onlySlowCooling),
  }
}

/** A quench is taken to end where the piece can be held in the hand [K]. */
const HAND_WARM_K = 323.15
const QUICKEST_S = 0.1
/** Retained austenite and carbide keep a quenched skin this much under full martensite at most [HRC]. */
const SHORT_OF_FULL_HRC = 3
const SLOWEST_S = 1e5
/** What counts as full hardness: within this of the best [HRC]. */
const NEARLY_FULL_HRC = 2

/** Slowest cooling from 800 to 500 degC that leaves nearly full hardness [s]. */
function slowestFullS(response: HardeningResponse, fullHrc: number): number {
  let low = ln(QUICKEST_S)
  let high = ln(SLOWEST_S)
  for (let i = 0; i < 30; i++) {
    const middle = 0.5 * (low + high)
    if (hrcFromHv(response.quenchedHv(exp(middle))) >= fullHrc - NEARLY_FULL_HRC) low = middle
    else high = middle
  }
  return exp(low)
}

type Range = SteelFacts['hardening']

/** A source of another time, whose steel was another. */
const HISTORIC = /\bhistoric\b/

/** All that living sources allow: a heat inside any one of them is no fault. */
function hardeningRange(treatment: GradeTreatment | undefined): Range | undefined {
  const items = [treatment?.austenitise, treatment?.austenitiseForWater].flatMap((item) => item?.all ?? [])
  const living = items.filter(({ says }) => !HISTORIC.test(says))
  const use = treatment?.austenitise?.use
  if (use === undefined || living.length === 0) return undefined
  const fromK = Math.min(...living.map((each) => each.fromK))
  const inOil = (treatment?.austenitise?.all ?? []).filter(({ says }) => !HISTORIC.test(says)).map((each) => each.fromK)
  const inOilFromK = inOil.length === 0 ? fromK : Math.min(...inOil)
  return {
    fromK,
    ...(inOilFromK > fromK ? { inOilFromK } : {}),
    toK: Math.max(...living.map(({ toK }) => toK)),
    published: true,
    source: living.length === 1 ? use.source : `${use.source} and others`,
  }
}

/** Handbook rule: 30..70 K over Ac3 below the eutectoid carbon, 30..80 K over Ac1 above it (common practice, no source); rich steel wants much more. */
function workedOutRange({ composition }: Steel, { ac1K, ac3K }: SteelFacts['critical']): Range {
  const source = 'from its critical temperatures'
  if (composition.Cr >= 3 || composition.W >= 3) {
    const usualK = usualHardeningK(composition)
    return { fromK: usualK - 25, toK: usualK + 30, published: false, source: 'from its analysis' }
  }
  return composition.C < 0.75
    ? { fromK: ac3K + 25, toK: ac3K + 75, published: false, source }
    : { fromK: ac1K + 30, toK: ac1K + 85, published: false, source }
}

function leastSoak(treatment: GradeTreatment | undefined): SteelFacts['soak'] {
  const soaks = (treatment?.soaks ?? []).filter(({ fromS, says }) => fromS > 0 && !/\bhistoric\b/.test(says))
  const [least] = [...soaks].sort((a, b) => a.fromS - b.fromS)
  return least === undefined ? undefined : { leastS: least.fromS, source: least.source }
}

const MEDIUM: { readonly [kind: string]: Medium } = {
  air: 'air',
  salt: 'oil',
  oil: 'oil',
  'fast oil': 'oil',
  water: 'water',
  brine: 'water',
}
const ORDER: readonly Medium[] = ['air', 'oil', 'water']

function mediaOf(treatment: GradeTreatment | undefined): SteelFacts['media'] | undefined {
  if (treatment === undefined || treatment.quenchants.length === 0) return undefined
  const never = new Set(treatment.neverQuenchIn.map(({ kind }) => MEDIUM[kind]))
  const allowed = treatment.quenchants.filter(({ kind }) => !never.has(MEDIUM[kind]))
  const fiercest = [...allowed].map(({ kind }) => MEDIUM[kind] as Medium).sort((a, b) => ORDER.indexOf(b) - ORDER.indexOf(a))[0]
  const water = allowed.find(({ kind }) => MEDIUM[kind] === 'water')
  return {
    fiercest: fiercest ?? 'oil',
    says: [...new Set(allowed.map(({ kind }) => kind))].join(' or '),
    ...(water?.aboveM === undefined ? {} : { waterFromM: water.aboveM }),
    source: treatment.quenchStatements[0]?.source ?? 'general practice',
  }
}

/** Where no sheet speaks: by the alloy that makes it harden deep (common practice, no source). */
function workedOutMedia({ composition: { C, Mn, Cr, Mo, Ni, V, W } }: Steel): SteelFacts['media'] {
  const source = 'judged by its alloy; common practice, no source'
  if (Cr >= 4 || (Cr >= 2.5 && Mo >= 0.8)) return { fiercest: 'air', says: 'air', source }
  const deep = Math.max(0, Mn - 0.9) + Cr + 2 * Mo + Ni / 3 + V + W
  if (C >= 0.33 && deep >= 0.6) return { fiercest: 'oil', says: 'oil', source }
  return { fiercest: 'water', says: 'water', ...(C >= 0.65 && C < 0.9 ? { waterFromM: 0.01 } : {}), source }
}

function cyclesOf({ composition }: Steel, treatment: GradeTreatment | undefined): SteelFacts['cycles'] {
  if (treatment !== undefined) return { least: treatment.cycles.from, source: treatment.cycles.source }
  const rich = composition.Cr >= 3 || composition.Mo >= 1 || composition.W >= 1.5
  return { least: rich ? 2 : 1, source: 'rich steel, by its like in SAE J437' }
}
