import type { CurveRow } from './tables/rows.ts'

/** One line of the table below: grade, hardening temperature [C], quench, as quenched [HRC], then HRC against temperature [C]. */
type Line = readonly [
  grade: string,
  hardenC: number,
  quench: string,
  quenchedHrc: number,
  points: readonly (readonly [number, number])[],
]

// biome-ignore format: a curve a line, as in the printed table
const LINES: readonly Line[] = [
  ['W1', 790, 'brine', 67, [[150, 64], [205, 62], [260, 59], [315, 56], [370, 52], [425, 47], [480, 43], [540, 38]]],
  ['O1', 800, 'oil', 64, [[150, 63], [205, 61], [260, 58], [315, 55], [370, 52], [425, 49], [480, 46], [540, 42], [595, 38]]],
  ['L6', 830, 'oil', 63, [[150, 61], [205, 59], [260, 57], [315, 54], [370, 51], [425, 48], [480, 45], [540, 42], [595, 37]]],
  ['S1', 930, 'oil', 58, [[150, 57.5], [205, 56.5], [260, 54], [315, 53], [370, 52], [425, 51], [480, 49.5], [540, 47.5], [595, 45]]],
  ['S5', 885, 'oil', 62, [[150, 61], [205, 60], [260, 58.5], [315, 57.5], [370, 55], [425, 52], [480, 48], [540, 44], [595, 40]]],
  [
    'S7', 940, 'air', 60,
    [[150, 59], [205, 58], [260, 56], [315, 55], [370, 54], [425, 53], [480, 52], [510, 51.5], [540, 51], [565, 49], [595, 47], [620, 43], [650, 38]],
  ],
  [
    'A2', 970, 'air', 63.5,
    [[150, 62], [205, 60.5], [260, 59], [315, 57.5], [370, 57], [425, 57], [480, 57], [510, 57], [540, 55.5], [565, 52], [595, 47], [620, 43]],
  ],
  [
    'D2', 1010, 'air', 63.5,
    [[150, 62], [205, 60.5], [260, 59], [315, 58.5], [370, 58], [425, 58], [480, 58.5], [510, 58.5], [540, 56], [565, 53], [595, 48], [620, 43]],
  ],
  [
    'H13', 1020, 'air', 53,
    [[150, 53], [205, 52], [260, 52], [315, 52], [370, 52], [425, 53], [480, 54], [510, 54.5], [540, 53.5], [565, 51], [595, 47], [620, 42], [650, 36]],
  ],
  [
    'M2', 1220, 'oil or salt', 64.5,
    [[150, 63], [205, 62], [260, 61], [315, 61], [370, 61], [425, 62.5], [480, 64], [510, 65], [540, 65.5], [565, 64.5], [595, 62.5], [620, 59], [650, 54]],
  ],
]

/**
 * Tempering curves of tool steels as recalled from the tables of ASM Tool Materials and the Heat Treater's Guide: normal hardening and
 * two tempers of one to two hours. From memory, +/-1.5 HRC; they stand behind every printed sheet.
 */
export const CURVES_FROM_MEMORY: readonly (Omit<CurveRow, 'source'> & { readonly sourceText: string })[] = LINES.map(
  ([grade, hardenC, quench, quenchedHrc, points]) => ({
    id: `memory-${grade}`,
    grade,
    typical: '',
    section: '',
    hardenC,
    quench,
    holdH: 1.5,
    holdSays: '1 to 2 h',
    cycles: 2,
    note: '',
    sourceText: "ASM Tool Materials and Heat Treater's Guide, tempering tables, from memory +/-1.5 HRC",
    provenance: 'memory',
    confidence: 'medium',
    points: [[null, quenchedHrc, null, null, null], ...points.map(([celsius, hrc]) => [celsius, hrc, null, null, null] as const)],
  }),
)
