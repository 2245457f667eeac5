import type { Profile, Section, SectionSize } from '#engine/geometry/profile.ts'

/** A place where one section meets the next with a step. */
export interface Shoulder {
  readonly xM: number
  /** Height of the step on one side [m]. */
  readonly stepM: number
  /** Radius in its corner [m]; 0 is sharp. */
  readonly filletM: number
  /** Thickness of the thinner and of the thicker side [m]. */
  readonly thinM: number
  readonly thickM: number
  /** Whether the thin side lies nearer the working end. */
  readonly thinFirst: boolean
}

/** A step below this is a mark of the hammer [m]. */
const LEAST_STEP_M = 0.0005

export function shouldersOf({ sections }: Profile): Shoulder[] {
  const found: Shoulder[] = []
  let xM = 0
  for (let i = 0; i + 1 < sections.length; i++) {
    const before = sections[i] as Section
    const after = sections[i + 1] as Section
    xM += before.lengthM
    const stepM = Math.max(Math.abs(before.to.acrossM - after.from.acrossM), Math.abs(widthM(before.to) - widthM(after.from))) / 2
    if (stepM < LEAST_STEP_M) continue
    const first = before.to.acrossM
    const second = after.from.acrossM
    found.push({
      xM,
      stepM,
      filletM: after.filletM ?? 0,
      thinM: Math.min(first, second),
      thickM: Math.max(first, second),
      thinFirst: first < second,
    })
  }
  return found
}

/** A hollow from an end face: where its bottom lies, and the wall that it leaves. */
export interface Hollow {
  readonly kind: 'dish' | 'bore'
  /** The end face, and the bottom of the hollow [m]. */
  readonly faceM: number
  readonly bottomM: number
  /** Metal left beside it at the face [m]. */
  readonly wallM: number
  readonly faceAcrossM: number
}

export function hollowsOf({ sections }: Profile): Hollow[] {
  const lengthM = sections.reduce((sum, section) => sum + section.lengthM, 0)
  const last = sections.length - 1
  return sections.flatMap((section, index): Hollow[] => {
    if (index !== 0 && index !== last) return []
    const atStart = index === 0
    const faceM = atStart ? 0 : lengthM
    const { acrossM } = atStart ? section.from : section.to
    return (['dish', 'bore'] as const).flatMap((kind): Hollow[] => {
      const hollow = section[kind]
      if (hollow === undefined) return []
      const bottomM = atStart ? hollow.depthM : lengthM - hollow.depthM
      return [{ kind, faceM, bottomM, wallM: (acrossM - hollow.acrossM) / 2, faceAcrossM: acrossM }]
    })
  })
}

function widthM({ acrossM, widthM: width }: SectionSize): number {
  return width ?? acrossM
}
