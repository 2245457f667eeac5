import type { Figure, Finding, Forecast } from '#contract/answers.ts'

/** An invented answer for tests: a chisel of 170 mm, quenched 35 mm deep after two rounds of normalising, tempered in an oven. */
export function chiselForecast(): Forecast {
  return {
    piece: 'cold chisel',
    steel: 'W1',
    grade: 'normal',
    members: 64,
    seed: 1,
    steps: [
      step('normalise', 'gas forge', 0, 8000),
      step('heat', 'gas forge', 8000, 8600),
      step('carry', undefined, 8600, 8603),
      step('quench', 'slack tub', 8603, 8723),
      step('temper', 'small oven', 9000, 16_200),
    ],
    probes: [],
    zones: [
      zone('edge', 0, 20, '54..59 HRC', false, 60.7, 0.83),
      zone('struck end', 150, 170, 'at most 45 HRC', true, 39.2, 0.97),
    ],
    findings: [...FINDINGS],
    assumptions: [],
    sources: [],
    critical: { ac1_C: 725, ac3_C: 740, ms_C: 200 },
    outline_mm: [
      [0, 0],
      [0, 4],
      [45, 10],
      [45, 9.5],
      [170, 9.5],
      [170, 0],
    ],
    length_mm: 170,
    baths: [{ step: 3, name: 'slack tub', kind: 'water', start_C: 20, end_C: 24, line_mm: 35 }],
    along: [0, 20, 35, 60, 170].map((x_mm, i) => {
      const hardness = [62, 60, 48, 25, 15][i] ?? 15
      return {
        x_mm,
        skin_quenched_HRC: hrc(hardness + 3, 2),
        skin_tempered_HRC: hrc(hardness, 3),
        centre_quenched_HRC: hrc(hardness, 2),
        centre_tempered_HRC: hrc(hardness - 4, 3),
      }
    }),
    curves: {
      x_mm: 20,
      time_s: [0, 200, 400, 600, 700, 1500, 4000, 8000, 8200, 8600, 8603, 8723, 9000, 12_000, 16_200],
      skin_C: [20, 700, 825, 830, 790, 400, 30, 20, 600, 790, 760, 25, 20, 225, 220],
      centre_C: [20, 650, 820, 830, 800, 420, 30, 20, 560, 788, 770, 30, 20, 222, 220],
    },
  }
}

const FINDINGS: readonly Finding[] = [
  {
    id: 'quench-line-at-shoulder',
    severity: 'warn',
    where: { x_mm: 46, step: 3 },
    says: 'The water stands at the shoulder.',
    because: 'The level is 35 mm up; the blade meets the body at 45 mm.',
    remedy: 'Go down to 60 mm, or only to 25 mm, and keep it moving up and down by 10 mm.',
  },
  {
    id: 'struck-end-hard',
    severity: 'stop',
    where: { zone: 'struck end' },
    says: 'The struck end is too hard at 54 HRC: it throws splinters.',
    because: 'It should be softer than the hammer: 45 HRC at most.',
    remedy: 'Keep it out of the bath, or draw it to a faint red.',
    caution: 'Do not strike it so. Eye protection for you and for all near.',
  },
  {
    id: 'decarburised-skin',
    severity: 'note',
    where: { step: 0 },
    says: 'The fire takes carbon out of the skin.',
    because: 'All the heats together burn the carbon down to half at 0.3 mm deep.',
    remedy: 'Leave 0.6 mm to grind off.',
  },
]

function step(kind: string, gear: string | undefined, start_s: number, end_s: number): Forecast['steps'][number] {
  return {
    do: kind,
    ...(gear === undefined ? {} : { in: gear }),
    start_s,
    end_s,
    says: `${kind}.`,
    cautions: [`Mind the ${kind}.`],
  }
}

function zone(
  name: string,
  from_mm: number,
  to_mm: number,
  aim: string,
  assumed: boolean,
  value: number,
  chance: number,
): Forecast['zones'][number] {
  const figure = hrc(value, 3)
  return {
    name,
    from_mm,
    to_mm,
    aim,
    assumed,
    quenched_HRC: figure,
    tempered_HRC: figure,
    tempered_HV: hrc(value * 11, 40),
    chance,
  }
}

function hrc(value: number, half: number): Figure {
  return { value, low: value - half, high: value + half, basis: 'model', source: 'invented for tests' }
}
