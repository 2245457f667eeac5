/** Every fault that a job can be told of. */
export const FINDING_IDS = [
  'overheated',
  'underheated',
  'soak-too-short',
  'uneven-heat',
  'steel-will-not-harden',
  'bath-too-slow',
  'bath-too-fast',
  'bath-too-hot',
  'bath-too-cold',
  'bath-too-small',
  'bath-too-shallow',
  'quench-line-at-shoulder',
  'sharp-inner-corner',
  'section-jump',
  'thin-beside-thick',
  'temper-soon',
  'temper-too-cool-for-aim',
  'temper-too-hot-for-aim',
  'oven-cannot-reach',
  'oven-error-matters',
  'colours-unreliable',
  'embrittling-range',
  'retained-austenite',
  'more-than-one-temper',
  'struck-end-hard',
  'hollow-edge-chips',
  'steam-in-hollow',
  'decarburised-skin',
  'coarse-grain',
  'red-short',
  'galvanised-fume',
  'oil-fire',
  'oil-smoke',
  'water-in-oil',
  'unknown-steel-spread',
  'aim-out-of-reach',
] as const
export type FindingId = (typeof FINDING_IDS)[number]

/** `stop`: do not do it so. `warn`: the piece or a person is at risk. `note`: good to know. */
export type Severity = 'stop' | 'warn' | 'note'

/** Which of the several causes that a rule watches for it is, where the mend differs. */
export type FindingCause =
  | 'fire-too-cool'
  | 'cold-entry'
  | 'short-heat'
  | 'edge-ahead'
  | 'said-so'
  | 'coarse-bar'
  | 'shallow-hardening'
  | 'skin-only'
  | 'wrong-medium'
  | 'thin-part'
  | 'short-dip'
  | 'hole'
  | 'no-temper'
  | 'end-only'
  | 'late'
  | 'spoils-another'
  | 'colour-never'
  | 'colour-races'
  | 'no-quench'
  | 'two-aims'

/** The figures that a mend goes by, for whoever turns it into a change of the job; each is there where its rule knows it. */
export interface FindingFigures {
  readonly cause?: FindingCause
  /** What to heat it to, and for how long once the outside is there [K, s]. */
  readonly heatToK?: number
  readonly holdS?: number
  /** What it wants once the middle is up [s]. */
  readonly soakS?: number
  /** How far from the working end to heat it, and to dip it: all that will do, the better one first [m]. */
  readonly heatedM?: number
  readonly dipsM?: readonly number[]
  /** Least that it may be at as it goes into the bath [K]. */
  readonly entryK?: number
  /** Of the bath: how warm, how much, how deep [K, m3, m]. */
  readonly bathK?: number
  readonly volumeM3?: number
  readonly depthM?: number
  /** Radius, least thickness, and the length of a taper [m]. */
  readonly radiusM?: number
  readonly leastAcrossM?: number
  readonly taperM?: number
  /** What the steel itself is to be tempered at, how often, and after how long a wait at most [K, -, s]. */
  readonly temperK?: number
  readonly times?: number
  readonly waitS?: number
  /** How long the working end is within its aim while the colours run [s]. */
  readonly windowS?: number
  /** What to grind off [m]. */
  readonly grindOffM?: number
  /** A temper to stay out of [K]. */
  readonly brittleK?: readonly [from: number, to: number]
  /** Cooling from 800 to 500 degC that the place has, and the slowest that hardens it [s]. */
  readonly coolingS?: number
  readonly hardensInS?: number
  /** Hardest that can be had, or that will last [HRC]. */
  readonly mostHrc?: number
}

/** One fault with its figures and its mend, in sentences that one smith would say to another. */
export interface EngineFinding {
  readonly id: FindingId
  readonly severity: Severity
  /** Place on the piece [m from the working end], zone, and step of the process, as far as it has them. */
  readonly where?: { readonly xM?: number; readonly zone?: string; readonly step?: number }
  readonly says: string
  /** The figures that raised it. */
  readonly because: string
  readonly remedy: string
  /** Where a person can be hurt. */
  readonly caution?: string
  readonly figures?: FindingFigures
}

const ORDER: { readonly [Each in Severity]: number } = { stop: 0, warn: 1, note: 2 }

/**
 * One finding for each cause and place, worst first, then in the order of the steps. Of two with the same id at the same
 * step and zone the worse one stays.
 */
export function inOrder(findings: readonly EngineFinding[]): EngineFinding[] {
  const kept = new Map<string, EngineFinding>()
  for (const finding of findings) {
    const key = `${finding.id} ${finding.where?.step ?? ''} ${finding.where?.zone ?? ''} ${placeKey(finding)}`
    const known = kept.get(key)
    if (known === undefined || ORDER[finding.severity] < ORDER[known.severity]) kept.set(key, finding)
  }
  const step = (finding: EngineFinding): number => finding.where?.step ?? Number.POSITIVE_INFINITY
  return [...kept.values()].sort((a, b) => ORDER[a.severity] - ORDER[b.severity] || compare(step(a), step(b)))
}

/** Places within half a millimetre of each other are one. */
function placeKey({ where }: EngineFinding): string {
  return where?.xM === undefined ? '' : String(Math.round(where.xM * 2000))
}

function compare(a: number, b: number): number {
  return a === b ? 0 : a - b
}
