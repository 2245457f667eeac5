/** Longest word that is compared; a longer one is no slip of the pen. */
const LONGEST = 60

/** The known word that `word` most likely stands for: equal but for case, begun the same, or a slip or two away; else undefined. */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  const asked = plain(word)
  if (asked === '' || asked.length > LONGEST) return undefined
  let best: string | undefined
  let bestSlips = Number.POSITIVE_INFINITY
  for (const each of known) {
    const candidate = plain(each)
    if (candidate === asked) return each
    const within = asked.length >= 3 && candidate.length >= 3 && (candidate.startsWith(asked) || asked.startsWith(candidate))
    const slips = within ? 1.5 : slipsBetween(asked, candidate)
    if (slips < bestSlips) {
      best = each
      bestSlips = slips
    }
  }
  return bestSlips <= Math.max(2, Math.ceil(asked.length / 3)) && bestSlips < asked.length ? best : undefined
}

/** ` Did you mean "length"?`, or the known words when none is near. */
export function meant(word: string, known: readonly string[]): string {
  const near = nearestWord(word, known)
  if (near !== undefined) return `did you mean "${near}"?`
  if (known.length === 0) return 'leave it out'
  const some = known.slice(0, 12)
  return `known here: ${some.join(', ')}${known.length > some.length ? ', ...' : ''}`
}

function plain(word: string): string {
  return word
    .toLowerCase()
    .replace(/[\s_-]+/gu, ' ')
    .trim()
}

/** Letters to put in, leave out, change, or swap with their neighbour. */
function slipsBetween(a: string, b: string): number {
  if (b.length > LONGEST) return Number.POSITIVE_INFINITY
  let beforeLast: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let slips = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) slips = Math.min(slips, (beforeLast[j - 2] ?? 0) + 1)
      row.push(slips)
    }
    beforeLast = last
    last = row
  }
  return last[b.length] ?? 0
}
