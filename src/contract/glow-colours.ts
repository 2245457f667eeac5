/**
 * Colours of glowing steel and the temperature that a published table gives each [degC]:
 * W.H. Dooley, Applied Science for Metal Workers (early 20th century), rounded from degrees Fahrenheit.
 * Light and eye move them by tens of degrees; they are what to look for, not what to measure by.
 */
const GLOW: readonly (readonly [string, number])[] = [
  ['first red', 514],
  ['dull red', 699],
  ['dark cherry', 799],
  ['cherry', 902],
  ['bright red', 1021],
  ['dull orange', 1099],
  ['bright orange', 1199],
  ['white', 1299],
]

/** As near as this a colour is named by itself [K]. */
const NEAR_K = 25

/** What the steel looks like at a heat: `dark cherry`, or `dark cherry to cherry` between two; undefined where it does not glow or the table ends. */
export function glowAt(temperatureK: number): string | undefined {
  const celsius = temperatureK - 273.15
  const near = GLOW.find(([, at]) => Math.abs(celsius - at) <= NEAR_K)
  if (near !== undefined) return near[0]
  const above = GLOW.findIndex(([, at]) => at > celsius)
  const [low, high] = [GLOW[above - 1], GLOW[above]]
  return low === undefined || high === undefined ? undefined : `${low[0]} to ${high[0]}`
}
