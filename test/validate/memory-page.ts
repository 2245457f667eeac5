import { join } from 'node:path'
import type { MemoryTable } from '#report/memory-list.ts'
import { memoryTables } from './memory-tables.ts'
import { ROOT } from './record.ts'

function cell(words: string): string {
  return words.replaceAll('|', '/').replaceAll('<', '&lt;')
}

function section({ name, replacedBy, figures }: MemoryTable): string {
  const lines = figures.map(
    ({ what, value, unit, file, constant, from }) =>
      `| ${cell(what)} | ${cell(value)} | ${cell(unit)} | ${cell(from)} | \`${file}\`${constant === undefined ? '' : ` \`${constant}\``} |`,
  )
  return `## ${name} (${figures.length})

What would replace them: ${replacedBy}

| what | value | unit | remembered from | used in |
|---|---|---|---|---|
${lines.join('\n')}
`
}

function page(tables: readonly MemoryTable[]): string {
  const all = tables.reduce((sum, { figures }) => sum + figures.length, 0)
  return `# Figures from memory

Made by \`npm run validate\`; not edited by hand. Every figure of the program that somebody recalled from a named publication without
checking it there, or that rests on common practice alone: ${all} of them, so that they can be replaced one by one. Tables are read from
their own data; the rest from the comments and sources in the code that own to it, so a figure that does not say where it is from is not
here. Names of steels in other countries' systems are left out. How well forecasts do that rest on all this: [validation.md](validation.md).

${tables.map(section).join('\n')}`
}

/** The list as a page, and as the bench shows it. */
export function filesOfMemory(): ReadonlyMap<string, string> {
  const tables = memoryTables()
  return new Map([
    [join(ROOT, 'docs', 'from-memory.md'), page(tables)],
    [join(ROOT, 'src', 'web', 'proof', 'memory.json'), `${JSON.stringify(tables)}\n`],
  ])
}
