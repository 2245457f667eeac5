/** One known value of a correlation: `within` is in the unit of the output, `from` names the place that the value was read in. */
export interface CorrelationCheck<Input> {
  readonly input: Input
  readonly expected: number
  readonly within: number
  readonly from: string
}

/**
 * A published relation, kept whole: name, source, limits, checks and formula cannot slide apart.
 * `validFor` gives the range of each input that the source allows; `evaluate` itself never checks it.
 */
export interface Correlation<Input extends object> {
  readonly id: string
  readonly source: string
  readonly output: string
  readonly validFor: { readonly [Key in keyof Input]?: readonly [number, number] }
  readonly checks: readonly CorrelationCheck<Input>[]
  readonly evaluate: (input: Input) => number
}

/** Every limit of `correlation` that `input` breaks, in words. NaN breaks any limit. */
export function limitsBroken<Input extends object>(correlation: Correlation<Input>, input: Input): string[] {
  const broken: string[] = []
  for (const [key, range] of Object.entries(correlation.validFor) as [keyof Input & string, readonly [number, number]][]) {
    const value = input[key]
    if (typeof value !== 'number' || !(value >= range[0] && value <= range[1]))
      broken.push(`${correlation.id}: ${key} = ${String(value)} is outside ${range[0]}..${range[1]}`)
  }
  return broken
}
