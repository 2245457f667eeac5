import type { Profile } from '#engine/geometry/profile.ts'
import { type InnerCorner, shapeFeatures } from '#engine/geometry/shape-features.ts'
import { type Account, hardensAt, isOil, isWater, lastHardening, skinAt } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { sidesAt, thicknessAtM } from './thickness.ts'
import type { Wording } from './wording.ts'

/** Faults of the shape that a quench finds out. All are silent where the metal stays soft. */
export function shapeFindings(account: Account, say: Wording): EngineFinding[] {
  return [
    ...quenchLineAtShoulder(account, say),
    ...sharpInnerCorner(account, say),
    ...sectionJump(account, say),
    ...thinBesideThick(account, say),
    ...hollowEdgeChips(account, say),
  ]
}

/** How near the line of a part dip may come to a change of section [m]: three tenths of the thickness, 5..10 mm (common practice, no source). */
function lineClearanceM(acrossM: number): number {
  return Math.min(0.01, Math.max(0.005, 0.3 * acrossM))
}

interface ShoulderAtLine {
  readonly xM: number
  /** How far its fillet or its taper reaches to either side, and how far off that a line should stay [m]. */
  readonly reachM: number
  readonly clearM: number
  readonly what: string
}

/** The change of section that a line across the piece at `lineM` comes too near to, or undefined where the line is clear. */
export function shoulderAtLine(profile: Profile, lineM: number): ShoulderAtLine | undefined {
  const clearM = lineClearanceM(thicknessAtM(profile, lineM))
  const { innerCorners, sectionJumps, holes } = shapeFeatures(profile)
  const places = [
    ...innerCorners.map(({ xM, filletM }) => ({ xM, reachM: filletM, what: 'shoulder' })),
    // Where a fillet is known its reach counts; a jump alone is a place without reach.
    ...sectionJumps
      .filter(({ xM }) => innerCorners.every((corner) => Math.abs(corner.xM - xM) > 1e-6))
      .map(({ xM, overM }) => ({ xM, reachM: overM / 2, what: 'shoulder' })),
    ...holes.map(({ bottomXM }) => ({ xM: bottomXM, reachM: 0, what: 'bottom of the hole' })),
  ]
  const [nearest] = places
    .map((place) => ({ ...place, clearM, offM: Math.max(0, Math.abs(place.xM - lineM) - place.reachM) }))
    .filter(({ offM }) => offM < clearM - 1e-9)
    .sort((a, b) => a.offM - b.offM)
  return nearest
}

function quenchLineAtShoulder(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  const lineM = last?.quench.depthM ?? null
  if (last === undefined || lineM === null || lineM >= account.lengthM) return []
  const { quench } = last
  if (!isOil(quench.bath) && !isWater(quench.bath)) return []
  // Where the metal at the line was never red there is no line to crack at.
  if ((skinAt(account, lineM)?.peakK ?? 0) < account.steel.critical.ac1K) return []
  const nearest = shoulderAtLine(account.job.profile, lineM)
  if (nearest === undefined) return []
  const { clearM } = nearest
  return [
    {
      id: 'quench-line-at-shoulder',
      severity: 'warn',
      where: { step: quench.step, xM: lineM },
      says: `The ${quench.bath.name} stands right at the ${nearest.what}: that is where it cracks.`,
      because: `The line is at ${say.length(lineM)}, the ${nearest.what} at ${say.length(nearest.xM)}; less than ${say.length(clearM)} apart, both pull at one place.`,
      remedy: `Dip to ${say.length(Math.max(0.001, nearest.xM - nearest.reachM - clearM))} or to ${say.length(nearest.xM + nearest.reachM + clearM)}, and move it up and down so that no line stands.`,
      figures: { dipsM: [nearest.xM - nearest.reachM - clearM, nearest.xM + nearest.reachM + clearM] },
    },
  ]
}

/** A radius from here on is kind to the quench, whatever the step [m]: tool-steel design rule, from memory. */
const ENOUGH_RADIUS_M = 0.0015

/** A small step needs less: a quarter of its height, and never under half a millimetre. */
function leastFilletM({ smallerAcrossM, largerAcrossM }: InnerCorner): number {
  return Math.min(ENOUGH_RADIUS_M, Math.max(0.0005, 0.125 * (largerAcrossM - smallerAcrossM)))
}

function sharpInnerCorner(account: Account, say: Wording): EngineFinding[] {
  const quench = lastHardening(account)?.quench
  if (quench === undefined) return []
  const { innerCorners, holes } = shapeFeatures(account.job.profile)
  const corners = innerCorners
    .filter((corner) => corner.filletM < leastFilletM(corner) && hardensBeside(account, corner.xM))
    .map(({ xM, filletM, smallerAcrossM, largerAcrossM }): EngineFinding => {
      const stepM = (largerAcrossM - smallerAcrossM) / 2
      return {
        id: 'sharp-inner-corner',
        severity: quench.bath.kind === 'still air' ? 'note' : 'warn',
        where: { step: quench.step, xM },
        says: `The inner corner at ${say.length(xM)} is ${filletM === 0 ? 'sharp' : 'nearly sharp'}, and it hardens there.`,
        because: `A step of about ${say.length(stepM)} with ${filletM === 0 ? 'no radius' : `only ${say.length(filletM)} of radius`}; quench cracks start in such corners (PMPA and ASM Handbook 4 name them among the causes).`,
        remedy: `File or forge a radius of ${say.length(Math.max(ENOUGH_RADIUS_M, Math.min(0.003, stepM)))} into it, smooth, before you heat it.`,
        figures: { radiusM: Math.max(ENOUGH_RADIUS_M, Math.min(0.003, stepM)) },
      }
    })
  const bores = holes
    .filter(({ bottomXM }) => hardensAt(account, bottomXM))
    .map(
      ({ bottomXM }): EngineFinding => ({
        id: 'sharp-inner-corner',
        severity: 'note',
        where: { step: quench.step, xM: bottomXM },
        says: `The flat bottom of the hole at ${say.length(bottomXM)} has a sharp inner corner, and it hardens there.`,
        because: 'It is drawn as a flat-bottomed hole; cracks start in its corner (ASM Handbook 4).',
        remedy: 'Drill it with a rounded point, and plug it with clay for the quench.',
        figures: { cause: 'hole' },
      }),
    )
  return [...corners, ...bores]
}

/** Adjoining thicknesses further apart than this pull at each other in the quench: design rules give 2..3, shops begin to worry earlier (from memory). */
const JUMP_RATIO = 1.6

/** Still air is gentle; it takes a jump of the design rules' upper end to pull in it (from memory). */
const AIR_JUMP_RATIO = 2.5

function sectionJump(account: Account, say: Wording): EngineFinding[] {
  const quench = lastHardening(account)?.quench
  if (quench === undefined) return []
  const inAir = quench.bath.kind === 'still air'
  const least = inAir ? AIR_JUMP_RATIO : JUMP_RATIO
  return shapeFeatures(account.job.profile)
    .sectionJumps.filter(({ xM, ratio }) => ratio >= least && xM < quench.lengthUnderM && hardensBeside(account, xM))
    .map(({ xM, ratio }): EngineFinding => {
      const { thinM, thickM } = sidesAt(account.job.profile, xM)
      return {
        id: 'section-jump',
        severity: ratio >= 2.2 && !inAir ? 'warn' : 'note',
        where: { step: quench.step, xM },
        says: `It jumps from ${say.length(thinM)} to ${say.length(thickM)} at ${say.length(xM)}, in the length that hardens.`,
        because: `${Math.abs(thickM / thinM - ratio) > 0.3 ? 'As rounds that cool alike, the' : 'The'} thick side is ${ratio.toFixed(1)} times the thin one: the thin side is hard while the thick one still shrinks, and the corner takes the pull.`,
        remedy: `Let it pass over in a taper at least ${say.length(thickM)} long, give the corner a wide radius, or keep the jump out of the bath.`,
        figures: { taperM: thickM },
      }
    })
}

/** From this ratio on the thin part lives a life of its own in fire and bath (design rules: 2..3, from memory). */
const THIN_RATIO = 3

function thinBesideThick(account: Account, say: Wording): EngineFinding[] {
  const quench = lastHardening(account)?.quench
  if (quench === undefined) return []
  const { profile } = account.job
  return shapeFeatures(profile)
    .thinBesideThick.filter(
      ({ xM, thinM, thickM }) => thickM >= THIN_RATIO * thinM && !isPoint(account, xM) && !isLip(account, xM),
    )
    .filter(({ xM }) => hardensAt(account, xM))
    .map(
      ({ xM, thinM, thickM }): EngineFinding => ({
        id: 'thin-beside-thick',
        severity: 'warn',
        where: { step: quench.step, xM },
        says: `A thin part sits right beside a thick one at ${say.length(xM)}: ${say.length(thinM)} beside ${say.length(thickM)}.`,
        because: `At ${(thickM / thinM).toFixed(1)} to 1 the thin part is hot long before the thick one, and hard long before it in the bath.`,
        remedy:
          'Heat it from the thick side, put the thick side into the bath first, or leave the thin one heavier and grind it after.',
        figures: { leastAcrossM: thickM / THIN_RATIO },
      }),
    )
}

/** The lip of a dish has a rule of its own. */
function isLip({ job: { profile } }: Account, xM: number): boolean {
  return shapeFeatures(profile).dishLips.some((lip) => Math.abs(lip.xM - xM) < 0.003)
}

/** The end of a taper or a rounded tip is a point or an edge: it is meant to be thin, and the bath rule looks after it. */
function isPoint({ job: { profile }, lengthM }: Account, xM: number): boolean {
  const first = profile.sections[0]
  const last = profile.sections[profile.sections.length - 1]
  const narrows = (end: number, far: number): boolean => end < 0.9 * far
  const atStart = first !== undefined && xM < 0.003 && (first.tip !== undefined || narrows(first.from.acrossM, first.to.acrossM))
  const atEnd =
    last !== undefined && xM > lengthM - 0.003 && (last.tip !== undefined || narrows(last.to.acrossM, last.from.acrossM))
  return atStart || atEnd
}

/** A lip narrower than this, or than a seventh of the face, is thin [m]: common practice, no source. */
const LIP_M = 0.003
/** Rivet sets and their like chip above this [HRC]; their usual aim is 50..55 (from memory). */
const LIP_HRC = 53.5
const NARROW_LIP_HRC = 52

function hollowEdgeChips(account: Account, say: Wording): EngineFinding[] {
  return shapeFeatures(account.job.profile).dishLips.flatMap(({ xM, landM }): EngineFinding[] => {
    const faceAcrossM = thicknessAtM(account.job.profile, xM)
    if (landM > Math.max(LIP_M, 0.14 * faceAcrossM)) return []
    const hrc = skinAt(account, xM)?.temperedHrc.value ?? 0
    const limit = landM < 0.0015 ? NARROW_LIP_HRC : LIP_HRC
    if (hrc <= limit) return []
    return [
      {
        id: 'hollow-edge-chips',
        severity: 'warn',
        where: { xM },
        says: `The lip of the hollow chips: it is ${say.length(Math.max(0, landM))} wide and comes out at ${say.hardness(hrc)}.`,
        because: `A lip so narrow stands up to about ${say.hardness(limit)}; the hollow takes most of the ${say.length(faceAcrossM)} face.`,
        remedy: `Draw it to ${say.hardness(limit - 1.5)} or softer, or leave the lip wider and round its edge.`,
        figures: { mostHrc: limit - 1.5, leastAcrossM: Math.max(LIP_M, 0.14 * faceAcrossM) },
        caution: 'Chips fly from a hard lip when it is struck: eye protection for you and for those near.',
      },
    ]
  })
}

/** Whether the metal hardens just beside a step, on its thin side or its thick one. */
function hardensBeside(account: Account, xM: number): boolean {
  const asideM = 0.5 * stationM(account)
  return hardensAt(account, xM - asideM) || hardensAt(account, xM + asideM)
}

/** Distance between two stations of the walk along the piece [m]. */
function stationM({ outlook, lengthM }: Account): number {
  return outlook.along.length > 1 ? lengthM / (outlook.along.length - 1) : lengthM
}
