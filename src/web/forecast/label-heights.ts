/** Heights as near to what is wanted as can be, at least `apart` from each other and within `low` to `high` if there is room; in the order asked. */
export function spread(wanted: readonly number[], apart: number, low: number, high: number): number[] {
  const order = wanted.map((at, index) => ({ at: Math.min(high, Math.max(low, at)), index })).toSorted((a, b) => a.at - b.at)
  for (let i = 1; i < order.length; i++) order[i]!.at = Math.max(order[i]!.at, order[i - 1]!.at + apart)
  let ceiling = high
  for (let i = order.length - 1; i >= 0; i--) {
    order[i]!.at = Math.min(order[i]!.at, ceiling)
    ceiling = order[i]!.at - apart
  }
  const placed: number[] = []
  for (const { at, index } of order) placed[index] = at
  return placed
}
