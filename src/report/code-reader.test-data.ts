/**
 * Reads a QR code of versions 1 to 12 out of a grid of dark modules, byte mode only, by the standard (ISO/IEC 18004) and not by the library
 * that drew it. Nothing is corrected: every block must check to nought as it stands, or this throws.
 */
export function readCode(dark: readonly (readonly boolean[])[]): {
  readonly text: string
  readonly version: number
  readonly level: 'L' | 'M'
} {
  const size = dark.length
  const version = (size - 17) / 4
  const at = (x: number, y: number) => (dark[y]?.[x] === true ? 1 : 0)
  const { level, mask } = formatOf(at)
  const [check = 0, ...groups] = BLOCKS[level][version] ?? []
  const stream = codewords(size, version, mask, at)
  const lengths = groups.flatMap(([count, data]) => Array<number>(count).fill(data))
  const blocks = lengths.map((): number[] => [])
  let next = 0
  for (let i = 0; i < Math.max(...lengths); i++)
    for (const [b, length] of lengths.entries()) if (i < length) blocks[b]?.push(stream[next++] ?? 0)
  const data = blocks.flatMap((block) => [...block])
  for (let i = 0; i < check; i++) for (const block of blocks) block.push(stream[next++] ?? 0)
  for (const block of blocks) if (!checksOut(block, check)) throw new Error('a block does not check')
  return { text: textIn(data, version), version, level }
}

type At = (x: number, y: number) => number

/** Check words to a block, then so many blocks of so many data words. */
const BLOCKS: Readonly<Record<'L' | 'M', readonly (readonly [number, ...(readonly [number, number])[]] | undefined)[]>> = {
  L: [
    undefined,
    [7, [1, 19]],
    [10, [1, 34]],
    [15, [1, 55]],
    [20, [1, 80]],
    [26, [1, 108]],
    [18, [2, 68]],
    [20, [2, 78]],
    [24, [2, 97]],
    [30, [2, 116]],
    [18, [2, 68], [2, 69]],
    [20, [4, 81]],
    [24, [2, 92], [2, 93]],
  ],
  M: [
    undefined,
    [10, [1, 16]],
    [16, [1, 28]],
    [26, [1, 44]],
    [18, [2, 32]],
    [24, [2, 43]],
    [16, [4, 27]],
    [18, [4, 31]],
    [22, [2, 38], [2, 39]],
    [22, [3, 36], [2, 37]],
    [26, [4, 43], [1, 44]],
    [30, [1, 50], [4, 51]],
    [22, [6, 36], [2, 37]],
  ],
}
const ALIGNED: readonly (readonly number[])[] = [
  [],
  [],
  [6, 18],
  [6, 22],
  [6, 26],
  [6, 30],
  [6, 34],
  [6, 22, 38],
  [6, 24, 42],
  [6, 26, 46],
  [6, 28, 50],
  [6, 30, 54],
  [6, 32, 58],
]

function formatOf(at: At): { level: 'L' | 'M'; mask: number } {
  const places = [
    [8, 0],
    [8, 1],
    [8, 2],
    [8, 3],
    [8, 4],
    [8, 5],
    [8, 7],
    [8, 8],
    [7, 8],
    [5, 8],
    [4, 8],
    [3, 8],
    [2, 8],
    [1, 8],
    [0, 8],
  ]
  const bits = places.reduce((sum, [x = 0, y = 0], i) => sum | (at(x, y) << i), 0) ^ 0x5412
  const level = ({ 1: 'L', 0: 'M' } as const)[bits >> 13]
  if (level === undefined) throw new Error('neither L nor M')
  return { level, mask: (bits >> 10) & 7 }
}

const MASKS: readonly ((x: number, y: number) => boolean)[] = [
  (x, y) => (x + y) % 2 === 0,
  (_, y) => y % 2 === 0,
  (x) => x % 3 === 0,
  (x, y) => (x + y) % 3 === 0,
  (x, y) => (Math.floor(x / 3) + Math.floor(y / 2)) % 2 === 0,
  (x, y) => ((x * y) % 2) + ((x * y) % 3) === 0,
  (x, y) => (((x * y) % 2) + ((x * y) % 3)) % 2 === 0,
  (x, y) => (((x + y) % 2) + ((x * y) % 3)) % 2 === 0,
]

/** Up and down in pairs of columns from the right, past everything that is not data. */
function codewords(size: number, version: number, mask: number, at: At): number[] {
  const words: number[] = []
  let word = 0
  let bits = 0
  for (let right = size - 1, up = true; right > 0; right -= 2, up = !up) {
    if (right === 6) right--
    for (let k = 0; k < size; k++)
      for (const x of [right, right - 1]) {
        const y = up ? size - 1 - k : k
        if (isPattern(x, y, size, version)) continue
        word = (word << 1) | (at(x, y) ^ (MASKS[mask]?.(x, y) === true ? 1 : 0))
        if (++bits < 8) continue
        words.push(word)
        word = 0
        bits = 0
      }
  }
  return words
}

function isPattern(x: number, y: number, size: number, version: number): boolean {
  const corner = (x < 9 && y < 9) || (x >= size - 8 && y < 9) || (x < 9 && y >= size - 8)
  const versionWords = version >= 7 && ((x >= size - 11 && y < 6) || (y >= size - 11 && x < 6))
  const centres = ALIGNED[version] ?? []
  const last = size - 7
  const aligned = centres.some((cx) =>
    centres.some((cy) => {
      const inCorner = (cx === 6 && cy === 6) || (cx === 6 && cy === last) || (cx === last && cy === 6)
      return !inCorner && Math.abs(x - cx) <= 2 && Math.abs(y - cy) <= 2
    }),
  )
  return corner || versionWords || aligned || x === 6 || y === 6
}

/** All syndromes of Reed and Solomon over GF(256), modulus 0x11d, are nought. */
function checksOut(block: readonly number[], check: number): boolean {
  let root = 1
  for (let i = 0; i < check; i++) {
    if (block.reduce((sum, word) => times(sum, root) ^ word, 0) !== 0) return false
    root = times(root, 2)
  }
  return true
}

function times(a: number, b: number): number {
  let product = 0
  for (let i = 7; i >= 0; i--) {
    product = (product << 1) ^ ((product >> 7) * 0x11d)
    product ^= ((b >> i) & 1) * a
  }
  return product
}

function textIn(data: readonly number[], version: number): string {
  const bits = data.flatMap((word) => Array.from({ length: 8 }, (_, i) => (word >> (7 - i)) & 1))
  let next = 0
  const take = (count: number) => {
    next += count
    return bits.slice(next - count, next).reduce((sum, bit) => sum * 2 + bit, 0)
  }
  if (take(4) !== 4) throw new Error('not in bytes')
  const length = take(version < 10 ? 8 : 16)
  return new TextDecoder().decode(Uint8Array.from({ length }, () => take(8)))
}
