import { acos, atan2, cos, sin, tan } from '#engine/arithmetic/angles.ts'
import { square } from '#engine/arithmetic/square.ts'
import { sphereOf } from './hollows.ts'
import { arcAbout, line, type OutlinePiece, type OutlinePoint } from './outline-pieces.ts'
import type { Bore, Dish } from './profile.ts'

/** One end of the piece as its own end face sees it: x runs inward from the face; radii are those of the equivalent round [m]. */
export interface EndSpec {
  readonly endM: number
  /** Radius at the inner end of the end section, and how far that is. */
  readonly farM: number
  readonly lengthM: number
  readonly dish?: Dish
  readonly bore?: Bore
  readonly tipM?: number
}

/** An end radius below this is a point [m]. */
const POINT_M = 2e-5

/** A rounding that takes more than this share of an end's radius takes all of it: no speck of a face is left. */
const WHOLE_END = 0.85

/** How a rounded end is drawn: a rounded corner, a dome as wide as the end, or a ball on a point. */
export type TipForm = 'corner' | 'dome' | 'ball'

export function tipForm(endM: number, farM: number, lengthM: number, tipM: number): TipForm {
  if (endM < POINT_M) return 'ball'
  return cornerSetbackM(endM, farM, lengthM, tipM) <= endM * (1 + 1e-9) ? 'corner' : 'dome'
}

/** How far from the corner, along the face and along the side, a rounding of radius `tipM` begins [m]. */
export function cornerSetbackM(endM: number, farM: number, lengthM: number, tipM: number): number {
  const slope = atan2(farM - endM, lengthM)
  return tipM * tan(Math.max(0, Math.PI / 2 - slope) / 2)
}

/** The pieces from the axis over the end face up to where the side of the section begins, or undefined where they cannot be drawn. */
export function endPieces(end: EndSpec): OutlinePiece[] {
  const { pieces, rimM } = hollowPieces(end)
  if (end.endM < POINT_M && end.tipM === undefined) return pieces
  const rim: OutlinePoint = pieces[pieces.length - 1]?.to ?? { xM: 0, rM: 0 }
  const corner: OutlinePoint = { xM: 0, rM: end.endM }
  if (end.tipM !== undefined && end.tipM > 0) {
    const { endM, farM, lengthM, tipM } = end
    const form = tipForm(endM, farM, lengthM, tipM)
    if (form === 'ball') return [ballOnPoint(farM, lengthM, tipM)]
    if (form === 'dome') return [dome(endM, farM, lengthM, tipM)]
    const wanted = Math.min(cornerSetbackM(endM, farM, lengthM, tipM), endM - rimM)
    const setback = wanted > WHOLE_END * endM ? endM : wanted
    const slope = atan2(farM - endM, lengthM)
    const onFace = { xM: 0, rM: endM - setback }
    const onSide = { xM: setback * cos(slope), rM: endM + setback * sin(slope) }
    const radius = setback / tan((Math.PI / 2 - slope) / 2)
    pieces.push(line(rim, onFace), arcAbout({ xM: radius, rM: onFace.rM }, onFace, onSide))
    return pieces
  }
  pieces.push(line(rim, corner))
  return pieces
}

/** Dish and bore, from the axis to their rim in the face. */
function hollowPieces({ dish, bore, endM }: EndSpec): { pieces: OutlinePiece[]; rimM: number } {
  const pieces: OutlinePiece[] = []
  let start: OutlinePoint = { xM: 0, rM: 0 }
  let rimM = 0
  if (bore !== undefined) {
    rimM = bore.acrossM / 2
    let mouth: OutlinePoint = { xM: 0, rM: rimM }
    if (dish !== undefined) {
      const sphere = sphereOf(dish)
      mouth = { xM: sphere.centreXM + Math.sqrt(Math.max(0, square(sphere.radiusM) - rimM * rimM)), rM: rimM }
    }
    pieces.push(line({ xM: bore.depthM, rM: 0 }, { xM: bore.depthM, rM: rimM }), line({ xM: bore.depthM, rM: rimM }, mouth))
    start = mouth
  }
  if (dish !== undefined) {
    const sphere = sphereOf(dish)
    if (bore === undefined) start = { xM: dish.depthM, rM: 0 }
    rimM = Math.min(dish.acrossM / 2, endM)
    pieces.push(arcAbout({ xM: sphere.centreXM, rM: 0 }, start, { xM: 0, rM: rimM }))
  }
  return { pieces, rimM }
}

/** A ball that touches x = 0 on the axis, up to where it is cut by the cone from (0, end) to (length, far). */
function dome(endM: number, farM: number, lengthM: number, tipM: number): OutlinePiece {
  const slope = (farM - endM) / lengthM
  // 2 tip x - x2 = (end + slope x)2, the smaller root.
  const a = 1 + slope * slope
  const half = tipM - endM * slope
  const xM = square(endM) / (half + Math.sqrt(Math.max(0, half * half - a * endM * endM)))
  return arcAbout({ xM: tipM, rM: 0 }, { xM: 0, rM: 0 }, { xM, rM: endM + slope * xM })
}

/** A ball that touches x = 0 on the axis, up to where the straight side from (length, far) touches it. */
function ballOnPoint(farM: number, lengthM: number, tipM: number): OutlinePiece {
  const away = lengthM - tipM
  const distance = Math.sqrt(away * away + farM * farM)
  if (!(distance > tipM)) throw new RangeError(`a rounded point of radius ${tipM} m does not fit into its section`)
  const angle = atan2(farM, away) + acos(tipM / distance)
  const touch = { xM: tipM + tipM * cos(angle), rM: tipM * sin(angle) }
  return arcAbout({ xM: tipM, rM: 0 }, { xM: 0, rM: 0 }, touch)
}
