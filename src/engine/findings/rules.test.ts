import { describe, expect, test } from 'vitest'
import type { Section } from '#engine/geometry/profile.ts'
import { compositionOf } from '#engine/materials/steel.ts'
import type { HardnessAim, Zone } from '#engine/simulation/process.ts'
import type { QuenchRecord } from '#engine/simulation/records.ts'
import type { Bath, BathKind, Oven } from '#engine/surface-heat/gear.ts'
import type { Account } from './account.ts'
import { FINDING_IDS, type FindingId } from './finding.ts'
import { leastHeatK } from './hardening-heat.ts'
import { findingsIn } from './rules.ts'
import { SAMPLE_STEEL, type SampleChange, sampleAccount, spread } from './sample-account.ts'
import { IN_METRIC } from './wording.ts'

const C = 273.15
const idsOf = (account: Account): FindingId[] => findingsIn(account, IN_METRIC).map(({ id }) => id)

const round = (fromMm: number, toMm: number, lengthMm: number, more: Partial<Section> = {}): Section => ({
  shape: 'round',
  from: { acrossM: fromMm / 1000 },
  to: { acrossM: toMm / 1000 },
  lengthM: lengthMm / 1000,
  ...more,
})
const shape = (...sections: Section[]) => ({ profile: { sections } })
const zone = (name: string, fromMm: number, toMm: number, aim: HardnessAim): Zone => ({
  name,
  fromM: fromMm / 1000,
  toM: toMm / 1000,
  aim,
  assumed: false,
})
const bath = (kind: BathKind, more: Partial<Bath> = {}): Bath => ({
  name: 'tub',
  kind,
  volumeM3: 0.06,
  depthM: 0.4,
  temperatureK: kind === 'water' || kind === 'brine' ? 21 + C : 52 + C,
  ...more,
})
const into = (tub: Bath, more: Partial<QuenchRecord> = {}): Partial<QuenchRecord> => ({
  bath: tub,
  bathStartK: tub.temperatureK,
  bathEndK: tub.temperatureK + 4,
  ...more,
})
const oven = (more: Partial<Oven>): { shop: Account['job']['shop'] } => {
  const { shop } = sampleAccount().job
  return { shop: { ...shop, ovens: [{ name: 'small oven', maxK: 262 + C, readsLowK: 0, swingK: 3, ...more }] } }
}
const steel = (
  elements: Parameters<typeof compositionOf>[0],
  more: Partial<Account['steel']> = {},
): Partial<Account['steel']> => ({
  composition: compositionOf(elements),
  ...more,
})
const slow = (hrc: number) => ({
  cooling800To500S: 31,
  martensiteFraction: 0.4,
  quenchedHrc: spread(hrc),
  temperedHrc: spread(hrc - 1),
})
const soft = {
  quenchedHrc: spread(24),
  temperedHrc: spread(24),
  martensiteFraction: 0,
  cooling800To500S: Number.POSITIVE_INFINITY,
}
/** Never red beyond this height [mm]. */
const coldBeyond = (mm: number) => (xM: number) => (xM > mm / 1000 ? { peakK: 371 + C, ...soft } : {})
const stepped = (filletMm: number) => shape(round(14, 14, 40), round(20, 20, 100, { filletM: filletMm / 1000 }))
const dished = (acrossMm: number) =>
  shape(round(22, 22, 60, { dish: { acrossM: acrossMm / 1000, depthM: 0.005 } }), round(22, 22, 80))
const wire = { aim: { lowHrc: 57, highHrc: 61 } }

/** For every fault: jobs that have its cause, and near twins that do not. */
const CASES: { readonly [Id in Exclude<FindingId, 'unknown-steel-spread'>]: { raised: SampleChange[]; silent: SampleChange[] } } =
  {
    underheated: {
      raised: [
        { heat: { toK: 745 + C, hottestK: 746 + C, coldestK: 741 + C } },
        { heat: { outsideUpS: null, hottestK: 733 + C, coldestK: 722 + C, middleUpS: null } },
        { quench: { coldestEntryK: 655 + C } },
        {
          heat: { part: { fromM: 0, toM: 0.025 } },
          at: (xM) => (xM > 0.026 ? { peakK: 702 + C, austeniteFraction: 0 } : {}),
        },
      ],
      silent: [
        { heat: { toK: 779 + C, hottestK: 780 + C, coldestK: 776 + C } },
        { quench: { coldestEntryK: 712 + C } },
        // Air-hardening steel may cool a long way on the walk.
        { quench: { coldestEntryK: 655 + C }, steel: { fullCoolingS: 400 } },
        { heat: { part: { fromM: 0, toM: 0.045 } }, at: (xM) => (xM > 0.046 ? { peakK: 702 + C, austeniteFraction: 0 } : {}) },
      ],
    },
    overheated: {
      raised: [{ heat: { toK: 861 + C, hottestK: 862 + C } }, { heat: { hottestK: 858 + C } }],
      silent: [{ heat: { toK: 829 + C, hottestK: 831 + C, coldestK: 826 + C } }],
    },
    'soak-too-short': {
      raised: [{ heat: { holdS: 60, middleUpS: null, coldestK: 751 + C } }, { heat: { holdS: 260, middleUpS: 110 } }],
      silent: [
        { heat: { holdS: 620, middleUpS: 110 } },
        // Ten degrees short of the sheet, and hard all the same.
        { heat: { part: { fromM: 0, toM: 0.04 }, holdS: 900, middleUpS: null, coldestK: 763 + C } },
        // A cold end keeps the place some way under the heat for good; it stood there long enough.
        { heat: { part: { fromM: 0, toM: 0.04 }, holdS: 900, middleUpS: null, coldestK: 777 + C } },
        // Plain and normalised: up is enough.
        {
          heat: { holdS: 240, middleUpS: 110 },
          steel: steel({ C: 0.84, Mn: 0.7 }, { media: { fiercest: 'water', says: 'fast oil or water', source: 'a sheet' } }),
          before: [{ ...(sampleAccount().records[0] as never as object), kind: 'normalise', step: -1 } as never],
        },
      ],
    },
    'uneven-heat': {
      raised: [{ heat: { even: false } }, { heat: { hottestK: 841 + C, coldestK: 797 + C } }],
      silent: [{ heat: { hottestK: 812 + C, coldestK: 797 + C } }],
    },
    'steel-will-not-harden': {
      raised: [
        {
          steel: steel({ C: 0.18, Mn: 0.75 }, { name: '1018', fullHrc: { value: 43.5, high: 46 } }),
          at: () => ({ quenchedHrc: spread(30), temperedHrc: spread(29), martensiteFraction: 0.3 }),
        },
        {
          job: { zones: [] },
          steel: steel(
            { C: 0.16 },
            { name: 'A36', fullHrc: { value: 42, high: 45 }, media: { fiercest: 'water', says: 'water', source: 'a sheet' } },
          ),
          at: () => ({ quenchedHrc: spread(22), martensiteFraction: 0.1 }),
        },
        {
          // Nobody asked for more than a soft struck end, and that was taken.
          job: { zones: [{ ...zone('struck end', 120, 140, { highHrc: 45 }), assumed: true }] },
          steel: steel({ C: 0.16 }, { name: 'A36', fullHrc: { value: 42, high: 45 } }),
          at: () => ({ quenchedHrc: spread(22), martensiteFraction: 0.1 }),
        },
        {
          quench: into(bath('brine')),
          at: () => slow(44),
          steel: { media: { fiercest: 'water', says: 'brine or water', source: 'a sheet' } },
        },
      ],
      silent: [{}, { at: () => slow(48) }],
    },
    'bath-too-slow': {
      raised: [
        { at: () => slow(48) },
        // The aim is met, but much is lost.
        {
          at: () => ({ ...slow(57.5), martensiteFraction: 0.7 }),
          job: { zones: [zone('point', 0, 30, { lowHrc: 50, highHrc: 58 })] },
        },
        { at: () => slow(41), quench: into({ name: 'still air', kind: 'still air', temperatureK: 293 }) },
      ],
      silent: [
        {},
        // Not hot enough: the fire is to blame.
        { at: () => ({ ...slow(48), austeniteFraction: 0.5 }) },
        // A body that is asked for no more than it has.
        { at: () => slow(48), job: { zones: [zone('body', 0, 30, { lowHrc: 40, highHrc: 50 })] } },
      ],
    },
    'bath-too-fast': {
      raised: [
        { quench: into(bath('water')) },
        { quench: into(bath('brine')), steel: { media: { fiercest: 'air', says: 'air', source: 'a sheet' } } },
        {
          quench: into(bath('water')),
          job: shape(round(4, 9, 60), round(9, 9, 80)),
          steel: steel(
            { C: 0.84, Mn: 0.7 },
            { media: { fiercest: 'water', says: 'fast oil or water', waterFromM: 0.01, source: 'a sheet' } },
          ),
        },
      ],
      silent: [
        { quench: into(bath('fast oil')) },
        {
          quench: into(bath('water')),
          steel: steel(
            { C: 0.84, Mn: 0.7 },
            { media: { fiercest: 'water', says: 'fast oil or water', waterFromM: 0.01, source: 'a sheet' } },
          ),
        },
        { quench: into(bath('water')), steel: steel({ C: 0.18, Mn: 0.7 }) },
      ],
    },
    'bath-too-hot': {
      raised: [
        { quench: into(bath('medium oil', { temperatureK: 97 + C })) },
        { quench: into(bath('water', { temperatureK: 55 + C })) },
      ],
      silent: [
        { quench: into(bath('medium oil', { temperatureK: 68 + C })) },
        { quench: into(bath('water', { temperatureK: 31 + C })) },
      ],
    },
    'bath-too-cold': {
      raised: [
        { quench: into(bath('medium oil', { temperatureK: 12 + C })) },
        { quench: into(bath('water', { temperatureK: 3 + C })) },
      ],
      silent: [
        { quench: into(bath('fast oil', { temperatureK: 22 + C })) },
        { quench: into(bath('water', { temperatureK: 14 + C })) },
      ],
    },
    'bath-too-small': {
      raised: [
        { quench: { bathEndK: 51 + C + 57, massUnderKg: 1.9 } },
        { quench: into(bath('water'), { bathEndK: 47 + C }) },
        { quench: into(bath('fast oil', { temperatureK: 79 + C, flashK: 137 + C }), { bathEndK: 116 + C }) },
      ],
      silent: [{ quench: { bathEndK: 51 + C + 33, massUnderKg: 1.9 } }, { quench: into(bath('water'), { bathEndK: 36 + C }) }],
    },
    'bath-too-shallow': {
      raised: [
        { quench: into(bath('medium oil', { depthM: 0.17 })) },
        { quench: into(bath('medium oil', { depthM: 0.12 })) },
        {
          quench: { depthM: 0.02, lengthUnderM: 0.02 },
          at: (xM) => (xM > 0.02 ? soft : {}),
        },
      ],
      silent: [
        { quench: into(bath('medium oil', { depthM: 0.195 })) },
        { quench: into(bath('medium oil', { depthM: 0.12 }), { depthM: 0.045, lengthUnderM: 0.045 }) },
      ],
    },
    'quench-line-at-shoulder': {
      raised: [{ job: stepped(3), quench: { depthM: 0.042, lengthUnderM: 0.042 } }],
      silent: [
        { job: stepped(3), quench: { depthM: 0.058, lengthUnderM: 0.058 } },
        { job: stepped(3) },
        // Never red at the line.
        { job: stepped(3), quench: { depthM: 0.042, lengthUnderM: 0.042 }, at: coldBeyond(33) },
      ],
    },
    'sharp-inner-corner': {
      raised: [{ job: stepped(0) }, { job: stepped(0.3) }],
      silent: [{ job: stepped(2) }, { job: stepped(0), at: coldBeyond(30) }],
    },
    'section-jump': {
      raised: [
        { job: shape(round(14, 14, 40), round(34, 34, 100, { filletM: 0.004 })) },
        // Air pulls less, but a step of three to one is felt there too.
        { job: shape(round(12, 12, 40), round(36, 36, 100, { filletM: 0.004 })), quench: into(bath('still air')) },
      ],
      silent: [
        { job: shape(round(14, 14, 40), round(30, 30, 100, { filletM: 0.004 })), quench: into(bath('still air')) },
        { job: shape(round(14, 14, 40), round(19, 19, 100, { filletM: 0.004 })) },
        { job: shape(round(14, 34, 60), round(34, 34, 80)) },
        { job: shape(round(14, 14, 60), round(34, 34, 80, { filletM: 0.004 })), at: coldBeyond(45) },
      ],
    },
    'thin-beside-thick': {
      raised: [
        { job: shape(round(6, 6, 20), round(25, 25, 100, { filletM: 0.003 })) },
        { job: shape(round(22, 22, 60, { bore: { acrossM: 0.016, depthM: 0.03 } }), round(22, 22, 80)) },
      ],
      silent: [
        { job: shape(round(12, 12, 20), round(25, 25, 100, { filletM: 0.003 })) },
        { job: shape(round(6, 25, 60), round(25, 25, 80)) },
        { job: shape(round(22, 22, 60, { bore: { acrossM: 0.006, depthM: 0.03 } }), round(22, 22, 80)) },
      ],
    },
    'temper-soon': {
      raised: [{ temper: null }, { temper: { delayS: 3 * 3600 } }, { temper: { part: { fromM: 0.11, toM: 0.14 } } }],
      silent: [
        { temper: { delayS: 900 } },
        { temper: null, at: () => ({ quenchedHrc: spread(43), temperedHrc: spread(43) }) },
        { colours: {} },
      ],
    },
    'temper-too-cool-for-aim': {
      raised: [
        { job: { zones: [zone('point', 0, 30, { lowHrc: 54, highHrc: 57 })] } },
        { job: { zones: [zone('point', 0, 30, { lowHrc: 54, highHrc: 57 })] }, colours: {} },
      ],
      silent: [
        { job: { zones: [zone('point', 0, 30, { lowHrc: 58, highHrc: 61 })] } },
        { job: { zones: [zone('point', 0, 30, { lowHrc: 56, highHrc: 59.7 })] } },
      ],
    },
    'temper-too-hot-for-aim': {
      raised: [{ job: { zones: [zone('point', 0, 30, { lowHrc: 62, highHrc: 64 })] } }],
      silent: [
        // Less beside the aim than a tester can tell.
        { job: { zones: [zone('point', 0, 30, { lowHrc: 61, highHrc: 63 })] } },
        { job: { zones: [zone('point', 0, 30, { lowHrc: 58, highHrc: 63 })] } },
        // The quench is to blame.
        { at: () => slow(48) },
      ],
    },
    'oven-cannot-reach': {
      raised: [
        { temper: { setK: 431 + C } },
        { job: { zones: [zone('spring', 0, 140, { lowHrc: 44, highHrc: 48 })] } },
        { heat: { fire: { name: 'small oven', kind: 'muffle' } } },
      ],
      silent: [
        { temper: { setK: 255 + C, trueK: 255 + C } },
        { job: { ...oven({ maxK: 550 + C }), zones: [zone('spring', 0, 140, { lowHrc: 44, highHrc: 48 })] } },
      ],
    },
    'oven-error-matters': {
      raised: [
        { job: oven({ readsLowK: 31 }) },
        { job: oven({ readsLowK: -31 }) },
        // Half a point is a quarter of an aim of two.
        { job: { ...oven({ readsLowK: 12 }), zones: [zone('point', 0, 30, { lowHrc: 59, highHrc: 61 })] } },
      ],
      silent: [
        { job: { ...oven({ readsLowK: 3 }), zones: [zone('point', 0, 30, { lowHrc: 59, highHrc: 61 })] } },
        { job: { ...oven({ readsLowK: 12 }), zones: [zone('point', 0, 30, { lowHrc: 57, highHrc: 61 })] } },
        { job: oven({ readsLowK: 8, swingK: 15 }) },
        { job: oven({ readsLowK: 0, swingK: 12 }) },
      ],
    },
    'colours-unreliable': {
      raised: [
        { colours: { reachedS: null, hottestEdgeK: 191 + C } },
        { colours: { risePerS: 9 } },
        { colours: {}, steel: steel({ C: 0.6, Cr: 1.1, Mn: 0.9 }) },
      ],
      silent: [{ colours: {}, steel: steel({ C: 0.84, Mn: 0.7 }) }],
    },
    'embrittling-range': {
      raised: [{ temper: { setK: 301 + C, trueK: 301 + C } }],
      silent: [
        { temper: { setK: 251 + C, trueK: 251 + C } },
        // The end of the range itself, written in the other scale.
        { temper: { setK: 263.3 + C, trueK: 263.3 + C } },
        { temper: { setK: 381 + C, trueK: 381 + C } },
        { temper: { setK: 301 + C, trueK: 301 + C }, at: () => soft },
      ],
    },
    'retained-austenite': {
      raised: [
        { at: () => ({ retainedAusteniteFraction: 0.17, austeniteLeftFraction: 0.16 }) },
        { at: () => ({ retainedAusteniteFraction: 0.24, austeniteLeftFraction: 0.2 }), steel: { usualRetained: 0.19 } },
      ],
      silent: [
        { at: () => ({ retainedAusteniteFraction: 0.1 }) },
        { at: () => ({ retainedAusteniteFraction: 0.17, austeniteLeftFraction: 0.01 }) },
      ],
    },
    'more-than-one-temper': {
      raised: [{ temper: { times: 1 }, steel: { cycles: { least: 2, source: 'a sheet' } } }],
      silent: [{ temper: { times: 2 }, steel: { cycles: { least: 2, source: 'a sheet' } } }, { temper: { times: 1 } }],
    },
    'struck-end-hard': {
      raised: [{ job: { struck: true } }, { job: { struck: true }, at: (xM) => (xM > 0.12 ? { temperedHrc: spread(47) } : {}) }],
      silent: [
        {},
        { job: { struck: true }, at: (xM) => (xM > 0.08 ? { quenchedHrc: spread(38), temperedHrc: spread(38) } : {}) },
      ],
    },
    'hollow-edge-chips': {
      raised: [{ job: dished(18) }],
      silent: [{ job: dished(9) }, { job: dished(18), at: () => ({ temperedHrc: spread(51) }) }],
    },
    'steam-in-hollow': {
      raised: [
        { job: dished(9), quench: into(bath('water')) },
        { job: shape(round(22, 22, 140, { bore: { acrossM: 0.008, depthM: 0.03 } })) },
      ],
      silent: [
        { job: dished(9), quench: into(bath('still air')) },
        { job: dished(9), at: () => soft },
        { job: shape(round(22, 22, 140, { dish: { acrossM: 0.018, depthM: 0.001 } })) },
      ],
    },
    'decarburised-skin': {
      raised: [{ softSkin: { grindOffM: 0.00021 } }, { softSkin: { grindOffM: 0.0004, halfThicknessM: 0.001 } }],
      silent: [
        {},
        { softSkin: { grindOffM: 0.00006 } },
        { softSkin: { grindOffM: 0.0003 }, steel: steel({ ...SAMPLE_STEEL.composition, C: 0.2 }) },
      ],
    },
    'coarse-grain': {
      raised: [{ heat: { toK: 1010 + C, hottestK: 1011 + C, coldestK: 1003 + C } }, { steel: { grainSize: 3 } }],
      silent: [{ heat: { holdS: 1800 } }, { heat: { toK: 851 + C, hottestK: 852 + C, coldestK: 848 + C } }],
    },
    'red-short': {
      raised: [
        { steel: steel({ ...SAMPLE_STEEL.composition, S: 0.28 }) },
        { steel: steel({ ...SAMPLE_STEEL.composition, Cu: 0.6 }) },
      ],
      silent: [
        { steel: steel({ ...SAMPLE_STEEL.composition, S: 0.04 }) },
        { steel: steel({ ...SAMPLE_STEEL.composition, Cu: 0.6, Ni: 0.5 }) },
      ],
    },
    'galvanised-fume': {
      raised: [{ steel: { name: '12L14', gradeId: '12L14' } }, { job: { piece: 'hook from galvanised pipe' } }],
      silent: [{ job: { piece: 'hook from bright pipe' } }],
    },
    'oil-fire': {
      raised: [
        { quench: { depthM: 0.05, lengthUnderM: 0.05 } },
        { quench: { bathEndK: 161 + C } },
        { quench: into(bath('medium oil', { depthM: 0.1 })) },
        { quench: { hottestOutK: 402 + C } },
        { quench: into(bath('medium oil', { name: 'used engine oil' })) },
      ],
      silent: [
        {},
        { quench: { depthM: 0.05, lengthUnderM: 0.05 }, at: (xM) => (xM >= 0.05 ? { peakK: 255 + C, ...soft } : {}) },
        { quench: into(bath('water'), { depthM: 0.05, lengthUnderM: 0.05 }) },
      ],
    },
    'oil-smoke': {
      raised: [
        { quench: { depthM: 0.05, lengthUnderM: 0.05 } },
        { quench: { bathEndK: 149 + C } },
        { quench: into(bath('medium oil', { name: 'motor oil' })) },
      ],
      silent: [{}, { quench: into(bath('vegetable oil')) }],
    },
    'water-in-oil': {
      raised: [
        {
          quench: into(bath('medium oil', { name: 'drum with rain water' })),
          job: { shop: { ...sampleAccount().job.shop, baths: [bath('medium oil', { name: 'drum with rain water' })] } },
        },
        {
          quench: into(bath('water')),
          temper: null,
          after: [{ ...(sampleAccount().records[2] as QuenchRecord), step: 3 }],
        },
      ],
      silent: [{}, { quench: into(bath('water')) }],
    },
    'aim-out-of-reach': {
      raised: [
        { job: { zones: [zone('point', 0, 30, { lowHrc: 68, highHrc: 70 })] } },
        { job: { zones: [zone('point', 0, 30, wire.aim), zone('shank', 20, 60, { highHrc: 40 })] } },
        { steel: { fullHrc: { value: 58, high: 60 } }, job: { zones: [zone('point', 0, 30, { lowHrc: 62, highHrc: 64 })] } },
      ],
      silent: [{}, { job: { zones: [zone('point', 0, 30, wire.aim), zone('shank', 31, 60, { highHrc: 40 })] } }],
    },
  }

describe('each finding is raised with its cause and not without it', () => {
  for (const [id, { raised, silent }] of Object.entries(CASES)) {
    raised.forEach((change, k) => {
      test(`${id}: raised (${k + 1})`, () => expect(idsOf(sampleAccount(change))).toContain(id))
    })
    silent.forEach((change, k) => {
      test(`${id}: silent (${k + 1})`, () => expect(idsOf(sampleAccount(change))).not.toContain(id))
    })
  }
})

test('a sound job has no findings', () => {
  expect(findingsIn(sampleAccount(), IN_METRIC)).toEqual([])
})

const everyFinding = Object.values(CASES).flatMap(({ raised }) =>
  raised.flatMap((change) => findingsIn(sampleAccount(change), IN_METRIC)),
)

test('every finding is short, whole and carries figures', () => {
  expect(everyFinding.length).toBeGreaterThan(60)
  for (const { id, says, because, remedy } of everyFinding) {
    expect(FINDING_IDS).toContain(id)
    for (const text of [says, because, remedy]) {
      expect(text, id).toMatch(/^[A-Z0-9].*[.]$/s)
      expect(text, id).not.toMatch(/NaN|undefined|Infinity|null/)
      expect(text.length, `${id}: ${text}`).toBeLessThanOrEqual(260)
    }
    expect(says.length + because.length + remedy.length, id).toBeLessThanOrEqual(520)
  }
})

test('what can hurt somebody carries its caution', () => {
  const dangerous: readonly FindingId[] = [
    'struck-end-hard',
    'oil-fire',
    'oil-smoke',
    'water-in-oil',
    'galvanised-fume',
    'hollow-edge-chips',
  ]
  for (const { id, caution } of everyFinding) if (dangerous.includes(id)) expect(caution, id).toMatch(/[.]$/)
})

test('worst first, then by step; one finding for each cause and place', () => {
  const found = findingsIn(
    sampleAccount({
      heat: { toK: 745 + C, even: false, hottestK: 746 + C, coldestK: 741 + C },
      temper: null,
      quench: into(bath('water')),
    }),
    IN_METRIC,
  )
  const order = found.map(({ severity }) => ['stop', 'warn', 'note'].indexOf(severity))
  expect(order).toEqual([...order].sort((a, b) => a - b))
  const keys = found.map(({ id, where }) => `${id} ${where?.step} ${where?.zone} ${where?.xM}`)
  expect(new Set(keys).size).toBe(keys.length)
})

test('the remedy of a too cool temper names the heat that would do', () => {
  const [found] = findingsIn(
    sampleAccount({ job: { zones: [zone('point', 0, 30, { lowHrc: 54, highHrc: 58 })] } }),
    IN_METRIC,
  ).filter(({ id }) => id === 'temper-too-cool-for-aim')
  // 60.2 HRC at 205 degC, one point for each 17 K: 56 HRC lies 71 K higher.
  expect(found?.says).toContain('280 °C')
})

test('a middle that lags is told how much longer', () => {
  const [found] = findingsIn(
    sampleAccount({ heat: { holdS: 300, middleUpS: null, coldestK: 763 + C, widestGapK: 240 } }),
    IN_METRIC,
  )
  // 240 K fall to 40 in 300 s: 15 K after 464 s.
  expect(found).toMatchObject({ id: 'soak-too-short' })
  expect(found?.says).toMatch(/Hold it about 3 min longer: the middle is at 763 °C/)
})

test('water that hardens the skin and not the middle is a note, with the depth', () => {
  const account = sampleAccount({
    quench: into(bath('water')),
    steel: { media: { fiercest: 'water', says: 'water', source: 'a sheet' } },
    at: (_, isSkin) => (isSkin ? {} : slow(47)),
  })
  const found = findingsIn(account, IN_METRIC).find(({ id }) => id === 'bath-too-slow')
  expect(found).toMatchObject({ severity: 'note' })
  // Radius 7 mm, the inner spots at 0.3 of 14 mm.
  expect(found?.says).toContain('2.8 mm down')
})

test('[FI2] a little under the sheets a zone that hardens all the same is worth a note, further under a warning', () => {
  const severityAt = (degC: number, at?: SampleChange['at']) =>
    findingsIn(
      sampleAccount({
        heat: { toK: degC + C, hottestK: degC + 1 + C, coldestK: degC - 1 + C },
        ...(at === undefined ? {} : { at }),
      }),
      IN_METRIC,
    ).find(({ id }) => id === 'underheated')?.severity
  const leastC = leastHeatK(sampleAccount().steel, false) - C
  expect(severityAt(leastC - 3)).toBe('note')
  expect(severityAt(leastC - 15)).toBe('warn')
  expect(severityAt(leastC - 30)).toBe('stop')
  expect(severityAt(leastC - 3, () => ({ austeniteFraction: 0.8 }))).toBe('warn')
})
