import type { Basis } from '#engine/provenance/estimate.ts'
import type { Spot } from '#engine/simulation/body.ts'
import type { Zone } from '#engine/simulation/process.ts'
import type { SectionOutlook } from './cross-sections.ts'
import type { SkinOutlook } from './skin-outlook.ts'

/** What members of the ensemble gave at one place: best estimate and the band that holds nine in ten. */
export interface Spread {
  readonly value: number
  readonly low: number
  readonly high: number
}

/** One place in the piece after the treatment. */
export interface SpotOutlook {
  readonly spot: Spot
  /** Nominal history. */
  readonly peakK: number
  readonly soakS: number
  /** Infinity where the place was never over 500 degC or never came down through it. */
  readonly cooling800To500S: number
  readonly temperPeakK: number
  /** Nominal structure: share austenitised in the last heat, and martensite after the quench. */
  readonly austeniteFraction: number
  readonly martensiteFraction: number
  readonly retainedAusteniteFraction: number
  /** Of it still austenite after all tempers, and martensite of it that no temper came after. */
  readonly austeniteLeftFraction: number
  readonly freshMartensiteFraction: number
  readonly quenchedHrc: Spread
  readonly temperedHrc: Spread
  readonly quenchedHv: Spread
  readonly temperedHv: Spread
}

export interface ZoneOutlook {
  readonly zone: Zone
  /** Places that the zone was judged by: its skin down to the working depth, and its middle where the aim has an upper bound only. */
  readonly spots: readonly SpotOutlook[]
  /** Over all places of the zone. */
  readonly quenchedHrc: Spread
  readonly temperedHrc: Spread
  readonly temperedHv: Spread
  /** Share of members in which every place meets the aim after tempering. */
  readonly chance: number
  /** Share of members in which every place is at least as hard as the aim before tempering. */
  readonly chanceQuenched: number
  /** Of the members that miss: how many for being too soft somewhere, too hard somewhere. */
  readonly tooSoft: number
  readonly tooHard: number
}

/** The forecast as the engine gives it: zones, probes and a walk along the length, all with their bands. */
export interface Outlook {
  readonly members: number
  readonly seed: number
  readonly zones: readonly ZoneOutlook[]
  readonly probes: readonly SpotOutlook[]
  readonly along: readonly { readonly xM: number; readonly skin: SpotOutlook; readonly centre: SpotOutlook }[]
  /** Chance that every zone meets its aim. */
  readonly chance: number
  /** High less low of the tempered hardness at each spot of the plan's ladder, by its index in the plan's spots. */
  readonly widthsHrc?: ReadonlyMap<number, number>
  /** What the fires did to the skin of each hard zone, where that was looked into. */
  readonly skins?: readonly SkinOutlook[]
  /** True cross-sections that were solved beside their equivalent rounds. */
  readonly sections?: readonly SectionOutlook[]
  /** Where the figures of the quench and of the temper come from. */
  readonly quenched: Origin
  readonly tempered: Origin
}

export interface Origin {
  readonly basis: Basis
  readonly source: string
}
