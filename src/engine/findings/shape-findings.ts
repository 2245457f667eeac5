import { type Account, hardensAt, isOil, isWater, lastHardening, skinAt } from './account.ts'
import type { EngineFinding } from './finding.ts'
import { hollowsOf, type Shoulder, shouldersOf } from './shoulders.ts'
import { thicknessAtM } from './thickness.ts'
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

function quenchLineAtShoulder(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  const lineM = last?.quench.depthM ?? null
  if (last === undefined || lineM === null || lineM >= account.lengthM) return []
  const { quench } = last
  if (!isOil(quench.bath) && !isWater(quench.bath)) return []
  // Where the metal at the line was never red there is no line to crack at.
  if ((skinAt(account, lineM)?.peakK ?? 0) < account.steel.critical.ac1K) return []
  const clearM = lineClearanceM(thicknessAtM(account.job.profile, lineM))
  const places = [
    ...shouldersOf(account.job.profile).map(({ xM, filletM }) => ({ xM, reachM: filletM, what: 'shoulder' })),
    ...hollowsOf(account.job.profile)
      .filter(({ kind }) => kind === 'bore')
      .map(({ bottomM }) => ({ xM: bottomM, reachM: 0, what: 'bottom of the hole' })),
  ]
  const [nearest] = places
    .map((place) => ({ ...place, offM: Math.max(0, Math.abs(place.xM - lineM) - place.reachM) }))
    .filter(({ offM }) => offM < clearM - 1e-9)
    .sort((a, b) => a.offM - b.offM)
  if (nearest === undefined) return []
  return [
    {
      id: 'quench-line-at-shoulder',
      severity: 'warn',
      where: { step: quench.step, xM: lineM },
      says: `The ${quench.bath.name} stands right at the ${nearest.what}: that is where it cracks.`,
      because: `The line is at ${say.length(lineM)}, the ${nearest.what} at ${say.length(nearest.xM)}; less than ${say.length(clearM)} apart, both pull at one place.`,
      remedy: `Dip to ${say.length(Math.max(0.001, nearest.xM - nearest.reachM - clearM))} or to ${say.length(nearest.xM + nearest.reachM + clearM)}, and move it up and down so that no line stands.`,
    },
  ]
}

/** A radius from here on is kind to the quench, whatever the step [m]: tool-steel design rule, from memory. */
const ENOUGH_RADIUS_M = 0.0015

/** A small step needs less: a quarter of its height, and never under half a millimetre. */
function leastFilletM({ stepM }: Shoulder): number {
  return Math.min(ENOUGH_RADIUS_M, Math.max(0.0005, 0.25 * stepM))
}

function sharpInnerCorner(account: Account, say: Wording): EngineFinding[] {
  const quench = lastHardening(account)?.quench
  if (quench === undefined) return []
  const where = (xM: number) => ({ step: quench.step, xM })
  const corners = shouldersOf(account.job.profile)
    .filter((shoulder) => shoulder.filletM < leastFilletM(shoulder) && hardensBeside(account, shoulder))
    .map(
      (shoulder): EngineFinding => ({
        id: 'sharp-inner-corner',
        severity: quench.bath.kind === 'still air' ? 'note' : 'warn',
        where: where(shoulder.xM),
        says: `The inner corner at ${say.length(shoulder.xM)} is ${shoulder.filletM === 0 ? 'sharp' : 'nearly sharp'}, and it hardens there.`,
        because: `A step of ${say.length(shoulder.stepM)} with ${shoulder.filletM === 0 ? 'no radius' : `only ${say.length(shoulder.filletM)} of radius`}; most quench cracks of tools start in such corners (PMPA and ASM Handbook 4 name them among the causes).`,
        remedy: `File or forge a radius of ${say.length(Math.max(ENOUGH_RADIUS_M, Math.min(0.003, shoulder.stepM)))} into it, smooth, before you heat it.`,
      }),
    )
  const bores = hollowsOf(account.job.profile)
    .filter(({ kind, bottomM }) => kind === 'bore' && hardensAt(account, bottomM))
    .map(
      ({ bottomM }): EngineFinding => ({
        id: 'sharp-inner-corner',
        severity: 'note',
        where: where(bottomM),
        says: `The flat bottom of the hole at ${say.length(bottomM)} has a sharp inner corner, and it hardens there.`,
        because: 'It is drawn as a flat-bottomed hole; cracks start in its corner (ASM Handbook 4).',
        remedy: 'Drill it with a rounded point, and plug it with clay for the quench.',
      }),
    )
  return [...corners, ...bores]
}

/** Adjoining thicknesses further apart than this pull at each other in the quench: design rules give 2..3, shops begin to worry earlier (from memory). */
const JUMP_RATIO = 1.6

function sectionJump(account: Account, say: Wording): EngineFinding[] {
  const quench = lastHardening(account)?.quench
  if (quench === undefined || quench.bath.kind === 'still air') return []
  const steps = shouldersOf(account.job.profile).filter((shoulder) => shoulder.thickM >= JUMP_RATIO * shoulder.thinM)
  const tapers = shortTapers(account).filter(({ thinM, thickM }) => thickM >= JUMP_RATIO * thinM)
  return [...steps, ...tapers]
    .filter((place) => place.xM < quench.lengthUnderM && hardensBeside(account, place))
    .map(
      ({ xM, thinM, thickM }): EngineFinding => ({
        id: 'section-jump',
        severity: thickM >= 2.2 * thinM ? 'warn' : 'note',
        where: { step: quench.step, xM },
        says: `It jumps from ${say.length(thinM)} to ${say.length(thickM)} at ${say.length(xM)}, in the length that hardens.`,
        because: `The thick side is ${(thickM / thinM).toFixed(1)} times the thin one: the thin side is hard while the thick one still shrinks, and the corner takes the pull.`,
        remedy: `Let it pass over in a taper at least ${say.length(thickM)} long, give the corner a wide radius, or keep the jump out of the bath.`,
      }),
    )
}

/** Tapers steeper than their own thickness: as good as a step. A pointed or rounded end is none. */
function shortTapers(account: Account): { xM: number; thinM: number; thickM: number; thinFirst: boolean }[] {
  const { sections } = account.job.profile
  let startM = 0
  return sections.flatMap(({ from, to, lengthM }, index) => {
    const xM = startM + lengthM / 2
    startM += lengthM
    const thinM = Math.min(from.acrossM, to.acrossM)
    const thickM = Math.max(from.acrossM, to.acrossM)
    const thinFirst = from.acrossM < to.acrossM
    const isEnd = (index === 0 && thinFirst) || (index === sections.length - 1 && !thinFirst)
    return isEnd || lengthM > 0.5 * thickM ? [] : [{ xM, thinM, thickM, thinFirst }]
  })
}

/** From this ratio on the thin part lives a life of its own in fire and bath (design rules: 2..3, from memory). */
const THIN_RATIO = 3

function thinBesideThick(account: Account, say: Wording): EngineFinding[] {
  const quench = lastHardening(account)?.quench
  if (quench === undefined) return []
  const steps = [...shouldersOf(account.job.profile), ...shortTapers(account)]
    .filter((place) => place.thickM >= THIN_RATIO * place.thinM && hardensBeside(account, place))
    .map(({ xM, thinM, thickM }) => ({ xM, thinM, thickM, what: 'part' }))
  const walls = hollowsOf(account.job.profile)
    .filter(({ wallM, faceAcrossM, kind }) => kind === 'bore' && wallM < 0.005 && faceAcrossM >= THIN_RATIO * wallM)
    .filter(({ faceM, bottomM }) => hardensAt(account, 0.5 * (faceM + bottomM)))
    .map(({ bottomM, wallM, faceAcrossM }) => ({ xM: bottomM, thinM: wallM, thickM: faceAcrossM, what: 'wall' }))
  return [...steps, ...walls].map(
    ({ xM, thinM, thickM, what }): EngineFinding => ({
      id: 'thin-beside-thick',
      severity: 'warn',
      where: { step: quench.step, xM },
      says: `A thin ${what} sits right beside a thick one at ${say.length(xM)}: ${say.length(thinM)} beside ${say.length(thickM)}.`,
      because: `At ${(thickM / thinM).toFixed(1)} to 1 the thin ${what} is hot long before the thick one, and hard long before it in the bath.`,
      remedy:
        'Heat it from the thick side, put the thick side into the bath first, or leave the thin one heavier and grind it after.',
    }),
  )
}

/** A lip narrower than this, or than a seventh of the face, is thin [m]: common practice, no source. */
const LIP_M = 0.003
/** Rivet sets and their like chip above this [HRC]; their usual aim is 50..55 (from memory). */
const LIP_HRC = 53.5
const NARROW_LIP_HRC = 52

function hollowEdgeChips(account: Account, say: Wording): EngineFinding[] {
  return hollowsOf(account.job.profile).flatMap(({ kind, faceM, wallM, faceAcrossM }): EngineFinding[] => {
    if (kind !== 'dish' || wallM > Math.max(LIP_M, 0.14 * faceAcrossM)) return []
    const hrc = skinAt(account, faceM)?.temperedHrc.value ?? 0
    const limit = wallM < 0.0015 ? NARROW_LIP_HRC : LIP_HRC
    if (hrc <= limit) return []
    return [
      {
        id: 'hollow-edge-chips',
        severity: 'warn',
        where: { xM: faceM },
        says: `The lip of the hollow chips: it is ${say.length(Math.max(0, wallM))} wide and comes out at ${say.hardness(hrc)}.`,
        because: `A lip so narrow stands up to about ${say.hardness(limit)}; the hollow takes most of the ${say.length(faceAcrossM)} face.`,
        remedy: `Draw it to ${say.hardness(limit - 1.5)} or softer, or leave the lip wider and round its edge.`,
        caution: 'Chips fly from a hard lip when it is struck: eye protection for you and for those near.',
      },
    ]
  })
}

/** Whether the metal hardens just beside a step, on its thin side or its thick one. */
function hardensBeside(account: Account, { xM }: { readonly xM: number }): boolean {
  const asideM = 0.5 * stationM(account)
  return hardensAt(account, xM - asideM) || hardensAt(account, xM + asideM)
}

/** Distance between two stations of the walk along the piece [m]. */
function stationM({ outlook, lengthM }: Account): number {
  return outlook.along.length > 1 ? lengthM / (outlook.along.length - 1) : lengthM
}
