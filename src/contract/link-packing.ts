/** The few names of every runtime that packing needs; the contract is compiled without a browser's or Node's. */
declare const Blob: new (parts: Uint8Array[]) => { stream(): { pipeThrough(through: unknown): Bytes } }
declare const DecompressionStream: new (format: 'deflate-raw') => unknown

interface Bytes {
  getReader(): { read(): Promise<{ done: boolean; value?: Uint8Array }>; cancel(): Promise<void> }
}

/** What is unpacked comes to more than was allowed. */
export class TooMuchInside extends Error {
  override readonly name = 'TooMuchInside'
}

const SHORTEST = 3
const LONGEST = 258
const FARTHEST = 32_768
/** Places with the same three bytes looked at for the longest match. */
const TRIES = 96

/**
 * Bytes as one block of deflate (RFC 1951, fixed codes) that may refer back into `primer` as if it stood before them. The same bytes
 * in every runtime. For a page of text; the time grows with the length.
 */
export function packed(bytes: Uint8Array, primer: Uint8Array): Uint8Array {
  const all = new Uint8Array(primer.length + bytes.length)
  all.set(primer)
  all.set(bytes, primer.length)
  const { note, longestAt } = matcher(all)
  for (let at = 0; at < primer.length; at++) note(at)
  const out = bitWriter()
  out.low(1, 1) // the last block
  out.low(1, 2) // fixed codes
  for (let at = primer.length; at < all.length; ) {
    let match = longestAt(at)
    note(at)
    // A longer match one byte on is worth a byte by itself.
    if (match.length >= SHORTEST && match.length < LONGEST && longestAt(at + 1).length > match.length) match = NO_MATCH
    if (match.length < SHORTEST) {
      symbol(out, all[at] ?? 0)
      at++
      continue
    }
    lengthAndDistance(out, match)
    for (let i = at + 1; i < at + match.length; i++) note(i)
    at += match.length
  }
  symbol(out, 256)
  return out.bytes()
}

/** Whether this runtime has an inflater: every browser since 2023, Node since 18. */
export function canUnpack(): boolean {
  return typeof DecompressionStream !== 'undefined'
}

/** The bytes that `packed` was given. Throws `TooMuchInside` over `most` bytes, and any other error where they are no such block. */
export async function unpacked(block: Uint8Array, primer: Uint8Array, most: number): Promise<Uint8Array> {
  // The primer goes first as a stored block, so that the window of the runtime's own inflater holds it.
  const { length } = primer
  const stored = new Uint8Array([0, length & 255, length >> 8, ~length & 255, (~length >> 8) & 255])
  const reader = new Blob([stored, primer, block]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader()
  const parts: Uint8Array[] = []
  let total = 0
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    const part = next.value ?? new Uint8Array()
    total += part.length
    if (total > length + most) {
      await reader.cancel()
      throw new TooMuchInside(`more than ${most} bytes`)
    }
    parts.push(part)
  }
  const all = new Uint8Array(total)
  let at = 0
  for (const part of parts) {
    all.set(part, at)
    at += part.length
  }
  return all.subarray(length)
}

interface Match {
  readonly length: number
  readonly distance: number
}

const NO_MATCH: Match = { length: 0, distance: 0 }

/** Finds what stood before: `note` a place once it is behind, `longestAt` for the nearest of the longest matches. */
function matcher(all: Uint8Array) {
  const places = new Map<number, number[]>()
  const key = (at: number) => ((all[at] ?? 0) << 16) | ((all[at + 1] ?? 0) << 8) | (all[at + 2] ?? 0)
  return {
    note(at: number): void {
      if (at + SHORTEST > all.length) return
      const list = places.get(key(at))
      if (list === undefined) places.set(key(at), [at])
      else list.push(at)
    },
    longestAt(at: number): Match {
      if (at + SHORTEST > all.length) return NO_MATCH
      const list = places.get(key(at)) ?? []
      const room = Math.min(LONGEST, all.length - at)
      let best = NO_MATCH
      for (let i = list.length - 1; i >= 0 && i >= list.length - TRIES; i--) {
        const from = list[i] ?? 0
        if (at - from > FARTHEST) break
        let length = SHORTEST
        while (length < room && all[from + length] === all[at + length]) length++
        if (length > best.length) best = { length, distance: at - from }
      }
      return best
    },
  }
}

function bitWriter() {
  const written: number[] = []
  let waiting = 0
  let count = 0
  const bit = (value: number) => {
    waiting |= value << count
    if (++count < 8) return
    written.push(waiting)
    waiting = 0
    count = 0
  }
  return {
    /** Lowest bit first, as lengths, distances and headers go. */
    low(value: number, bits: number): void {
      for (let i = 0; i < bits; i++) bit((value >> i) & 1)
    },
    /** Highest bit first, as codes go. */
    high(value: number, bits: number): void {
      for (let i = bits - 1; i >= 0; i--) bit((value >> i) & 1)
    },
    bytes(): Uint8Array {
      return Uint8Array.from(count === 0 ? written : [...written, waiting])
    },
  }
}

type BitWriter = ReturnType<typeof bitWriter>

/** The fixed code of a byte, the end or a length (RFC 1951, 3.2.6). */
function symbol(out: BitWriter, value: number): void {
  if (value < 144) out.high(0x30 + value, 8)
  else if (value < 256) out.high(0x190 + value - 144, 9)
  else if (value < 280) out.high(value - 256, 7)
  else out.high(0xc0 + value - 280, 8)
}

const LENGTH_EXTRA = [...Array<number>(8).fill(0), 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0]
const LENGTH_FROM = [...startsOf(LENGTH_EXTRA.slice(0, 28), SHORTEST), LONGEST]
const DISTANCE_EXTRA = [0, 0, 0, 0, ...Array.from({ length: 26 }, (_, i) => 1 + (i >> 1))]
const DISTANCE_FROM = startsOf(DISTANCE_EXTRA, 1)

/** Where each code's range begins: the ranges follow each other without a gap. */
function startsOf(extra: readonly number[], first: number): number[] {
  let at = first
  return extra.map((bits) => {
    const start = at
    at += 1 << bits
    return start
  })
}

function lengthAndDistance(out: BitWriter, { length, distance }: Match): void {
  const lengthCode = LENGTH_FROM.findLastIndex((from) => from <= length)
  symbol(out, 257 + lengthCode)
  out.low(length - (LENGTH_FROM[lengthCode] ?? 0), LENGTH_EXTRA[lengthCode] ?? 0)
  const distanceCode = DISTANCE_FROM.findLastIndex((from) => from <= distance)
  out.high(distanceCode, 5)
  out.low(distance - (DISTANCE_FROM[distanceCode] ?? 0), DISTANCE_EXTRA[distanceCode] ?? 0)
}
