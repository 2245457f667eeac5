import { bandMet, type Check, errorMet, type ValidationRecord } from './validation-record.ts'

/** One row of the table to reach: what was asked, and what one set of published figures says. */
export interface Reached {
  readonly wish: string
  readonly check: Check
  readonly met: boolean
  /** Undefined where the program gives no band. */
  readonly bandMet: boolean | undefined
}

/** The table to reach, by the order of the wishes; sets that answer no wish are not in it. */
export function tableToReach({ checks }: ValidationRecord): Reached[] {
  const wishes = [...new Set(checks.flatMap(({ wish }) => (wish === undefined ? [] : [wish])))]
  return wishes.flatMap((wish) =>
    checks
      .filter((check) => check.wish === wish)
      .map((check) => ({ wish, check, met: errorMet(check), bandMet: bandMet(check.all) })),
  )
}

/** All published figures together that a band was given for: how many, and the share that it holds. Checks of arithmetic do not count. */
export function allBands({ checks }: ValidationRecord): { readonly n: number; readonly inside: number } {
  let [n, held] = [0, 0]
  for (const { all, arithmetic } of checks) {
    if (arithmetic || all.inside === undefined || all.banded === undefined) continue
    n += all.banded
    held += Math.round(all.inside * all.banded)
  }
  return { n, inside: n === 0 ? 0 : held / n }
}

/** `13.6`, and from a hundred on no decimals. */
export function figure(value: number): string {
  return Math.abs(value) >= 100 ? value.toFixed(0) : value.toFixed(1)
}

/** `+13.6`, never `-0.0`. */
export function signed(value: number): string {
  const written = figure(value)
  if (Number(written) === 0) return written.replace('-', '')
  return value > 0 ? `+${written}` : written
}

export function percent(share: number): string {
  return `${Math.round(100 * share)} %`
}

/** What the values of a check stand in, as a scale says it; nothing where they are of several kinds. */
export function valueUnit({ scale, unit, relative }: Check): string {
  if (scale === 'degC') return '°C'
  return relative || unit.includes(';') ? '' : unit
}

/** How far sources are apart, in a sentence. */
export function betweenSourcesText({
  betweenSources,
  unit,
  scale,
}: Pick<Check, 'betweenSources' | 'unit' | 'scale'>): string | undefined {
  if (betweenSources === undefined) return undefined
  const { n, meanAbsolute, widest } = betweenSources
  const pairsText = n === 1 ? 'One pair of sources speaks' : `${n} pairs of figures from two sources speak`
  const apart = `${pairsText} of nominally the same steel and condition: ${figure(meanAbsolute)} ${unit} apart`
  if (widest === undefined) return `${apart} on average.`
  const of = scale === 'degC' ? '°C' : scale === 'HRC' ? 'HRC' : unit
  const most = n === 1 ? '' : ` on average, at most ${figure(Math.abs(widest.one - widest.other))}`
  return `${apart}${most} (${widest.what}: ${figure(widest.one)} and ${figure(widest.other)} ${of}).`
}
