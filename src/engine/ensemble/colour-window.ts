import { hrcFromHv, hvFromHrc } from '#engine/metallurgy/hardness-scales.ts'
import { heatedFrom } from '#engine/simulation/heated-from.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { HardnessAim } from '#engine/simulation/process.ts'
import type { ColoursRecord, EdgeMoment } from '#engine/simulation/records.ts'
import type { Outlook, SpotOutlook } from './outlook.ts'
import { SteelBehaviour } from './spot-hardness.ts'

/** What heat left in the body gives the working end, and how much time there is to stop it. */
export interface ColourWindow {
  /** Of the working end, if it is stopped when it should be [HRC]. */
  readonly hardnessHrc: number
  /** Harder by so much when it is stopped a second too soon, and softer when a second too late [HRC]. */
  readonly earlyHrc: number
  readonly lateHrc: number
  /** Hardness that the working end has to come to, and from when to when after the lift it has it [s]; absent without an aim there. */
  readonly aim?: HardnessAim
  /** Absent where it is never within the aim. `untilS` null: it stayed in it as long as it was followed. */
  readonly within?: { readonly fromS: number; readonly untilS: number | null }
}

/** The aim of a zone counts for the edge when it begins this near the working end [m]. */
const EDGE_ZONE_M = 0.005

/** How the working end softens while the colours run; undefined where they never came. */
export function colourWindow(
  job: Job,
  record: ColoursRecord,
  outlook: Pick<Outlook, 'along' | 'zones'>,
): ColourWindow | undefined {
  const { reachedS, edge } = record
  const spot = nearestEdge(outlook.along.map(({ skin }) => skin))
  if (reachedS === null || spot === undefined || edge.length < 2) return undefined
  const { tempering } = new SteelBehaviour(job.steel, job.steel.composition, heatedFrom(job)).after(spot.peakK, spot.soakS).made
  const hrcOf = ({ parameter18K, parameter20K }: Pick<EdgeMoment, 'parameter18K' | 'parameter20K'>): number =>
    hrcFromHv(
      tempering.temperedHv(
        hvFromHrc(spot.quenchedHrc.value),
        spot.martensiteFraction,
        tempering.constant === 18 ? parameter18K : parameter20K,
      ),
    )
  const line = edge.map((moment) => ({ timeS: moment.timeS, hrc: hrcOf(moment) }))
  const hrcAt = (timeS: number): number => {
    const after = line.findIndex((each) => each.timeS >= timeS)
    if (after <= 0) return (after === 0 ? line[0] : line[line.length - 1])!.hrc
    const [a, b] = [line[after - 1]!, line[after]!]
    return a.hrc + ((b.hrc - a.hrc) * (timeS - a.timeS)) / (b.timeS - a.timeS)
  }
  const hardnessHrc = hrcAt(reachedS)
  const aim = outlook.zones.find(({ zone }) => zone.fromM <= EDGE_ZONE_M)?.zone.aim
  const within = aim === undefined ? undefined : timeWithin(line, aim)
  return {
    hardnessHrc,
    earlyHrc: Math.max(0, hrcAt(reachedS - 1) - hardnessHrc),
    lateHrc: Math.max(0, hardnessHrc - hrcAt(reachedS + 1)),
    ...(aim === undefined ? {} : { aim }),
    ...(within === undefined ? {} : { within }),
  }
}

function nearestEdge(skins: readonly SpotOutlook[]): SpotOutlook | undefined {
  return [...skins].sort((a, b) => a.spot.xM - b.spot.xM)[0]
}

/** When the falling `line` comes down to the upper limit of `aim`, and when through its lower one; between two moments in proportion. */
function timeWithin(
  line: readonly { readonly timeS: number; readonly hrc: number }[],
  { lowHrc, highHrc }: HardnessAim,
): ColourWindow['within'] {
  const passes = (hrc: number): number | null => {
    const after = line.findIndex((each) => each.hrc <= hrc)
    if (after < 0) return null
    if (after === 0) return line[0]!.timeS
    const [a, b] = [line[after - 1]!, line[after]!]
    return a.timeS + ((b.timeS - a.timeS) * (a.hrc - hrc)) / (a.hrc - b.hrc)
  }
  const fromS = highHrc === undefined ? line[0]!.timeS : passes(highHrc)
  const untilS = lowHrc === undefined ? null : passes(lowHrc)
  return fromS === null || (untilS !== null && untilS <= fromS) ? undefined : { fromS, untilS }
}
