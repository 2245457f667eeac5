/** Half way to the middle of a 25 mm round, time from 800 to 500 degC [s]: what conduction gives in oil and in water of moderate motion. */
const IN_OIL_S = 14
const IN_WATER_S = 4.6

/**
 * Quenched and tempered rounds of 25 mm (the steels among them that harden through at that size), Brinell by tempering temperature;
 * one hour is meant (memory). One heat each in the original.
 */
export const TEMPERED_ROUNDS: readonly {
  readonly id: string
  readonly grade: string
  readonly source: string
  readonly basis: 'published' | 'memory'
  readonly cooledS: number
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
    cooledS: grade === '4130' ? IN_WATER_S : IN_OIL_S,
    points,
  })),
  {
    id: 'MOTT-4130',
    grade: '4130',
    source: 'Bethlehem Steel, Modern Steels and Their Properties, through Mott, Machine Elements in Mechanical Design, appendix',
    basis: 'published',
    cooledS: IN_WATER_S,
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
    cooledS: IN_OIL_S,
    points: [
      [204, 578],
      [371, 461],
      [538, 341],
      [704, 235],
    ],
  },
]
