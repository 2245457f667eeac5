import { locateIn } from '#engine/geometry/locate.ts'
import type { System } from '#units/length.ts'
import { formatTemperature, kelvinFromCelsius } from '#units/temperature.ts'
import { type Picture, STRUCTURES, type Structure } from './picture-fields.ts'

/** What one place of the piece goes through, and what it comes to. */
export interface PointHistory {
  /** Since the start, at the instants of the picture [f, s]. */
  readonly timeS: Float64Array
  readonly temperatureC: Float32Array
  readonly peakC: number
  /** NaN where it was never passed. */
  readonly cooling800To500S: number
  readonly quenchedHrc: number
  readonly temperedHrc: number
  readonly bandHrc: number
  readonly structure: Structure
  readonly martensiteShare: number
  readonly ferriteShare: number
  readonly pearliteShare: number
  readonly bainiteShare: number
  /** The same for the smith who reads. */
  readonly says: string[]
}

/**
 * The history of a place of a picture: `xMm` from the working end, `rMm` from the axis. Values are linear within the triangle that holds it;
 * the structure is that of the nearest node. A place outside the metal is read at the nearest on its surface.
 */
export function historyOf(picture: Picture, xMm: number, rMm: number, units: System = 'metric'): PointHistory {
  const { nodes, weights } = locateIn(
    {
      xM: Float64Array.from(picture.xMm),
      rM: Float64Array.from(picture.rMm),
      triangles: picture.triangles,
      boundaryNode: picture.surfaceNodes,
    },
    xMm,
    rMm,
  )
  const read = (field: ArrayLike<number>, node: number): number => field[node] ?? Number.NaN
  const corners = nodes.map((node, k) => ({ node, weight: read(weights, k) })).filter(({ weight }) => weight > 0)
  const at = (field: ArrayLike<number>, from = 0, among = corners): number => {
    const all = among.reduce((sum, { weight }) => sum + weight, 0)
    return among.reduce((sum, { node, weight }) => sum + (weight / all) * read(field, from + node), 0)
  }
  const nearest = corners.reduce((best, corner) => (corner.weight > best.weight ? corner : best))
  const passed = corners.filter(({ node }) => !Number.isNaN(read(picture.cooling800To500S, node)))
  const found: Omit<PointHistory, 'says'> = {
    timeS: picture.timeS,
    temperatureC: Float32Array.from(picture.timeS, (_, frame) => at(picture.temperatureC, frame * picture.xMm.length)),
    peakC: at(picture.peakC),
    cooling800To500S: passed.includes(nearest) ? at(picture.cooling800To500S, 0, passed) : Number.NaN,
    quenchedHrc: at(picture.quenchedHrc),
    temperedHrc: at(picture.temperedHrc),
    bandHrc: at(picture.bandHrc),
    structure: STRUCTURES[read(picture.structure, nearest.node)] as Structure,
    martensiteShare: at(picture.martensiteShare),
    ferriteShare: at(picture.ferriteShare),
    pearliteShare: at(picture.pearliteShare),
    bainiteShare: at(picture.bainiteShare),
  }
  return { ...found, says: inWords(found, units) }
}

/** Too cool to have been in the fire [degC]. */
const UNHEATED_C = 60
/** The C scale begins here [HRC]. */
const SCALE_BEGINS_HRC = 20

const BECAME: { readonly [Of in Structure]: string } = {
  'as before the heat': 'Never hot enough to change: as it was before the heat.',
  'part-way heated': 'Only part of it turned in the fire: it was between the lower and the upper critical heat.',
  'soft after heating': 'Hot enough, but cooled too slowly to harden.',
  'part hardened': 'Part hardened: hard and softer structure side by side.',
  hardened: 'Hardened.',
}

function inWords(found: Omit<PointHistory, 'says'>, units: System): string[] {
  const { peakC, cooling800To500S, quenchedHrc, temperedHrc, bandHrc, structure } = found
  const degrees = (celsius: number): string => formatTemperature(kelvinFromCelsius(celsius), units)
  const seconds = cooling800To500S < 10 ? cooling800To500S.toFixed(1) : String(Math.round(cooling800To500S))
  const hrc = (value: number): string => (value < SCALE_BEGINS_HRC ? `under ${SCALE_BEGINS_HRC} HRC` : `${Math.round(value)} HRC`)
  const drawn = Math.abs(quenchedHrc - temperedHrc) >= 0.5
  return [
    peakC < UNHEATED_C ? 'Stayed out of the heat.' : `Came to ${degrees(peakC)} in the fire.`,
    ...(Number.isNaN(cooling800To500S) ? [] : [`Cooled at a pace of ${seconds} s from ${degrees(800)} to ${degrees(500)}.`]),
    BECAME[structure],
    ...sharesInWords(found),
    drawn ? `${hrc(quenchedHrc)} as quenched, ${hrc(temperedHrc)} after tempering.` : `${hrc(temperedHrc)}.`,
    `Nine in ten such pieces lie within ${Math.max(1, Math.round(bandHrc))} HRC from softest to hardest here.`,
  ]
}

/** Less than this is not spoken of: within what the figures are worth. */
const WORTH_A_WORD = 0.05

/** What formed on the way down, the most of it first: "About 6 in 10 martensite, 3 in 10 bainite, 1 in 10 pearlite." Nothing where it is all one. */
function sharesInWords({
  martensiteShare,
  ferriteShare,
  pearliteShare,
  bainiteShare,
}: Pick<PointHistory, 'martensiteShare' | 'ferriteShare' | 'pearliteShare' | 'bainiteShare'>): string[] {
  const parts = (
    [
      ['martensite', martensiteShare],
      ['bainite', bainiteShare],
      ['pearlite', pearliteShare],
      ['ferrite', ferriteShare],
    ] as const
  )
    .filter(([, share]) => share >= WORTH_A_WORD)
    .toSorted((a, b) => b[1] - a[1])
  const [most] = parts
  if (most === undefined || most[1] >= 1 - WORTH_A_WORD) return []
  return [`About ${parts.map(([name, share]) => `${Math.max(1, Math.round(10 * share))} in 10 ${name}`).join(', ')}.`]
}
