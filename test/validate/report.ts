import type { ComparedRow, Comparison } from './comparison.ts'
import { error, type Summary, summarise, summariseBy } from './summary.ts'

function figure(value: number): string {
  return Math.abs(value) >= 100 ? value.toFixed(0) : value.toFixed(1)
}

function signed(value: number): string {
  const rounded = figure(value)
  return value >= 0 && !rounded.startsWith('-') ? `+${rounded}` : rounded
}

function tableRow(summary: Summary): string {
  const { group, n, meanAbsolute, bias, worst, insideBand } = summary
  const inside = insideBand === undefined ? '' : `${Math.round(100 * insideBand)} %`
  const name = group.replaceAll('|', '/')
  const worstName = worst.label.replaceAll('|', '/')
  return `| ${name} | ${n} | ${figure(meanAbsolute)} | ${signed(bias)} | ${signed(error(worst))} (${worstName}: ${figure(worst.published)}) | ${inside} |`
}

const HEAD = '| | n | mean absolute error | bias | worst (published) | inside the band |\n|---|---|---|---|---|---|'

/** One comparison as a section of the page: whether the aim is met, then the split by group and by how the figures were read. */
export function section(comparison: Comparison, rows: readonly ComparedRow[]): string {
  const all = summarise('all', rows)
  const met = all.meanAbsolute <= comparison.aim
  const verdict = met
    ? `**Met**: ${figure(all.meanAbsolute)} ${comparison.unit} against an aim of ${comparison.aim}.`
    : `**Missed**: ${figure(all.meanAbsolute)} ${comparison.unit} against an aim of ${comparison.aim}.`
  const groups = summariseBy(rows, (row) => row.group)
  const provenances = summariseBy(rows, (row) => row.provenance)
  const lines = [tableRow(all), ...(groups.length > 1 ? groups.map(tableRow) : [])]
  if (provenances.length > 1)
    lines.push(...provenances.map((summary) => tableRow({ ...summary, group: `read: ${summary.group}` })))
  return `### ${comparison.name} (${comparison.unit})\n\n${verdict} ${comparison.says}\n\n${HEAD}\n${lines.join('\n')}\n`
}

const KEPT_FROM = '<!-- checking-only: begin -->'
const KEPT_TO = '<!-- checking-only: end -->'

const OPENING = `# Validation

Made by \`npm run validate\`; not edited by hand. Every published figure that the program can be held to stands beside what the
program says: mean absolute error, bias (program minus published), the worst row by name, and the share of published figures inside
the band that the program gives (nine in ten are meant to be). Figures that a source printed and figures that somebody recalled are
kept apart ("read: memory"): the recalled ones carry an error of their own, about 2 HRC or 10 K.
`

/** The whole page. `checkingOnly` is the part that was made with --data, or that part of the page as it was. */
export function page(committed: readonly string[], checkingOnly: string): string {
  return `${OPENING}
## Held to figures kept in this tree

${committed.join('\n')}
## Held to sets that are used for checking only

These sets may be used but not passed on, so they are not in this tree: \`npm run validate -- --data FOLDER\` reads them from a folder.
Without it this part of the page stays as the last such run left it.

${KEPT_FROM}
${checkingOnly.trim()}
${KEPT_TO}
`
}

/** The checking-only part of an existing page; empty when it has none. */
export function keptPart(existing: string): string {
  const from = existing.indexOf(KEPT_FROM)
  const to = existing.indexOf(KEPT_TO)
  return from < 0 || to < from ? '' : existing.slice(from + KEPT_FROM.length, to)
}
