import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import type { MemoryFigure } from '#report/memory-list.ts'

const SAYS_SO = /\bmemory\b|\bcommon practice\b|\brecalled\b/iu
/** Words of code that speak of the kind of source itself. */
const OF_THE_KIND = /'memory'|=== 'memory'|startsWith\('memory'\)|MEMORY/u

/** Source files of a folder, tests and made-up test data left out. */
export function sourceFiles(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !/\.test(?:-data)?\.ts$/u.test(name))
    .map((name) => join(folder, name))
    .toSorted()
}

/**
 * Figures of a source file that its comments, or the sources that it names in words, own to be from memory or common practice: the name
 * declared below the comment (or round the words), what it is set to as far as that fits a line, its unit in square brackets, and the
 * sentence that says so.
 */
export function scanForMemory(file: string, code: string): MemoryFigure[] {
  const found = [...comments(code), ...sourcesInWords(code)].map(({ words, at, below }) => {
    const declared = below ? declarationFrom(code, at) : declarationAround(code, at)
    const said = sentence(words)
    return {
      what: meaning(words) || declared.name || said,
      value: declared.value,
      unit: /\[([A-Za-z%][^\][]{0,24})\]/u.exec(words)?.[1] ?? '',
      file,
      ...(declared.name === '' ? {} : { constant: declared.name }),
      from: shortened(said, meaning(words)),
      at,
    }
  })
  const seen = new Set<string>()
  return found
    .filter(({ from }) => !OF_ORDER.test(from))
    .toSorted((a, b) => a.at - b.at)
    .flatMap(({ at: _, ...figure }) => {
      const key = `${figure.what} ${figure.constant ?? ''} ${figure.from}`
      if (seen.has(key)) return []
      seen.add(key)
      return [figure]
    })
}

interface Said {
  readonly words: string
  readonly at: number
  /** What it speaks of comes after it. */
  readonly below: boolean
}

function comments(code: string): Said[] {
  const blocks = [...code.matchAll(/\/\*\*?([\s\S]*?)\*\/|(?:^[ \t]*\/\/.*\n)+|[ \t]\/\/[^\n]*/gmu)]
  return blocks.flatMap((match): Said[] => {
    const words = match[0]
      .replaceAll(/^\s*(?:\/\*\*?|\*\/|\*|\/\/)|\*\/$|^[ \t]*\/\//gmu, ' ')
      .replaceAll(/\s+/gu, ' ')
      .trim()
    return SAYS_SO.test(words) ? [{ words, at: match.index + match[0].length, below: true }] : []
  })
}

/** `source: 'furnace texts (memory)'` and the like, which stand inside what they speak of. */
function sourcesInWords(code: string): Said[] {
  return [...code.matchAll(/(['"`])((?:(?!\1)[^\\\n]|\\.)*)\1/gu)].flatMap((match): Said[] => {
    const words = match[2] ?? ''
    if (!SAYS_SO.test(words) || /^memory$/u.test(words) || words.startsWith('#') || words.startsWith('./')) return []
    const line = code.slice(code.lastIndexOf('\n', match.index) + 1, match.index)
    if (words.includes('${') || /^\s*(?:\*|\/\/|\/\*)/u.test(line) || OF_THE_KIND.test(line)) return []
    return [{ words, at: match.index, below: false }]
  })
}

/** Words on the order of sources, which are no figure. */
const OF_ORDER = /before memory|own from memory|figure from memory|only memory of/u

const DECLARED =
  /^\s*(?:(?:export )?(?:const|let|function|interface|type) ([A-Za-z_$][\w$]*)|(?:readonly )?['"]?([A-Za-z_$][\w$-]*)['"]?\??:)/u

/** What is declared after `at`, as long as nothing but white space and attributes stands between. */
function declarationFrom(code: string, at: number): { name: string; value: string } {
  const rest = code.slice(at, at + 400)
  const match = DECLARED.exec(rest)
  const name = match?.[1] ?? match?.[2] ?? ''
  // What stands over a whole file is not the figure below it.
  if (match === null || name.startsWith('ZERO_')) return { name: '', value: '' }
  return { name, value: setTo(rest.trimStart()) }
}

/** The last thing declared at the left margin before `at`. */
function declarationAround(code: string, at: number): { name: string; value: string } {
  const before = [...code.slice(0, at).matchAll(/^(?:export )?(?:const|function) ([A-Za-z_$][\w$]*)/gmu)].at(-1)
  return before === undefined ? { name: '', value: '' } : { name: before[1] ?? '', value: setTo(code.slice(before.index)) }
}

/** The figure itself where it fits the line. */
function setTo(declaration: string): string {
  const [line = ''] = declaration.split('\n')
  if (line.startsWith('function') || line.startsWith('export function')) return 'in its code'
  const value = /(?:=|:) ([^=].*?),?$/u
    .exec(line.replace(/^((?:export )?const \w+)(?:: [^=]+)? =/u, '$1 ='))?.[1]
    ?.replace(/ as const$/u, '')
  if (value === undefined || (/^(?:\{|\[|\(|.*[[({]$)/u.test(value) && !/[\])}]$/u.test(value))) return 'a table'
  return value.length > 60 || !/\d/u.test(value) ? 'in its code' : value
}

/** An initial ends no sentence. */
const SENTENCES = /(?<=[\da-z)\]%"'][.!?]) (?=[A-Z])/u

/** The sentence, or the part of one between semicolons, that owns to it. */
function sentence(words: string): string {
  const parts = words.split(SENTENCES)
  const own = parts.filter((part) => SAYS_SO.test(part)).join(' ')
  if (/\bcommon practice, no source\b/iu.test(own)) return 'common practice, no source'
  return own.length > 220 ? `${own.slice(0, 217)}...` : own
}

/** What is said of the source, without saying again what the figure is. */
function shortened(said: string, means: string): string {
  if (means === '' || !said.startsWith(means.slice(0, 20))) return said.replace(/\.$/u, '')
  return (/(?:from )?\b(?:memory|recalled)\b(?:[^.;)]|\.(?=\S))*/iu.exec(said)?.[0] ?? said).replace(/\.$/u, '')
}

/** What the comment says the figure is: its first sentence without unit and without the words on its source. */
function meaning(words: string): string {
  const [first = ''] = words.split(SENTENCES)
  const plain = first
    .replaceAll(/\s*\[[^\]]*\]/gu, '')
    .replaceAll(/[;:,]?\s*\(?(?:from )?(?:common practice,? no source|common practice|memory)(?:[^);.]|\.(?=\S))*\)?/giu, '')
    .replace(/[.:;, ]+$/u, '')
    .trim()
  return plain.length > 160 ? `${plain.slice(0, 157)}...` : plain
}
