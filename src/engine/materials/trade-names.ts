import type { Basis } from '#engine/provenance/estimate.ts'

/** A name that is not in the tables of the standards but met in a shop or on an old sheet. */
export interface OtherName {
  readonly name: string
  readonly system: string
  /** Grades that it may stand for, the likeliest first. */
  readonly grades: readonly string[]
  readonly basis: Basis
  readonly source: string
  /** Set for a word that names a use or a form and not an analysis. */
  readonly warning?: string
}

const BRITISH = {
  system: 'BS 970',
  basis: 'memory',
  source: 'BS 970:1955 En numbers and their usual equivalents, from memory',
} as const
const BRITISH_TOOL = {
  system: 'BS 4659',
  basis: 'memory',
  source: 'BS 4659:1989, tool steels named after AISI, from memory',
} as const
const EN_FORMS = {
  system: 'EN',
  basis: 'memory',
  source: 'EN 10083-2: same limits but for phosphorus and sulphur, from memory',
} as const
const USAGE = { system: 'trade word', basis: 'memory', source: 'common practice, no source' } as const

const several = (what: string): string =>
  `${what} names a form or a use, not an analysis: harden and file a piece of this bar before you trust a grade`

/** Names beside those of the standards' tables. All are near: none is an identity. */
export const OTHER_NAMES: readonly OtherName[] = [
  { name: 'C45E', grades: ['C45'], ...EN_FORMS },
  { name: 'C45R', grades: ['C45'], ...EN_FORMS },
  { name: '1.1191', grades: ['C45'], ...EN_FORMS },
  { name: 'C60E', grades: ['C60'], ...EN_FORMS },
  { name: '1.1221', grades: ['C60'], ...EN_FORMS },
  { name: '42CrMoS4', grades: ['42CrMo4'], ...EN_FORMS },
  { name: '1.7227', grades: ['42CrMo4'], ...EN_FORMS },
  { name: '50CrV4', grades: ['51CrV4'], ...EN_FORMS, source: 'DIN 17221, former name of 51CrV4, from memory' },
  { name: 'X38CrMoV5-1', grades: ['X37CrMoV5-1'], ...EN_FORMS, source: 'EN ISO 4957, former name', basis: 'memory' },
  { name: 'Ck45', grades: ['C45'], ...EN_FORMS, source: 'DIN 17200, former name of C45E, from memory' },
  { name: 'Ck60', grades: ['C60'], ...EN_FORMS, source: 'DIN 17200, former name of C60E, from memory' },
  { name: 'Ck75', grades: ['C75S'], ...EN_FORMS, source: 'DIN 17222, former name of C75S, from memory' },
  {
    name: '15N20',
    grades: ['75Ni8'],
    system: 'trade',
    basis: 'published',
    source: 'sold to smiths under this name (EN 10132-4 / mill sheet)',
  },

  { name: 'EN8', grades: ['1040', '1045'], ...BRITISH },
  { name: '080M40', grades: ['1040'], ...BRITISH },
  { name: 'EN9', grades: ['1055'], ...BRITISH },
  { name: '070M55', grades: ['1055'], ...BRITISH },
  { name: 'EN19', grades: ['4140', '42CrMo4'], ...BRITISH },
  { name: '709M40', grades: ['4140', '42CrMo4'], ...BRITISH },
  { name: 'EN24', grades: ['4340'], ...BRITISH },
  { name: '817M40', grades: ['4340'], ...BRITISH },
  { name: 'EN31', grades: ['52100', '100Cr6'], ...BRITISH },
  { name: 'EN42', grades: ['1075', 'C75S'], ...BRITISH },
  { name: 'EN42J', grades: ['1075', 'C75S'], ...BRITISH },
  { name: 'EN44', grades: ['1095'], ...BRITISH },
  { name: 'EN45', grades: ['55Si7', '9255', '9260'], ...BRITISH, basis: 'published', source: 'stockist sheet EN45 / 55Si7' },
  { name: 'EN45A', grades: ['9260', '55Si7'], ...BRITISH },
  { name: '250A53', grades: ['55Si7', '9255'], ...BRITISH },
  { name: 'EN47', grades: ['6150', '51CrV4'], ...BRITISH },
  { name: '735A50', grades: ['6150', '51CrV4'], ...BRITISH },
  { name: 'EN48A', grades: ['54SiCr6'], ...BRITISH },
  { name: '527A60', grades: ['5160'], ...BRITISH },

  { name: 'BW1', grades: ['W1'], ...BRITISH_TOOL },
  { name: 'BW2', grades: ['W2'], ...BRITISH_TOOL },
  { name: 'BO1', grades: ['O1'], ...BRITISH_TOOL },
  { name: 'BO2', grades: ['O2'], ...BRITISH_TOOL },
  { name: 'BA2', grades: ['A2'], ...BRITISH_TOOL },
  { name: 'BA6', grades: ['A6'], ...BRITISH_TOOL },
  { name: 'BD2', grades: ['D2'], ...BRITISH_TOOL },
  { name: 'BD3', grades: ['D3'], ...BRITISH_TOOL },
  { name: 'BS1', grades: ['S1'], ...BRITISH_TOOL },
  { name: 'BS2', grades: ['S2'], ...BRITISH_TOOL },
  { name: 'BS5', grades: ['S5'], ...BRITISH_TOOL },
  { name: 'BH11', grades: ['H11'], ...BRITISH_TOOL },
  { name: 'BH13', grades: ['H13'], ...BRITISH_TOOL },
  { name: 'BH21', grades: ['H21'], ...BRITISH_TOOL },
  { name: 'BL2', grades: ['L2'], ...BRITISH_TOOL },
  { name: 'BM2', grades: ['M2'], ...BRITISH_TOOL },
  { name: 'BM4', grades: ['M4'], ...BRITISH_TOOL },
  { name: 'BT1', grades: ['T1'], ...BRITISH_TOOL },
  { name: 'BP20', grades: ['P20'], ...BRITISH_TOOL },

  {
    name: 'silver steel',
    grades: ['115CrV3', 'W1', 'L2'],
    ...USAGE,
    source: 'BS 1407 / 1.2210, from memory',
    warning: `${several('Silver steel')}; most is a water-hardening steel of about 1.1 % carbon with half a per cent of chromium`,
  },
  {
    name: 'gauge plate',
    grades: ['O1', 'O2', '90MnCrV8'],
    ...USAGE,
    warning: `${several('Gauge plate')}; most is O1 or a near oil-hardening steel`,
  },
  {
    name: 'ground flat stock',
    grades: ['O1', 'O2', 'A2'],
    ...USAGE,
    warning: `${several('Ground flat stock')}; most is O1, some is A2, and low-carbon flat is sold ground too`,
  },
  {
    name: 'drill rod',
    grades: ['W1', 'O1', 'A2', 'S7', 'D2'],
    ...USAGE,
    warning: `${several('Drill rod')}; ask the seller whether it is water-hardening (W1), oil-hardening (O1) or air-hardening`,
  },
  {
    name: 'spring steel',
    grades: ['5160', '9260', '6150', '1075', '1095', '55Si7', '51CrV4'],
    ...USAGE,
    warning: `${several('Spring steel')}; 0.5 to 1.0 % carbon, some for oil and some for water`,
  },
  {
    name: 'leaf spring',
    grades: ['5160', '9260', '6150', '51CrV4', '55Si7', '1095'],
    ...USAGE,
    warning: `${several('Leaf spring')}; old ones may be plain carbon steel`,
  },
  {
    name: 'coil spring',
    grades: ['5160', '9260', '54SiCr6', '6150'],
    ...USAGE,
    warning: several('Coil spring'),
  },
  {
    name: 'file steel',
    grades: ['W1', '1095', '52100'],
    ...USAGE,
    warning: `${several('File steel')}; some files are only case-hardened mild steel`,
  },
  {
    name: 'mild steel',
    grades: ['A36', '1018', '1020'],
    ...USAGE,
    warning: 'Mild steel does not harden to a tool; bar sold by strength may hold hard spots',
  },
  {
    name: 'structural steel',
    grades: ['A36'],
    ...USAGE,
    warning: 'Structural steel is sold by strength, not by analysis: it makes no tool and may hold hard spots',
  },
  {
    name: 'high speed steel',
    grades: ['M2', 'T1', 'M4'],
    ...USAGE,
    warning: 'High speed steel hardens from about 1200 °C: beyond a coal or gas fire',
  },
  {
    name: 'HSS',
    grades: ['M2', 'T1', 'M4'],
    ...USAGE,
    warning: 'High speed steel hardens from about 1200 °C: beyond a coal or gas fire',
  },
  {
    name: 'chrome vanadium',
    grades: ['6150', '51CrV4', '80CrV2'],
    ...USAGE,
    warning: several('Chrome vanadium'),
  },
  {
    name: 'chromoly',
    grades: ['4130', '4140', '42CrMo4'],
    ...USAGE,
    warning: `${several('Chromoly')}; tube is mostly 4130, bar mostly 4140`,
  },
  {
    name: 'bearing steel',
    grades: ['52100', '100Cr6'],
    ...USAGE,
    warning: 'Bearing steel is mostly 52100, but large races are often case-hardened low-carbon steel',
  },
  {
    name: 'high carbon steel',
    grades: ['1095', '1084', '1075', 'W1'],
    ...USAGE,
    warning: several('High carbon steel'),
  },
]

/**
 * SAE grades that are sold with a hardenability band under the number with H behind it; their analysis limits are a little wider.
 * SAE J1268, from memory.
 */
export const H_GRADES: readonly string[] = [
  ...['1045', '1541', '4130', '4140', '4142', '4150', '4340', '5130', '5140', '5150', '5160', '6150'],
  ...['8620', '8640', '8650', '8660', '8740', '9260', '9310'],
]
