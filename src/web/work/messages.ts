import type { Forecast } from '#contract/answers.ts'
import type { Assumption } from '#contract/assumption.ts'
import type { Picture } from '#contract/picture.ts'
import type { Problem } from '#contract/problems.ts'
import type { DescribeOptions } from '#contract/steel-answer.ts'
import type { CardSize } from '#report/card-sizes.ts'
import type { System } from '#units/length.ts'
import type { JobText, SteelText } from '#web/job/job-text.ts'

/** How fine a forecast is asked for: `sketch` while a handle moves, `normal` at rest. */
export type Fineness = 'sketch' | 'normal'

export interface ForecastQuestion {
  readonly job: JobText
  readonly units: System
  readonly fineness: Fineness
}

export interface RoutesQuestion {
  readonly job: JobText
  readonly units: System
}

export interface SteelQuestion {
  readonly steel: SteelText
  readonly options: DescribeOptions
}

/** What came of a question about a job. */
export type ForecastReply =
  | { readonly kind: 'answer'; readonly forecast: Forecast; readonly picture: Picture }
  /** The job is at fault: where, and the mend. */
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] }
  /** Sound so far, but no treatment is in it yet. */
  | { readonly kind: 'no-process'; readonly assumptions: readonly Assumption[] }

export interface Progress {
  readonly done: number
  readonly total: number
  readonly says: string
}

/** The first word of a thread about a question: its name. */
export interface Begun {
  readonly by: string
}

/** A card for paper, `rules` for the sheet and what is on it; or the size that would take the treatment. */
export type CardReply =
  | { readonly kind: 'card'; readonly html: string; readonly rules: string }
  | { readonly kind: 'too-small'; readonly says: string; readonly take: CardSize | undefined }
