import type { Forecast } from '#contract/answers.ts'
import { inHundred } from './told-figures.ts'

type Share = NonNullable<Forecast['zones'][number]['austenite_share']>

export interface AusteniteReading {
  readonly short: string
  readonly says: readonly string[]
}

/** So much left lets itself be felt: softer than it should be, and it may turn later. */
const MATTERS = 0.1
/** Hard and never tempered: so little may start a crack. */
const FRESH_MATTERS = 0.03

/** What the quench left soft, where there is enough of it to matter. */
export function readAustenite(share: Share | undefined): AusteniteReading | undefined {
  if (share === undefined) return undefined
  const { quenched, left, fresh } = share
  const brittle = fresh >= FRESH_MATTERS
  if (left < MATTERS && !brittle) return undefined
  const tempered = quenched - left >= 0.005
  return {
    short: brittle ? `Fresh and untempered: ${inHundred(fresh)}` : `Retained austenite: ${inHundred(left)}`,
    says: [
      `${inHundred(quenched)} of it stayed austenite in the quench, which is soft${
        tempered ? `; ${left < 0.005 ? 'none' : inHundred(left)} is left after the tempers` : ', and stays so'
      }.`,
      ...(brittle
        ? [`${inHundred(fresh)} turned to martensite as the last temper cooled, and is brittle: temper once more.`]
        : ['It may turn later, in the cold or under blows: the piece grows by a hair there and gets more brittle.']),
      'Less stays where the hardening heat is no hotter than it must be, and the quench goes on until it is cold.',
    ],
  }
}
