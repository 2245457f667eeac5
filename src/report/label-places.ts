/** Something written beside the piece: where it wants its middle, and how tall it is [px]. */
export interface Wish {
  readonly atPx: number
  readonly tallPx: number
}

/**
 * Middles for labels in one column so that none overlaps its neighbour: each as near to its wish as the others allow,
 * all between `lowPx` and `highPx` if they fit there at all. Same order as `wishes`.
 */
export function spreadLabels(wishes: readonly Wish[], lowPx: number, highPx: number): number[] {
  const order = wishes.map((_, i) => i).sort((a, b) => (wishes[a]?.atPx ?? 0) - (wishes[b]?.atPx ?? 0) || a - b)
  // Labels that would touch are drawn together into a stack about the mean of their wishes (pool adjacent violators).
  const stacks: { members: number[]; tallPx: number; topPx: number }[] = []
  for (const i of order) {
    const { atPx, tallPx } = wishes[i] as Wish
    let stack = { members: [i], tallPx, topPx: clamp(atPx - tallPx / 2, lowPx, highPx - tallPx) }
    for (let above = stacks.at(-1); above !== undefined && above.topPx + above.tallPx > stack.topPx; above = stacks.at(-1)) {
      stacks.pop()
      stack = together(above, stack, wishes, lowPx, highPx)
    }
    stacks.push(stack)
  }
  const middles = new Array<number>(wishes.length)
  for (const { members, topPx } of stacks) {
    let top = topPx
    for (const i of members) {
      const { tallPx } = wishes[i] as Wish
      middles[i] = top + tallPx / 2
      top += tallPx
    }
  }
  return middles
}

function together<Stack extends { members: number[]; tallPx: number; topPx: number }>(
  above: Stack,
  below: Stack,
  wishes: readonly Wish[],
  lowPx: number,
  highPx: number,
): { members: number[]; tallPx: number; topPx: number } {
  const members = [...above.members, ...below.members]
  const tallPx = above.tallPx + below.tallPx
  let offset = 0
  let sum = 0
  for (const i of members) {
    const wish = wishes[i] as Wish
    sum += wish.atPx - wish.tallPx / 2 - offset
    offset += wish.tallPx
  }
  return { members, tallPx, topPx: clamp(sum / members.length, lowPx, highPx - tallPx) }
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(value, high))
}

/** Words broken into lines of at most `letters`; what is longer than `most` lines ends in three dots. */
export function brokenIntoLines(text: string, letters: number, most: number): string[] {
  const lines: string[] = []
  for (const word of text.split(/\s+/u).filter((each) => each !== '')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + 1 + word.length <= letters) lines[lines.length - 1] = `${last} ${word}`
    else for (let i = 0; i < word.length; i += letters) lines.push(word.slice(i, i + letters))
  }
  if (lines.length <= most) return lines
  return [...lines.slice(0, most - 1), `${(lines[most - 1] ?? '').slice(0, letters - 3)}...`]
}
