import type { SteelAnswer } from '#contract/answers.ts'
import { durationText } from '#units/duration.ts'
import { parseHardnessRange } from '#units/hardness.ts'
import { lengthText, type System } from '#units/length.ts'
import { temperatureText } from '#units/temperature.ts'
import type { JobText, ShopText, StepText } from '#web/job/job-text.ts'
import { gearOffered } from './gear-offered.ts'
import type { GearSort, StepKind } from './step-fields.ts'

const ZERO_C_K = 273.15

/** What the starting values of a new step are taken from. */
export interface StepGround {
  /** Absent while it is asked for, and for a steel that nobody knows. */
  readonly steel?: SteelAnswer | undefined
  readonly shop: ShopText
  readonly zones: NonNullable<JobText['zones']>
  readonly units: System
  /** The thickest place of the piece [mm]. */
  readonly thickMm: number
}

/** Taken where the steel has no figure: common practice, no source [degC]. */
const USUAL_C = { normalise: 870, anneal: 790, austenitise: 845, temper: 205, relieve: 650, bar: 700 } as const
/** So much after the outside the middle of a round comes to heat in a forge [s/mm]: memory; the forecast tells it for this piece. */
const MIDDLE_UP_S_PER_MM = 12

/** A step to start from: heats as published for this steel, holds for this thickness, the gear that this shop has for it. */
export function startingStep(kind: StepKind, ground: StepGround): StepText {
  const { steel, shop, units, zones, thickMm } = ground
  const treatment = steel?.treatment
  const first = (sorts: readonly GearSort[]): { in?: string } => {
    const [gear] = gearOffered(shop, sorts)
    return gear === undefined ? {} : { in: gear.name }
  }
  const heat = (celsius: number): string => roundHeat(celsius, units)
  const throughS = MIDDLE_UP_S_PER_MM * thickMm
  switch (kind) {
    case 'normalise':
      return {
        do: kind,
        ...first(['fires', 'ovens']),
        to: heat(middle(treatment?.normalise_C) ?? USUAL_C.normalise),
        hold: minutes(throughS + 120),
        times: 2,
      }
    case 'anneal':
      return { do: kind, ...first(['fires', 'ovens']), to: heat(middle(treatment?.anneal_C) ?? USUAL_C.anneal), hold: '1 h' }
    case 'stress-relieve': {
      const under = steel === undefined ? USUAL_C.relieve : Math.min(USUAL_C.relieve, steel.critical.ac1_C.value - 50)
      return { do: kind, ...first(['fires', 'ovens']), to: heat(under), hold: '1 h' }
    }
    case 'heat':
      return {
        do: kind,
        ...first(['fires', 'ovens']),
        to: heat(middle(treatment?.austenitise_C) ?? USUAL_C.austenitise),
        hold: minutes(throughS + soakS(treatment?.soak, thickMm)),
      }
    case 'carry':
      return { do: kind, for: '3 s' }
    case 'quench': {
      const bath = bathFor(shop, treatment?.baths)
      const air = bath.endsWith('air')
      return air
        ? { do: kind, in: bath, for: '30 min' }
        : { do: kind, in: bath, depth: 'whole', for: '4 min', agitation: 'moderate' }
    }
    case 'run-colours':
      return { do: kind, stop: 'dark straw' }
    case 'warm-bath':
      return {
        do: kind,
        ...first(['baths']),
        with: {
          across: lengthText(units === 'inch' ? 0.0381 : 0.04, units),
          length: lengthText(units === 'inch' ? 0.1524 : 0.15, units),
          at: heat(USUAL_C.bar),
        },
      }
    case 'temper': {
      const row = temperFor(steel, zones)
      const at = row?.atC ?? treatment?.temper_C?.from ?? USUAL_C.temper
      return {
        do: kind,
        ...first(['ovens', 'fires']),
        at: heat(at),
        hold: durationText(row?.holdS ?? 7200),
        times: row?.times ?? 1,
      }
    }
  }
}

/** A whole treatment to change by hand: heat, walk, bath, temper. */
export function startingTreatment(ground: StepGround): readonly StepText[] {
  return (['heat', 'carry', 'quench', 'temper'] as const).map((kind) => startingStep(kind, ground))
}

/** A heat as one would set it: to 5 degC or 10 degF. */
function roundHeat(celsius: number, units: System): string {
  const kelvin =
    units === 'metric' ? 5 * Math.round(celsius / 5) + ZERO_C_K : ((10 * Math.round((celsius * 1.8 + 32) / 10) + 459.67) * 5) / 9
  return temperatureText(kelvin, units)
}

function minutes(seconds: number): string {
  return durationText(60 * Math.max(2, Math.ceil(seconds / 60)))
}

function middle(span: { readonly from: number; readonly to: number } | undefined): number | undefined {
  return span === undefined ? undefined : (span.from + span.to) / 2
}

/** The least soak that the steel's sheet names: `30 min to 45 min, ...`, `1 h per inch of thickness, ...`. */
function soakS(says: string | undefined, thickMm: number): number {
  const found = /^(\d+) (min|h)( per inch)?/u.exec(says ?? '')
  if (found === null) return 300
  const seconds = Number(found[1]) * (found[2] === 'h' ? 3600 : 60)
  return found[3] === undefined ? seconds : (seconds * thickMm) / 25.4
}

/** The bath that the steel wants, as far as the shop has one: its sheet names air, oil, water, brine, the first one first. */
function bathFor(shop: ShopText, wanted: readonly string[] = ['oil']): string {
  const baths = shop.baths ?? []
  for (const each of wanted) {
    const word = /^(?:\w+ )?(air|oil|water|brine)\b/u.exec(each)?.[1]
    if (word === 'air') return 'still air'
    const found = baths.find(({ name, kind }) => `${kind ?? name}`.toLowerCase().includes(word ?? '\n'))
    if (found !== undefined) return found.name
  }
  return baths[0]?.name ?? 'still air'
}

interface Temper {
  readonly atC: number
  readonly holdS: number
  readonly times: number
}

/** The temper that brings the hardest zone to the middle of its aim, read between the rows of the steel; the nearest row beyond them. */
function temperFor(steel: SteelAnswer | undefined, zones: StepGround['zones']): Temper | undefined {
  const aims = zones.flatMap(({ aim }) => {
    const range = parseHardnessRange(aim)
    if (!range.ok || range.value.scale !== 'HRC' || range.value.low === undefined) return []
    return [(range.value.low + (range.value.high ?? range.value.low + 4)) / 2]
  })
  const rows = steel?.temper ?? []
  if (rows.length === 0 || aims.length === 0) return undefined
  const aim = Math.max(...aims)
  const like = (row: SteelAnswer['temper'][number], atC = row.temperature_C): Temper => ({
    atC,
    holdS: row.hold_h * 3600,
    times: row.times ?? 1,
  })
  for (const [i, row] of rows.entries()) {
    const after = rows[i + 1]
    const [hard, soft] = [row.hardness_HRC.value, after?.hardness_HRC.value ?? Number.NaN]
    if (after !== undefined && hard >= aim && soft <= aim && hard > soft)
      return like(row, row.temperature_C + ((hard - aim) / (hard - soft)) * (after.temperature_C - row.temperature_C))
  }
  const off = (row: SteelAnswer['temper'][number]): number => Math.abs(row.hardness_HRC.value - aim)
  const nearest = rows.reduce((best, row) => (off(row) < off(best) ? row : best))
  return like(nearest)
}
