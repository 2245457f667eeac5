import pc from 'picocolors'

/** What the place that is written to can show. */
export interface Terminal {
  readonly columns: number
  readonly unicode: boolean
  strong(text: string): string
  soft(text: string): string
}

/** Narrower than this nothing can be set; wider than this nobody likes to read. */
const LEAST_COLUMNS = 44
const MOST_COLUMNS = 100

interface Stream {
  readonly isTTY?: boolean
  readonly columns?: number
}

/** Colour only for a person at a terminal who has not refused it; plain letters where the language settings allow no more. */
export function terminalOf(stream: Stream, env: Readonly<Record<string, string | undefined>>): Terminal {
  const asked = stream.columns ?? Number(env.COLUMNS)
  const columns = Number.isFinite(asked) && asked > 0 ? Math.max(LEAST_COLUMNS, Math.min(MOST_COLUMNS, asked)) : 80
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG
  const colours = pc.createColors(stream.isTTY === true && !env.NO_COLOR && env.TERM !== 'dumb')
  return {
    columns,
    unicode: env.QW_ASCII !== '1' && (locale === undefined || locale === '' || /utf-?8/iu.test(locale)),
    strong: (text) => colours.bold(text),
    soft: (text) => colours.dim(text),
  }
}

const PLAIN: Readonly<Record<string, string>> = {
  '│': '|',
  '┊': ':',
  '─': '-',
  '┌': '+',
  '┐': '+',
  '└': '+',
  '┘': '+',
  '├': '|',
  '┤': '|',
  '┬': '+',
  '┴': '+',
  '╱': '/',
  '╲': '\\',
  '░': '.',
  '▒': ':',
  '▓': '#',
  '●': 'o',
  '○': 'c',
  '■': '#',
  '□': '-',
  '≈': '~',
  '▽': 'v',
  '→': '->',
  '°': 'deg',
  '·': '-',
  '–': '-',
  '—': '-',
  '⌀': 'dia',
  '×': 'x',
  '±': '+/-',
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  '…': '...',
  '½': '1/2',
}

/** Text for a terminal: no control character of a file's reaches it, and plain letters only where that is all it shows. */
export function shownOn({ unicode }: Terminal, text: string): string {
  return unicode
    ? text
    : text.replace(/\P{ASCII}/gu, (letter) => PLAIN[letter] ?? (letter.normalize('NFKD').replace(/\P{ASCII}/gu, '') || '?'))
}

/** Words set within `columns` behind `lead`; further lines hang below the first word. */
export function set(text: string, columns: number, lead = ''): string {
  const lines: string[] = []
  let current = ''
  for (const word of clean(text).split(' ')) {
    const next = current === '' ? word : `${current} ${word}`
    if (current !== '' && lead.length + next.length > columns) {
      lines.push(current)
      current = word
    } else current = next
  }
  return [...lines, current].map((line, i) => (i === 0 ? lead : ' '.repeat(lead.length)) + line).join('\n')
}

/** What a file says, on one line and without anything that could steer a terminal. */
export function clean(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cf}]/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim()
}

/** Rows under their heads; the last column runs over as many lines as it needs, and where there is no room each cell has a line. */
export function table(heads: readonly string[], rows: readonly (readonly string[])[], terminal: Terminal): string {
  const { columns, soft } = terminal
  const all = [heads, ...rows].map((row) => row.map((cell) => shownOn(terminal, clean(cell))))
  const last = heads.length - 1
  const widths = heads.map((_, c) => Math.max(...all.map((row) => (row[c] ?? '').length)))
  const before = widths.slice(0, last).reduce((sum, width) => sum + width + 2, 0)
  if (before + Math.min(16, widths[last] ?? 0) > columns) return stacked(all, terminal)
  const room = Math.max(16, columns - before)
  return all
    .map((row, r) => {
      const [first = '', ...more] = set(row[last] ?? '', room).split('\n')
      const start = widths
        .slice(0, last)
        .map((width, c) => (row[c] ?? '').padEnd(width + 2))
        .join('')
      const written = [`${start}${first}`.trimEnd(), ...more.map((each) => ' '.repeat(before) + each)].join('\n')
      return r === 0 ? soft(written) : written
    })
    .join('\n')
}

/** A table for a narrow place: the first cell of a row by itself, the others below it behind their heads. */
function stacked([heads = [], ...rows]: readonly (readonly string[])[], { columns }: Terminal): string {
  return rows
    .map(([first = '', ...cells]) =>
      [first, ...cells.map((cell, c) => set(cell, columns, `  ${heads[c + 1] ?? ''}: `))].join('\n'),
    )
    .join('\n')
}
