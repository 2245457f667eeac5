import { isOil, isWater } from '#engine/findings/account.ts'
import { BATH_LIMITS } from '#engine/findings/bath-limits.ts'
import type { EngineFinding } from '#engine/findings/finding.ts'
import { takesWhole } from '#engine/planning/hard-lengths.ts'
import type { QuenchRecord } from '#engine/simulation/records.ts'
import { scrapBarToWarm } from '#engine/surface-heat/bath.ts'
import type { Bath } from '#engine/surface-heat/gear.ts'
import { takesHeat } from './remedy-edits-cooling.ts'
import {
  gearPath,
  lastBefore,
  type PlacedStep,
  type Remedy,
  type RemedyGround,
  type StepOf,
  stepAt,
  writes,
} from './remedy-edits-ground.ts'
import { clearDips } from './remedy-edits-lengths.ts'
import { before, heatSetting, lengthSetting, volumeSetting } from './remedy-edits-settings.ts'

/** The tank: how warm, how much in it, how deep. */

export interface Quenched {
  readonly quench: PlacedStep<StepOf<'quench'>>
  readonly record: QuenchRecord
}

export function quenchedAt(ground: RemedyGround, step: number | undefined): Quenched | undefined {
  const quench = stepAt(ground, step, 'quench')
  const record = ground.account.records.find((each): each is QuenchRecord => each.kind === 'quench' && each.step === step)
  return quench === undefined || record === undefined ? undefined : { quench, record }
}

export function bathTooHot({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, where?.step)
  if (found === undefined || figures?.bathK === undefined) return []
  const { bath } = found.record
  return [
    ...standingAt(ground, bath, figures.bathK, 'down', 'Let'),
    ...otherBath(ground, found, ({ temperatureK }) => temperatureK <= (figures.bathK ?? 0)),
  ]
}

export function bathTooCold({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, where?.step)
  if (found === undefined || figures?.bathK === undefined) return []
  const { bath } = found.record
  const warmed = standingAt(ground, bath, figures.bathK, 'nearest', 'Have')
  return isOil(bath) ? [...warmedWithBar(ground, found, figures.bathK), ...warmed] : warmed
}

/** The bath of the shop, put down as standing at another heat. */
function standingAt(ground: RemedyGround, bath: Bath, toK: number, way: 'down' | 'nearest', word: 'Let' | 'Have'): Remedy[] {
  const path = gearPath(ground, 'baths', bath.name)
  const to = heatSetting(toK, ground.units, way)
  if (path === undefined || Math.abs(to.si - bath.temperatureK) < 1) return []
  const from = before.heat(bath.temperatureK, ground.units)
  return [
    {
      says:
        word === 'Let'
          ? `Let the ${bath.name} cool to ${to.text} from ${from}`
          : `Have the ${bath.name} at ${to.text} instead of ${from}`,
      edits: [writes([...path, 'temperature'], to.text)],
    },
  ]
}

/** A scrap bar at a bright red, 40 or 60 mm across, that one man can lift (common practice, no source) [K, m, kg/m3]. */
const BAR_AT_K = 1073.15
const BARS_ACROSS_M = [0.04, 0.06]
const LONGEST_BAR_M = 0.4
const STEEL_KG_PER_M3 = 7850

function warmedWithBar(ground: RemedyGround, { quench, record: { bath } }: Quenched, toK: number): Remedy[] {
  const { units } = ground
  const heat = lastBefore(ground, quench.at, 'heat')
  if (heat === undefined) return []
  const massKg = scrapBarToWarm(bath, toK, BAR_AT_K)
  const bars = BARS_ACROSS_M.map((acrossM) => {
    const across = lengthSetting(acrossM, units)
    return { across, length: lengthSetting(Math.max(0.02, (4 * massKg) / (STEEL_KG_PER_M3 * Math.PI * across.si ** 2)), units) }
  })
  const bar = bars.find(({ length }) => length.si <= LONGEST_BAR_M)
  if (bar === undefined) return []
  return [
    {
      says: `Warm the ${bath.name} to about ${heatSetting(toK, units).text} with a hot bar, ${bar.across.text} across and ${bar.length.text} long, from ${before.heat(bath.temperatureK, units)}`,
      edits: [
        {
          path: heat.path,
          insert: {
            do: 'warm-bath',
            in: bath.name,
            with: { across: bar.across.text, length: bar.length.text, at: heatSetting(BAR_AT_K, units).text },
          },
        },
      ],
    },
  ]
}

/** A rise that just keeps to its limit is none to count on. */
const TO_SPARE = 1.1

export function bathTooSmall({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, where?.step)
  const leastM3 = figures?.volumeM3
  if (found === undefined || leastM3 === undefined) return []
  const { bath } = found.record
  const path = gearPath(ground, 'baths', bath.name)
  const volume = volumeSetting(TO_SPARE * leastM3, ground.units)
  const more: Remedy[] =
    path === undefined
      ? []
      : [
          {
            says: `Fill a tank of ${volume.text} with it${bath.volumeM3 === undefined ? '' : ` instead of ${before.volume(bath.volumeM3, ground.units)}`}, and quench in that`,
            edits: [writes([...path, 'volume'], volume.text)],
          },
        ]
  return [...otherBath(ground, found, ({ volumeM3 }) => volumeM3 !== undefined && volumeM3 >= leastM3), ...more]
}

/** Not deep enough: the tank for the piece, or the dip for the zone. */
export function bathTooShallow({ figures, where }: EngineFinding, ground: RemedyGround): Remedy[] {
  const found = quenchedAt(ground, where?.step)
  if (found === undefined) return []
  const { quench, record } = found
  const dips = clearDips(ground, record.bath, figures?.dipsM?.[0] ?? 0).slice(0, 1)
  const dipped = dips.map(
    ({ text }): Remedy => ({
      says: `Dip it ${text} instead of ${record.depthM === null ? 'the whole of it' : before.length(record.depthM, ground.units)}`,
      edits: [writes([...quench.path, 'depth'], text)],
    }),
  )
  if (figures?.cause === 'short-dip' || figures?.depthM === undefined) return dipped
  const leastM = figures.depthM
  const deep = lengthSetting(leastM, ground.units, 'up')
  const path = gearPath(ground, 'baths', record.bath.name)
  const deeper: Remedy[] =
    path === undefined ? [] : [{ says: `Put it in a tank ${deep.text} deep`, edits: [writes([...path, 'depth'], deep.text)] }]
  return [...otherBath(ground, found, ({ depthM }) => (depthM ?? 0) >= leastM), ...dipped, ...deeper]
}

/** Another bath of this shop that cools alike, takes the piece and has what is asked. */
function otherBath(ground: RemedyGround, { quench, record }: Quenched, suits: (bath: Bath) => boolean): Remedy[] {
  const { job, lengthM } = ground.account
  const { bath, depthM } = record
  const alike = (other: Bath): boolean => (isOil(bath) && isOil(other)) || (isWater(bath) && isWater(other))
  const standsRight = (other: Bath): boolean => {
    const limits = BATH_LIMITS[other.kind]
    return limits !== undefined && other.temperatureK >= limits.coldK && other.temperatureK <= limits.hotK
  }
  return job.shop.baths
    .filter((other) => other.name !== bath.name && alike(other) && suits(other) && standsRight(other))
    .filter((other) => takesHeat(other, record.massUnderKg) && (depthM !== null || takesWhole(other, lengthM)))
    .sort((a, b) => Number(b.kind === bath.kind) - Number(a.kind === bath.kind))
    .slice(0, 1)
    .map((other) => ({
      says: `Quench it in the ${other.name} instead of the ${bath.name}`,
      edits: [writes([...quench.path, 'in'], other.name)],
    }))
}
