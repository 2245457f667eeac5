import type { Outlook, Spread } from '#engine/ensemble/outlook.ts'
import type { SkinOutlook } from '#engine/ensemble/skin-outlook.ts'
import { fileSays } from '#engine/findings/skin-findings.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { HeatRecord, StepRecord } from '#engine/simulation/records.ts'
import { ATMOSPHERE_NATURES, atmosphereOf } from '#engine/surface-heat/atmosphere.ts'
import type { Figure, Forecast } from './answers.ts'
import type { Assumption } from './assumption.ts'

type SkinAnswer = NonNullable<Forecast['skin']>[number]

/** The skins of a forecast in the words and units of the contract. */
export function skinAnswers(
  skins: readonly SkinOutlook[],
  records: readonly StepRecord[],
  { quenched, tempered }: Outlook,
): SkinAnswer[] {
  const source = sourceOf(records)
  const mm = (spread: Spread): Figure => figure(spread, 1000, 3, source)
  const hrc = (spread: Spread, of: string): Figure => figure(spread, 1, 1, `${of}; ${source}`)
  return skins.map((skin) => ({
    where: { x_mm: round(skin.at.spot.xM * 1000, 3), ...(skin.zone === undefined ? {} : { zone: skin.zone }) },
    scale_mm: mm(skin.scaleM),
    metalLost_mm: mm(skin.metalLostM),
    decarburised_mm: mm(skin.decarburisedM),
    grindOff_mm: mm(skin.grindOffM),
    surface_HRC: hrc(skin.surfaceTemperedHrc, tempered.source),
    thickness_mm: round(skin.halfThicknessM * 2000, 3),
    fileReads: {
      skin_HRC: hrc(skin.filedHrc, quenched.source),
      under_HRC: hrc(skin.at.quenchedHrc, quenched.source),
      says: `Right out of the quench ${fileSays(skin)}.`,
    },
    profile: skin.profile.map(({ depthM, carbonWtPct, quenchedHrc, temperedHrc }) => ({
      depth_mm: round(depthM * 1000, 3),
      carbon_wtpct: figure(carbonWtPct, 1, 3, source),
      quenched_HRC: hrc(quenchedHrc, quenched.source),
      hardness_HRC: hrc(temperedHrc, tempered.source),
    })),
  }))
}

/** What a forecast of hardness takes for granted about the skin. */
export function skinAssumptions({ process }: Job, skins: readonly SkinOutlook[]): Assumption[] {
  if (skins.length === 0) return []
  const heats = process.filter((step) => 'toK' in step).length
  return [
    {
      says: 'Hardness is that of the steel under the skin; what is ground off after the temper is not known.',
      because: 'the job has no grinding; the skin is told apart from it',
    },
    {
      says: `The bar comes to the ${heats === 1 ? 'heat' : 'first heat'} with a sound skin.`,
      because:
        'forging heats and the bark of the bar are not in the job; each minute at a forging heat takes as much as ten at a hardening heat',
    },
  ]
}

function sourceOf(records: readonly StepRecord[]): string {
  const heats = records.filter((record): record is HeatRecord => 'widestGapK' in record)
  const airs = [...new Set(heats.map(({ fire }) => ATMOSPHERE_NATURES[atmosphereOf(fire)].source))]
  return `carbon in austenite: J. Agren, Scripta Metall. 20 (1986) 1507, solved with a ferrite rim and scale; ${airs.join('; ')}; scale by the parabolic law, J. Paidassi 1958 (memory)`
}

function figure({ value, low, high }: Spread, factor: number, digits: number, source: string): Figure {
  const of = (x: number): number => round(x * factor, digits)
  return { value: of(value), low: of(low), high: of(high), basis: 'model', source }
}

function round(value: number, digits: number): number {
  const scale = 10 ** digits
  return Math.round(value * scale) / scale
}
