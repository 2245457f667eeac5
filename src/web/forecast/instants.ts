import type { Picture } from '#contract/picture-fields.ts'

/** The two instants of a picture about a time, and how far it is from the first to the second. */
export interface Between {
  readonly before: number
  readonly after: number
  readonly share: number
}

/** Where a time lies among the instants of a picture; before the first and after the last, those. */
export function betweenInstants({ timeS }: Pick<Picture, 'timeS'>, atS: number): Between {
  const last = timeS.length - 1
  if (!(atS > timeS[0]!)) return { before: 0, after: 0, share: 0 }
  if (atS >= timeS[last]!) return { before: last, after: last, share: 0 }
  let low = 0
  let high = last
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (timeS[middle]! <= atS) low = middle
    else high = middle
  }
  return { before: low, after: high, share: (atS - timeS[low]!) / (timeS[high]! - timeS[low]!) }
}

/** Temperature of every node at a time [degC]. */
export function temperaturesAt(picture: Picture, atS: number): Float32Array {
  const { before, after, share } = betweenInstants(picture, atS)
  const nodes = picture.xMm.length
  const from = picture.temperatureC.subarray(before * nodes, (before + 1) * nodes)
  if (share === 0) return from
  const to = picture.temperatureC.subarray(after * nodes, (after + 1) * nodes)
  const values = new Float32Array(nodes)
  for (let i = 0; i < nodes; i++) values[i] = from[i]! + share * (to[i]! - from[i]!)
  return values
}

/** How far up the piece the bath stands at a time [mm]; undefined where it is in no bath. */
export function levelAt(picture: Picture, atS: number): number | undefined {
  const { before, after, share } = betweenInstants(picture, atS)
  const [from, to] = [picture.levelMm[before]!, picture.levelMm[after]!]
  const level = share === 0 ? from : from + share * (to - from)
  return Number.isNaN(level) ? undefined : level
}
