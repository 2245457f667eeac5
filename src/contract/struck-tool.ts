const STRUCK = [
  'chisel',
  'punch',
  'drift',
  'set',
  'sett',
  'fuller',
  'flatter',
  'swage',
  'butcher',
  'stamp',
  'snap',
  'slitter',
  'cape',
]
const NOT_STRUCK = ['bottom', 'hardy', 'hardie', 'tongs', 'spring', 'knife', 'hammer', 'anvil']

/** The word in a piece's name that says it is struck with a hammer at its other end; undefined when it is not, or nothing says so. */
export function struckWord(piece: string): string | undefined {
  const words = piece
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '')
  // A set hammer is a top tool and is struck; every other hammer strikes.
  if (words.some((word, i) => word === 'set' && words[i + 1] === 'hammer')) return 'set hammer'
  if (words.some((word) => NOT_STRUCK.includes(word) || NOT_STRUCK.includes(word.replace(/s$/u, '')))) return undefined
  return words.find((word) => STRUCK.includes(word) || STRUCK.includes(word.replace(/(?:es|s)$/u, '')))
}
