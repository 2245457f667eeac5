import type { Job } from '#engine/simulation/job.ts'
import type { ProcessStep } from '#engine/simulation/process.ts'
import type { Bath, BathKind, Fire } from '#engine/surface-heat/gear.ts'
import { wholeMinutes } from './soak.ts'
import type { SteelPractice } from './steel-practice.ts'

/** A way to harden, before anybody has thought of the temper. */
export interface HardeningCandidate {
  readonly says: string
  readonly steps: readonly ProcessStep[]
  /** Gentler first: air 0, oils 1, water 2, brine 3. */
  readonly fierceness: number
  /** More work or more that can go wrong than the plainest way. */
  readonly fuss: number
}

export interface Refusal {
  readonly says: string
  readonly because: string
}

/** Kind of medium in the words of treatment sheets. */
export type Medium = 'air' | 'oil' | 'water' | 'brine'

const MEDIUM_OF: { readonly [Kind in BathKind]: Medium } = {
  'still air': 'air',
  'moving air': 'air',
  'fast oil': 'oil',
  'medium oil': 'oil',
  'slow oil': 'oil',
  'vegetable oil': 'oil',
  water: 'water',
  brine: 'brine',
}
export const FIERCENESS: { readonly [Each in Medium]: number } = { air: 0, oil: 1, water: 2, brine: 3 }

/** Margin between the end of the hard zone and the bath's line or the end of the heat [m]: common practice, no source. */
const MARGIN_M = 0.008
const WALK_S = 3

export function mediumOf(bath: Bath): Medium {
  return MEDIUM_OF[bath.kind]
}

/** Ways to harden this job's piece with this shop's gear, plain ones first, and the ones refused with their reason. */
export function hardeningCandidates(
  job: Job,
  practice: SteelPractice,
  middleUp: (fire: Fire) => number,
): { readonly candidates: HardeningCandidate[]; readonly refused: Refusal[] } {
  const refused: Refusal[] = []
  const fire = bestFire(job)
  if (fire === undefined)
    return { candidates: [], refused: [{ says: 'no fire', because: 'the shop names no fire to harden from' }] }
  const baths = usableBaths(job, practice, refused)
  if (baths.length === 0) return { candidates: [], refused }
  const upS = middleUp(fire)
  const soakS = wholeMinutes(upS + practice.soakS)
  const before = preparation(practice, fire, upS)
  const lengthM = job.profile.sections.reduce((sum, section) => sum + section.lengthM, 0)
  const candidates = baths.flatMap((bath): HardeningCandidate[] => {
    const fierceness = FIERCENESS[mediumOf(bath)]
    const holdS = quenchTimeS(bath, job)
    return hardLengths(job, lengthM).flatMap(({ heatToM, depthM, says, fuss }): HardeningCandidate[] => {
      // In air there is no line to stop at: what is hot hardens, so only the heat can be partial.
      if (mediumOf(bath) === 'air' && depthM !== undefined) return []
      const steps: ProcessStep[] = [
        ...before,
        {
          do: 'heat',
          in: fire.name,
          toK: practice.austeniteK,
          holdS: soakS,
          even: true,
          ...(heatToM === undefined ? {} : { part: { fromM: 0, toM: heatToM } }),
        },
        { do: 'carry', forS: WALK_S },
        {
          do: 'quench',
          in: bath.name,
          ...(depthM === undefined ? {} : { depthM }),
          forS: holdS,
          agitation: mediumOf(bath) === 'air' ? 'still' : 'moderate',
        },
      ]
      return [{ says: `${says}, ${bath.name}`, steps, fierceness, fuss }]
    })
  })
  return { candidates, refused }
}

/** The evenest fire first: a muffle is read, a torch reaches little. */
function bestFire(job: Job): Fire | undefined {
  const order = ['muffle', 'gas', 'charcoal', 'coal', 'torch']
  return [...job.shop.fires].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))[0]
}

/** Air-hardening steels are never normalised; elsewhere the sheets decide. */
function preparation(practice: SteelPractice, fire: Fire, upS: number): ProcessStep[] {
  if (practice.normaliseK === undefined) return []
  return [{ do: 'normalise', in: fire.name, toK: practice.normaliseK, holdS: wholeMinutes(upS + 60), times: 2 }]
}

function usableBaths(job: Job, practice: SteelPractice, refused: Refusal[]): Bath[] {
  const air: Bath = { name: 'still air', kind: 'still air', temperatureK: 293.15 }
  const listed = [...(practice.media.includes('air') ? [air] : []), ...job.shop.baths]
  const allowed = listed.filter((bath) => {
    const medium = mediumOf(bath)
    if (practice.media.includes(medium)) return true
    if (medium === 'brine' && practice.media.includes('water')) return true
    if (medium === 'oil' && practice.media.includes('water')) return true
    if (medium !== 'air') refused.push({ says: bath.name, because: refusalReason(medium, practice) })
    return false
  })
  return allowed.sort((a, b) => FIERCENESS[mediumOf(a)] - FIERCENESS[mediumOf(b)])
}

function refusalReason(medium: Medium, practice: SteelPractice): string {
  return `${practice.mediaSource} gives ${practice.media.join(' or ')} for this steel; ${medium} is fiercer than it needs and cracks it`
}

/** In the bath until it can be held in the hand; in air until black and cold. */
function quenchTimeS(bath: Bath, job: Job): number {
  const thickestM = Math.max(...job.profile.sections.flatMap(({ from, to }) => [from.acrossM, to.acrossM]))
  if (mediumOf(bath) === 'air') return 1800
  return Math.min(600, Math.max(60, Math.round((thickestM * 1000 * 6) / 30) * 30))
}

interface HardLength {
  readonly says: string
  readonly heatToM?: number
  readonly depthM?: number
  readonly fuss: number
}

/** Whole; or, where a soft zone lies beyond the hard ones, part in the bath or part in the fire, clear of shoulders. */
function hardLengths(job: Job, lengthM: number): HardLength[] {
  const hard = job.zones.filter(({ aim }) => (aim.lowHrc ?? 0) >= 30)
  const hardToM = Math.max(0, ...hard.map(({ toM }) => toM))
  const soft = job.zones.filter(({ aim, fromM }) => aim.lowHrc === undefined && aim.highHrc !== undefined && fromM >= hardToM)
  const ways: HardLength[] = [{ says: 'heated and quenched whole', fuss: 0 }]
  if (hardToM === 0 || hardToM >= lengthM || soft.length === 0) return ways
  const softFromM = Math.min(...soft.map(({ fromM }) => fromM))
  const lines = [hardToM + MARGIN_M, 0.5 * (hardToM + softFromM)].map((lineM) => clearOfShoulders(job, lineM, hardToM, softFromM))
  const distinct = [
    ...new Set(lines.filter((lineM): lineM is number => lineM !== undefined).map((m) => Math.round(m * 1000) / 1000)),
  ]
  for (const depthM of distinct) {
    ways.push({ says: `heated whole, ${millimetres(depthM)} in the bath`, depthM, fuss: 1 })
    ways.push({ says: `${millimetres(depthM)} heated, quenched whole`, heatToM: depthM, fuss: 1 })
    ways.push({
      says: `${millimetres(depthM + 0.01)} heated, ${millimetres(depthM)} in the bath`,
      heatToM: depthM + 0.01,
      depthM,
      fuss: 2,
    })
  }
  return ways
}

/** `lineM` moved off any change of section that lies within 8 mm of it; undefined where there is no room. */
function clearOfShoulders(job: Job, lineM: number, lowM: number, highM: number): number | undefined {
  const shoulders: number[] = []
  let atM = 0
  for (const section of job.profile.sections.slice(0, -1)) {
    atM += section.lengthM
    shoulders.push(atM)
  }
  const clear = (m: number): boolean => m > lowM && m < highM && shoulders.every((shoulder) => Math.abs(shoulder - m) >= 0.008)
  const moved = [lineM, ...shoulders.flatMap((shoulder) => [shoulder + 0.009, shoulder - 0.009])].filter(clear)
  return moved.sort((a, b) => Math.abs(a - lineM) - Math.abs(b - lineM))[0]
}

function millimetres(m: number): string {
  return `${Math.round(m * 1000)} mm`
}
