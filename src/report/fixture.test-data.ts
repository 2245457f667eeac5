import { type Figure, type Forecast, forecastSchema } from '#contract/answers.ts'

/**
 * An invented answer to draw from in tests: a stepped bottom tool (head 38 x 40 with a dished face, shank 19 x 60, fillet 6),
 * quenched only 50 mm deep.
 */
export function steppedTool(): Forecast {
  return forecastSchema.parse({
    piece: 'rivet bottom tool',
    steel: '4140',
    grade: 'normal',
    members: 64,
    seed: 1,
    steps: STEPS,
    probes: [
      {
        name: 'under the dish',
        x_mm: 12,
        r_mm: 0,
        peak_C: 856,
        cooling_800_500_s: 9.4,
        quenched_HRC: hrc(52.1, 3),
        tempered_HRC: hrc(48.2, 2.6),
        quenched_HV: hrc(545, 40),
        tempered_HV: hrc(484, 34),
      },
    ],
    zones: [
      zone('dished face', 0, 20, '48..54 HRC', false, 50.2, 0.83),
      zone('struck end', 88, 100, 'at most 40 HRC', true, 24, 0.97),
    ],
    findings: [
      {
        id: 'quench-line-at-shoulder',
        severity: 'warn',
        where: { x_mm: 46, step: 3 },
        says: 'The oil stands at the shoulder.',
        because: 'The level is 50 mm up; the shank meets the head at 40 mm, with a fillet of 6 mm.',
        remedy: 'Go down to 60 mm, or only to 30 mm, and keep the piece moving up and down by 10 mm.',
      },
      {
        id: 'oil-fire',
        severity: 'stop',
        where: { step: 3 },
        says: 'Red metal would stand above the oil.',
        because: 'Half of the shank is at 700 °C where the oil ends; the oil flashes at about 180 °C.',
        remedy: 'Let the shank cool to black before it goes in, or take all of it under.',
        caution: 'Lid and dry powder within reach. Never water on burning oil. Follow the local fire code.',
      },
      {
        id: 'hollow-edge-chips',
        severity: 'note',
        where: { x_mm: 0, zone: 'dished face' },
        says: 'The rim of the dish is thin and hard.',
        because: 'It cools from two sides and stands at 52 HRC (49 to 55).',
        remedy: 'Break the edge with a stone to 1 mm before hardening.',
      },
    ],
    assumptions: [
      { says: 'Oil stirred moderately.', because: 'the job does not say how' },
      { says: 'Grain size 7.', because: 'the job does not give one' },
    ],
    sources: ['As quenched: an invented source for a drawing', 'Tempered: an invented source for a drawing'],
    critical: { ac1_C: 732, ac3_C: 793, ms_C: 338 },
    outline_mm: OUTLINE,
    length_mm: 100,
    baths: [{ step: 3, name: 'oil drum', kind: 'medium oil', start_C: 50, end_C: 57, line_mm: 50 }],
    along: Array.from({ length: 26 }, (_, i) => {
      const x = i * 4
      return {
        x_mm: x,
        skin_quenched_HRC: hrc(quenchedAt(x, 1), 2.5),
        skin_tempered_HRC: hrc(temperedAt(x, 1), 2.3),
        centre_quenched_HRC: hrc(quenchedAt(x, 0), 3.4),
        centre_tempered_HRC: hrc(temperedAt(x, 0), 3),
      }
    }),
    curves: curves(),
    field: field(),
  })
}

function hrc(value: number, half: number): Figure {
  return { value, low: value - half, high: value + half, basis: 'model', source: 'an invented source for a drawing' }
}

function zone(name: string, from_mm: number, to_mm: number, aim: string, assumed: boolean, value: number, chance: number) {
  const tempered_HV = { ...hrc(280 + (value - 24) * 8, 20) }
  return {
    name,
    from_mm,
    to_mm,
    aim,
    assumed,
    quenched_HRC: hrc(value + 5, 3),
    tempered_HRC: hrc(value, 2.4),
    tempered_HV,
    chance,
  }
}

const STEPS: Forecast['steps'] = [
  {
    do: 'normalise',
    in: 'gas forge',
    start_s: 0,
    end_s: 3600,
    says: 'Heat to 870 °C, hold 5 min, cool in still air. Twice.',
    cautions: [],
  },
  {
    do: 'heat',
    in: 'gas forge',
    start_s: 3600,
    end_s: 5100,
    says: 'Heat to 855 °C, bright cherry in shade; hold 12 min more.',
    cautions: ['Shade 2 to 3 for the eyes at the fire.'],
  },
  { do: 'carry', start_s: 5100, end_s: 5103, says: 'Be at the bath within 3 s.', cautions: [] },
  {
    do: 'quench',
    in: 'oil drum',
    start_s: 5103,
    end_s: 5343,
    says: 'Working end down, 50 mm deep, up and down, 4 min.',
    cautions: ['Lid and dry powder within reach. Never water on burning oil. Follow the local fire code.'],
  },
  {
    do: 'temper',
    in: 'small oven',
    start_s: 5343,
    end_s: 20000,
    says: 'Oven at 232 °C; an hour after the middle is hot. Twice.',
    cautions: [],
  },
]

const OUTLINE: Forecast['outline_mm'] = [
  ...Array.from({ length: 25 }, (_, i): [number, number] => {
    const r = (8.5 * i) / 24
    return [dishMm(r), r]
  }),
  [0, 19],
  [40, 19],
  [40, 15.5],
  ...Array.from({ length: 24 }, (_, i): [number, number] => {
    const angle = ((i + 1) / 24) * (Math.PI / 2)
    return [46 - 6 * Math.cos(angle), 15.5 - 6 * Math.sin(angle)]
  }),
  [100, 9.5],
  [100, 0],
]

/** Spherical hollow, 17 across and 6 deep. */
function dishMm(r: number): number {
  const ball = (8.5 * 8.5 + 36) / 12
  return r >= 8.5 ? 0 : Math.max(0, Math.sqrt(ball * ball - r * r) - (ball - 6))
}

function radiusAt(x: number): number {
  return x <= 40 ? 19 : x >= 46 ? 9.5 : 15.5 - Math.sqrt(Math.max(0, 36 - (46 - x) ** 2))
}

function quenchedAt(x: number, share: number): number {
  const hard = 54 - 4 * (1 - share)
  return 24 + (hard - 24) / (1 + Math.exp((x - 52) / 5))
}

function temperedAt(x: number, share: number): number {
  return Math.min(quenchedAt(x, share), quenchedAt(x, share) * 0.82 + 5.5)
}

function field(): NonNullable<Forecast['field']> {
  const rows = 40
  const across = 8
  const x_mm: number[] = []
  const r_mm: number[] = []
  const triangles: number[] = []
  for (let i = 0; i <= rows; i++)
    for (let j = 0; j <= across; j++) {
      const start = dishMm((19 * j) / across)
      const x = start + ((100 - start) * i) / rows
      x_mm.push(x)
      r_mm.push((radiusAt(x) * j) / across)
      if (i === rows || j === across) continue
      const a = i * (across + 1) + j
      triangles.push(a, a + 1, a + across + 1, a + 1, a + across + 2, a + across + 1)
    }
  const at = (of: (x: number, share: number) => number) => x_mm.map((x, i) => of(x, (r_mm[i] ?? 0) / radiusAt(x)))
  return { x_mm, r_mm, triangles, quenched_HRC: at(quenchedAt), tempered_HRC: at(temperedAt) }
}

function curves(): Forecast['curves'] {
  const time_s: number[] = []
  const skin_C: number[] = []
  const centre_C: number[] = []
  const note = (t: number, skin: number, centre: number) => {
    time_s.push(t)
    skin_C.push(skin)
    centre_C.push(centre)
  }
  for (let t = 0; t <= 3600; t += 60) {
    const hot = t < 1500 ? 20 + 850 * (1 - Math.exp(-t / 350)) : 20 + 838 * Math.exp(-(t - 1500) / 500)
    note(t, hot, hot - (t < 1500 ? 30 : -12) * Math.exp(-t / 900))
  }
  for (let t = 0; t < 1500; t += 30) note(3600 + t, 32 + 823 * (1 - Math.exp(-t / 300)), 32 + 823 * (1 - Math.exp(-t / 360)))
  for (let t = 0; t <= 3; t += 0.5) note(5100 + t, 855 - 9 * t, 855 - 3 * t)
  for (const t of [0.5, 1, 2, 4, 8, 16, 30, 60, 120, 240])
    note(5103 + t, 55 + 770 * Math.exp(-t / 7), 60 + 785 * Math.exp(-t / 17))
  for (let t = 60; t <= 14657; t += 240) note(5343 + t, 57 + 172 * (1 - Math.exp(-t / 900)), 57 + 172 * (1 - Math.exp(-t / 960)))
  return { x_mm: 20, time_s, skin_C, centre_C }
}
