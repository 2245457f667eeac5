/**
 * Quenched and tempered rounds of 25 mm (the steels among them that harden through at that size), Brinell by tempering temperature;
 * one hour is meant (memory). One heat each in the original.
 */
export const TEMPERED_ROUNDS: readonly {
  readonly id: string
  readonly grade: string
  readonly source: string
  readonly basis: 'published' | 'memory'
  readonly points: readonly (readonly [temperC: number, brinell: number])[]
}[] = [
  ...(
    [
      ['4130', [205, 467], [315, 435], [425, 380], [540, 315], [650, 245]],
      ['4140', [205, 510], [315, 445], [425, 370], [540, 285], [650, 230]],
      ['4340', [205, 520], [315, 486], [425, 430], [540, 360], [650, 280]],
      ['5140', [205, 490], [315, 450], [425, 365], [540, 280], [650, 235]],
      ['5160', [205, 627], [315, 555], [425, 461], [540, 341], [650, 269]],
      ['6150', [205, 538], [315, 483], [425, 420], [540, 345], [650, 282]],
      ['8640', [205, 505], [315, 460], [425, 400], [540, 340], [650, 280]],
      ['9260', [205, 600], [315, 540], [425, 470], [540, 390], [650, 295]],
    ] as const
  ).map(([grade, ...points]) => ({
    id: `ASM-${grade}`,
    grade,
    source: 'ASM Metals Reference Book, 2nd ed. (1983), quenched and tempered rounds of 25 mm (memory)',
    basis: 'memory' as const,
    points,
  })),
  {
    id: 'MOTT-4130',
    grade: '4130',
    source: 'Bethlehem Steel, Modern Steels and Their Properties, through Mott, Machine Elements in Mechanical Design, appendix',
    basis: 'published',
    points: [
      [204, 461],
      [371, 415],
      [538, 302],
      [704, 202],
    ],
  },
  {
    id: 'MOTT-4140',
    grade: '4140',
    source: 'Bethlehem Steel, Modern Steels and Their Properties, through Mott, Machine Elements in Mechanical Design, appendix',
    basis: 'published',
    points: [
      [204, 578],
      [371, 461],
      [538, 341],
      [704, 235],
    ],
  },
]

/**
 * Tool steels after normal hardening and two tempers of about 1.5 h: HRC as quenched and by tempering temperature.
 * ASM Tool Materials / Heat Treater's Guide (memory, +/-1.5 HRC).
 */
export const TEMPERED_TOOL_STEELS: readonly {
  readonly grade: string
  readonly quenchedHrc: number
  readonly points: readonly (readonly [temperC: number, hrc: number])[]
}[] = (
  [
    ['W1', 67, [64, 62, 59, 56, 52, 47, 43, 0, 38]],
    ['O1', 64, [63, 61, 58, 55, 52, 49, 46, 0, 42, 0, 38]],
    ['L6', 63, [61, 59, 57, 54, 51, 48, 45, 0, 42, 0, 37]],
    ['S1', 58, [57.5, 56.5, 54, 53, 52, 51, 49.5, 0, 47.5, 0, 45]],
    ['S5', 62, [61, 60, 58.5, 57.5, 55, 52, 48, 0, 44, 0, 40]],
    ['S7', 60, [59, 58, 56, 55, 54, 53, 52, 51.5, 51, 49, 47, 43, 38]],
    ['A2', 63.5, [62, 60.5, 59, 57.5, 57, 57, 57, 57, 55.5, 52, 47, 43]],
    ['D2', 63.5, [62, 60.5, 59, 58.5, 58, 58, 58.5, 58.5, 56, 53, 48, 43]],
    ['H13', 53, [53, 52, 52, 52, 52, 53, 54, 54.5, 53.5, 51, 47, 42, 36]],
    ['M2', 64.5, [63, 62, 61, 61, 61, 62.5, 64, 65, 65.5, 64.5, 62.5, 59, 54]],
  ] as const
).map(([grade, quenchedHrc, values]) => {
  const at = [150, 205, 260, 315, 370, 425, 480, 510, 540, 565, 595, 620, 650]
  const points = values.flatMap((hrc, i) => (hrc === 0 ? [] : [[at[i]!, hrc] as const]))
  return { grade, quenchedHrc, points }
})
