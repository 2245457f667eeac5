import { STRUCTURES, type Structure } from '#contract/picture-fields.ts'

/** How a structure is drawn: a grey of its own, and lines of its own over it, so that it is told without colour. */
export interface StructureLook {
  readonly word: string
  readonly ground: string
  readonly line: string
  /** True where a pixel lies on a line of the hatching; x and y in px of the page. */
  readonly onLine: (x: number, y: number) => boolean
}

const LINE_PX = 1.25

function every(px: number, at: number): boolean {
  return ((at % px) + px) % px < LINE_PX
}

const LOOKS: { readonly [Of in Structure]: StructureLook } = {
  'as before the heat': { word: 'as it was', ground: '#f6efdd', line: '#f6efdd', onLine: () => false },
  'part-way heated': {
    word: 'part-way heated',
    ground: '#ece3c9',
    line: '#8a7c5a',
    onLine: (x, y) => every(8, x + (Math.floor(y / 5) % 2) * 4) && every(5, y),
  },
  'soft after heating': { word: 'soft', ground: '#dcd3b8', line: '#7d7253', onLine: (_, y) => every(7, y) },
  'part hardened': { word: 'part hardened', ground: '#a3aaa6', line: '#f3efe2', onLine: (x, y) => every(9, x + y) },
  hardened: {
    word: 'hardened',
    ground: '#4e6070',
    line: '#8294a3',
    onLine: (x, y) => every(11, (x + y) * 0.9) || every(11, (x - y) * 0.9),
  },
}

export function lookOf(structure: number): StructureLook {
  return LOOKS[STRUCTURES[structure] ?? 'as before the heat']
}

/** Those that are in a piece, in the order from never touched to hardened through. */
export function structuresIn(structure: Uint8Array): number[] {
  return [...new Set(structure)].toSorted((a, b) => a - b)
}
