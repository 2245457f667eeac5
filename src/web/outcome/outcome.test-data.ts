import type { Figure, Forecast } from '#contract/answers.ts'
import type { Skin } from './grind.ts'
import type { CrossSection } from './section-reading.ts'

const figure = (value: number, low = value, high = value): Figure => ({ value, low, high, basis: 'model', source: 'invented' })

/** An invented skin: 0.3 mm of it soft over 62 HRC. */
export function softSkin(zone?: string): Skin {
  return {
    where: { x_mm: 1, ...(zone === undefined ? {} : { zone }) },
    scale_mm: figure(0.03),
    metalLost_mm: figure(0.05),
    decarburised_mm: figure(0.2, 0.1, 0.3),
    grindOff_mm: figure(0.3, 0.18, 0.44),
    surface_HRC: figure(-10, -15, 18),
    thickness_mm: 40,
    fileReads: {
      skin_HRC: figure(-5, -12, 30),
      under_HRC: figure(62, 60, 64),
      says: 'Right out of the quench a file bites there, and then skates.',
    },
    profile: [0, 0.1, 0.3, 0.6].map((depth_mm, i) => ({
      depth_mm,
      carbon_wtpct: figure([0, 0.3, 0.75, 0.8][i] ?? 0.8),
      quenched_HRC: figure([0, 45, 61, 62][i] ?? 62),
      hardness_HRC: figure([0, 40, 56, 57][i] ?? 57),
    })),
  }
}

/** An invented skin that kept its carbon. */
export function soundSkin(): Skin {
  const { fileReads, ...rest } = softSkin()
  return {
    ...rest,
    scale_mm: figure(0),
    metalLost_mm: figure(0.003),
    decarburised_mm: figure(0),
    grindOff_mm: figure(0, 0, 0.01),
    fileReads: { ...fileReads, skin_HRC: figure(62), says: 'Right out of the quench a file skates on it.' },
  }
}

/** An invented square of 43 mm: hard at the corner, soft inside. */
export function squareAt(x_mm: number, corner = 41): CrossSection {
  const place = (quenched_HRC: number, tempered_HRC: number) => ({
    peak_C: 850,
    soak_s: 600,
    cooling_800_500_s: 10,
    quenched_HRC,
    tempered_HRC,
  })
  return {
    name: 'face',
    shape: 'square',
    x_mm,
    across_mm: 43,
    centre: place(22, 22),
    face: place(26, 25),
    corner: place(corner + 4, corner),
    equivalentRound: {
      across_mm: 45,
      centre: { cooling_pct: -4, quenched_HRC: 0, tempered_HRC: 0 },
      face: { cooling_pct: -14, quenched_HRC: 0.5, tempered_HRC: 0.3 },
      corner: { cooling_pct: 156, quenched_HRC: -16.9, tempered_HRC: -13.8 },
    },
    judged: true,
  }
}

/** The forecast with a soft skin, a square and much austenite where its first zone is. */
export function withOutcome(forecast: Forecast): Forecast {
  const [zone] = forecast.zones
  return {
    ...forecast,
    zones: forecast.zones.map((each, i) =>
      i === 0 ? { ...each, austenite_share: { quenched: 0.2, left: 0.155, fresh: 0 } } : each,
    ),
    skin: [softSkin(zone?.name)],
    crossSections: [squareAt(zone?.from_mm ?? 0)],
  }
}
