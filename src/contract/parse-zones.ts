import { convert, hrcFromHv, OutsideScale } from '#engine/metallurgy/hardness-scales.ts'
import type { HardnessAim, Zone } from '#engine/simulation/process.ts'
import { hardnessRangeText, type TypedHardnessRange } from '#units/hardness.ts'
import { shown } from '#units/reading.ts'
import type { Assumption } from './assumption.ts'
import { type TypedZone, zoneSchema } from './piece-schema.ts'
import type { Problem } from './problems.ts'
import { taken } from './schema-problems.ts'

export interface ZonesTaken {
  readonly zones: readonly Zone[]
  readonly typed: readonly TypedZone[]
}

/** No carbon steel tool is harder, quenched and untempered, and none softer than annealed [HRC]. */
const HARDEST_HRC = 67
const SOFTEST_HRC = 10
const MOST_ZONES = 40

/** Zones with their aims on the Rockwell C scale. Two zones may overlap as long as one hardness can suit both. */
export function takeZones(
  input: unknown,
  lengthM: number | undefined,
  problems: Problem[],
  assumptions: Assumption[],
): ZonesTaken {
  if (input === undefined || input === null) return { zones: [], typed: [] }
  if (!Array.isArray(input) || input.length > MOST_ZONES) {
    problems.push({ field: 'zones', says: `${shown(input)}: a list of up to ${MOST_ZONES} zones belongs here` })
    return { zones: [], typed: [] }
  }
  const typed: TypedZone[] = []
  const zones: Zone[] = []
  input.forEach((each, i) => {
    const zone = taken(zoneSchema, each, `zones[${i}]`, problems)
    if (zone === undefined) return
    typed.push(zone)
    zones.push(zoneOf(zone, i, lengthM, problems, assumptions))
  })
  for (const [i, zone] of zones.entries())
    for (const earlier of zones.slice(0, i)) {
      if (earlier.name === zone.name)
        problems.push({ field: `zones[${i}].name`, says: `"${zone.name}" stands twice; give each zone its own name` })
      if (overlapM(earlier, zone) > 1e-6 && !oneSuitsBoth(earlier.aim, zone.aim))
        problems.push({
          field: `zones[${i}]`,
          says: `"${zone.name}" overlaps "${earlier.name}", and no hardness suits both aims; end one where the other begins`,
        })
    }
  return { zones, typed }
}

function zoneOf(
  typed: TypedZone,
  index: number,
  lengthM: number | undefined,
  problems: Problem[],
  assumptions: Assumption[],
): Zone {
  const { from, to } = typed
  const name = typed.name ?? `zone ${index + 1}`
  const at = `zones[${index}]`
  if (!(from.lengthM < to.lengthM))
    problems.push({
      field: `${at}.to`,
      says: `${shown(to.typed)} is not beyond from: ${shown(from.typed)}; both are measured from the working end`,
    })
  outsidePiece(from, `${at}.from`, lengthM, problems)
  outsidePiece(to, `${at}.to`, lengthM, problems)
  return {
    name,
    fromM: Math.min(from.lengthM, lengthM ?? from.lengthM),
    toM: Math.min(to.lengthM, lengthM ?? to.lengthM),
    aim: aimOf(typed.aim, `${at}.aim`, name, problems, assumptions),
    assumed: false,
  }
}

/** Says so when a length from the working end lies beyond the piece (by more than rounding). */
export function outsidePiece(
  { typed, lengthM: asked }: { readonly typed: string; readonly lengthM: number },
  field: string,
  lengthM: number | undefined,
  problems: Problem[],
): void {
  if (lengthM === undefined || asked <= lengthM * (1 + 1e-6)) return
  const mm = Number((lengthM * 1000).toFixed(2))
  problems.push({ field, says: `${shown(typed)} is beyond the piece, which is ${mm} mm long; write ${mm} mm or less` })
}

function aimOf(
  typed: TypedHardnessRange,
  field: string,
  name: string,
  problems: Problem[],
  assumptions: Assumption[],
): HardnessAim {
  const low = typed.low === undefined ? undefined : inHrc(typed.low, typed, field, problems)
  const high = typed.high === undefined ? undefined : inHrc(typed.high, typed, field, problems)
  if (low !== undefined && low > HARDEST_HRC)
    problems.push({ field, says: `${shown(typed.typed)}: no tool steel gets harder than about ${HARDEST_HRC} HRC; aim lower` })
  if (high !== undefined && high < SOFTEST_HRC)
    problems.push({
      field,
      says: `${shown(typed.typed)}: no steel that hardens gets softer than about ${SOFTEST_HRC} HRC; write at most 25 HRC or so`,
    })
  if (typed.scale !== 'HRC' && (low !== undefined || high !== undefined))
    assumptions.push({
      says: `The aim of ${name}, ${typed.typed}, is taken as ${hardnessRangeText({ ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) })}.`,
      because: 'ASTM E140 sets these scales side by side; below 20 HRC its older extension',
    })
  if (typed.single && low !== undefined) {
    assumptions.push({
      says: `The aim of ${name}, ${typed.typed}, is taken as ${hardnessRangeText({ low: low - 1, high: low + 1 })}.`,
      because: 'no fire and no tester holds a single point',
    })
    return { lowHrc: low - 1, highHrc: low + 1 }
  }
  return { ...(low === undefined ? {} : { lowHrc: low }), ...(high === undefined ? {} : { highHrc: high }) }
}

function inHrc(value: number, typed: TypedHardnessRange, field: string, problems: Problem[]): number | undefined {
  if (typed.scale === 'HRC') return value
  try {
    return Math.round(10 * hrcFromHv(convert(value, typed.scale, 'HV').value)) / 10
  } catch (error) {
    if (!(error instanceof OutsideScale)) throw error
    problems.push({ field, says: `${error.message}; write the aim in HRC` })
    return undefined
  }
}

function overlapM(a: Zone, b: Zone): number {
  return Math.min(a.toM, b.toM) - Math.max(a.fromM, b.fromM)
}

function oneSuitsBoth(a: HardnessAim, b: HardnessAim): boolean {
  const low = Math.max(a.lowHrc ?? -Infinity, b.lowHrc ?? -Infinity)
  const high = Math.min(a.highHrc ?? Infinity, b.highHrc ?? Infinity)
  return low <= high
}
