import { forecastJob } from '#engine/ensemble/forecast.ts'
import { isPlain } from '#engine/findings/steel-facts.ts'
import { TEMPER_COLOURS } from '#engine/materials/temper-colour-table.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { ProcessStep } from '#engine/simulation/process.ts'
import { partLengths } from './hard-lengths.ts'
import type { QuenchMeans } from './media.ts'
import { wholeMinutes } from './rounding.ts'
import type { Shopfloor, Tried } from './trials.ts'

/** Long enough under to set the edge, short enough to leave heat behind it [s a millimetre of thickness at the line]. */
const DIPS_S_PER_MM = [0.4, 0.7, 1.2]
const SHORTEST_DIP_S = 4
const LONGEST_DIP_S = 20
/** The tables of colours mean about this long at a heat [s] (memory); it tempers about as far as the heat left in a body that shows the same colour sooner. */
const COLOUR_S = 300
/** Colours to stop at, from cool to hot: the one table that names the whole run of them, as far as an eye tells them apart with the edge in motion. */
const STOPS = TEMPER_COLOURS.filter(({ source, temperatureC }) => source === TEMPER_COLOURS[0]?.source && temperatureC <= 330)
const KELVIN = 273.15
const TRIED_MEMBERS = 60
/** Share of pieces that leave the bath hard enough, under which a bath is given up. */
const HARDENS = 0.05
/** Colours that race by are no temper: an edge that passes 15 K faster than this cannot be caught [K/s]. */
const FASTEST_K_PER_S = 5

/**
 * For a shop without an oven: the working end is dipped for some seconds, and the heat left in the body runs back to it until the colour
 * is right. Plain steel only, hard at the working end, with a body behind it that holds heat.
 */
export function colourRoutes(
  floor: Shopfloor,
  means: readonly QuenchMeans[],
  options: { readonly members: number; readonly seed: number },
  onTry: (says: string) => void,
): readonly Tried[] {
  const { practice, layout, wording } = floor
  const [first] = layout.hard
  if (!isPlain(practice.facts.composition) || layout.hard.length !== 1 || first === undefined || first.fromM > 0.005) return []
  const found: Tried[] = []
  for (const each of means) {
    if (each.medium === 'air') continue
    onTry(each.says)
    const reach = { ...layout, softFromM: layout.softFromM ?? layout.lengthM }
    const dip = partLengths(reach, each.bath, false, floor.rounding).find(({ kind }) => kind === 'dipped')
    if (dip?.depthM === undefined) continue
    for (const perMm of DIPS_S_PER_MM) {
      const dipS = Math.round(Math.min(LONGEST_DIP_S, Math.max(SHORTEST_DIP_S, perMm * layout.acrossM * 1000)))
      if (
        found.some(({ process }) =>
          process.some((step) => step.do === 'quench' && step.in === each.bath.name && step.forS === dipS),
        )
      )
        continue
      const tried = ranColours(floor, each, dip.depthM, dipS, options.seed)
      // Too little heat was left: a longer dip leaves less.
      if (tried === 'never reached') break
      // A bath that does not harden it in the short dip does not in the long one.
      if (tried !== undefined && tried.quenched < HARDENS) break
      if (tried !== undefined)
        found.push({
          ...tried,
          says: `heated whole, dipped ${wording.length(dip.depthM)} in the ${each.says} for ${dipS} s; colours run to ${colourAt(tried.stopAtK)}`,
        })
    }
    if (found.some(({ chance }) => chance >= 0.3)) break
  }
  return found.sort((a, b) => b.chance - a.chance).slice(0, 2)
}

function ranColours(
  floor: Shopfloor,
  means: QuenchMeans,
  depthM: number,
  dipS: number,
  seed: number,
): (Omit<Tried, 'says'> & { readonly stopAtK: number }) | 'never reached' | undefined {
  let stopAtK = firstStopK(floor)
  let best: (Omit<Tried, 'says'> & { readonly stopAtK: number }) | undefined
  for (let round = 0; round < 2; round++) {
    const process = colourSteps(floor, means, depthM, dipS, stopAtK)
    const job: Job = { ...floor.job, process }
    const { treatment, outlook } = forecastJob(job, { grade: 'draft', members: TRIED_MEMBERS, seed })
    const ran = treatment.records.find((record) => record.kind === 'run-colours')
    if (ran?.kind !== 'run-colours' || ran.risePerS > FASTEST_K_PER_S) return best
    if (ran.reachedS === null) return best ?? (stopAtK <= stopK(0) ? 'never reached' : undefined)
    const zone = outlook.zones.find((each) => each.zone === floor.layout.hard[0])
    if (zone === undefined) return best
    const { lowHrc, highHrc } = zone.zone.aim
    const aimedHrc = 0.5 * ((lowHrc ?? (highHrc ?? 0) - 4) + (highHrc ?? (lowHrc ?? 0) + 4))
    const offHrc = zone.temperedHrc.value - aimedHrc
    if (best === undefined || outlook.chance > best.chance)
      best = {
        process,
        chance: outlook.chance,
        quenched: zone.chanceQuenched,
        missHrc: Math.abs(offHrc),
        fierceness: means.fierceness,
        fuss: 2,
        stopAtK,
      }
    if (Math.abs(offHrc) < 1) return best
    // Plain steel loses about one point of hardness to 9 K of temper.
    const next = nearestStopK(stopAtK + 9 * offHrc)
    if (next === stopAtK) return best
    stopAtK = next
  }
  return best
}

/** The coolest colour by which the steel is down to the middle of its aim. */
function firstStopK({ practice, layout }: Shopfloor): number {
  const { lowHrc, highHrc } = layout.hard[0]!.aim
  const aimedHrc = 0.5 * ((lowHrc ?? (highHrc ?? 0) - 4) + (highHrc ?? (lowHrc ?? 0) + 4))
  const { temperedHrc, fullHrc } = practice.facts
  const k = STOPS.findIndex((_, i) => temperedHrc(fullHrc.value, { atK: stopK(i), holdS: COLOUR_S, times: 1 }) <= aimedHrc)
  return stopK(k < 0 ? STOPS.length - 1 : k)
}

function stopK(index: number): number {
  return (STOPS[index]?.temperatureC ?? 0) + KELVIN
}

function nearestStopK(kelvin: number): number {
  return STOPS.map((_, i) => stopK(i)).reduce((best, k) => (Math.abs(k - kelvin) < Math.abs(best - kelvin) ? k : best))
}

function colourAt(kelvin: number): string {
  return STOPS.find((_, i) => stopK(i) === kelvin)?.name ?? ''
}

function colourSteps(floor: Shopfloor, means: QuenchMeans, depthM: number, dipS: number, stopAtK: number): ProcessStep[] {
  const { practice, fire, rounding, timer } = floor
  const toK = rounding.temperatureK(practice.austeniteK)
  const upS = timer(fire, toK, undefined).middleUpS ?? 0
  return [
    ...(practice.normaliseK === undefined
      ? []
      : [
          {
            do: 'normalise',
            in: fire.name,
            toK: rounding.temperatureK(practice.normaliseK),
            holdS: wholeMinutes(upS + 60),
            times: 2,
          } as const,
        ]),
    ...(means.warming === undefined ? [] : [means.warming]),
    { do: 'heat', in: fire.name, toK, holdS: wholeMinutes(upS + practice.soakS), even: true },
    { do: 'carry', forS: 3 },
    { do: 'quench', in: means.bath.name, depthM, forS: dipS, agitation: means.agitation },
    { do: 'run-colours', stopAtK, byColour: true, in: means.bath.name },
  ]
}
