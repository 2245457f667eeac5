import { allBands, betweenSourcesText, figure, percent, signed, tableToReach } from '#report/validation-reach.ts'
import { bandMet, type Check, type CheckSummary, errorMet, INSIDE_AIM, type ValidationRecord } from '#report/validation-record.ts'

const OPENING = `# Validation

Made by \`npm run validate\`; not edited by hand. Every published figure that the program can be held to stands beside what the
program says: mean absolute error, bias (program less published), the worst row by name, and the share of published figures inside
the band that the program gives (nine in ten are meant to be). Figures that a source printed and figures that somebody recalled are
kept apart ("read: memory"): the recalled ones carry an error of their own, about 2 HRC or 10 K.

The figures of every row are in [validation.json](validation.json). A release is refused when one of the errors rises by more than its
tolerance or a share leaves its bounds (\`test/validate/validate.test.ts\`). What the program itself has from memory is listed in
[from-memory.md](from-memory.md).
`

const REACH_HEAD = `| to be foretold | held to | error | aim | n | in the band | |
|---|---|---|---|---|---|---|`

function verdict(met: boolean): string {
  return met ? '**met**' : '**missed**'
}

function reachTable(record: ValidationRecord): string {
  const lines = tableToReach(record).map(({ wish, check, met, bandMet: band }) => {
    const { name, all, unit, aim } = check
    const inside = all.inside === undefined ? 'no band' : `${percent(all.inside)}${band === false ? ' (**missed**)' : ''}`
    const sample = check.inSample === true ? ', fitted to these' : ''
    return `| ${wish} | ${name}${check.committed ? '' : ' (checking only)'} | ${figure(all.meanAbsolute)} ${unit} | ${aim} | ${all.n} | ${inside} | ${verdict(met)}${sample} |`
  })
  const { n, inside } = allBands(record)
  const bandOk = inside >= INSIDE_AIM[0] && inside <= INSIDE_AIM[1]
  lines.push(
    `| Share of what is published inside the band | all of them together | ${percent(inside)} | 85 to 95 % | ${n} | | ${verdict(bandOk)} |`,
  )
  return `${REACH_HEAD}\n${lines.join('\n')}\n`
}

function missesOf({ checks }: ValidationRecord): string {
  const told = checks.flatMap(({ name, whyMissed, whyOutside }) => [
    ...(whyMissed === undefined ? [] : [`- **${name}**, error: ${whyMissed}`]),
    ...(whyOutside === undefined ? [] : [`- **${name}**, band: ${whyOutside}`]),
  ])
  return told.length === 0 ? 'Nothing is missed.\n' : `${told.join('\n')}\n`
}

const HEAD = '| | n | mean absolute error | bias | worst (published) | inside the band |\n|---|---|---|---|---|---|'

function tableRow({ name, n, meanAbsolute, bias, worst, inside }: CheckSummary, called = name): string {
  const cell = (words: string): string => words.replaceAll('|', '/')
  const furthest = worst === undefined ? '' : `${signed(worst.error)} (${cell(worst.label)}: ${figure(worst.published)})`
  return `| ${cell(called)} | ${n} | ${figure(meanAbsolute)} | ${signed(bias)} | ${furthest} | ${inside === undefined ? '' : percent(inside)} |`
}

/** One comparison as a section of the page: whether the aim is met, then the splits by kind of steel, by group and by how it was read. */
function section(check: Check): string {
  const { id, name, unit, aim, all, says, whyMissed, whyOutside, families, groups, provenances, fitted } = check
  const met = errorMet(check)
  const lines = [
    tableRow(all),
    ...(fitted === undefined ? [] : [tableRow(fitted, 'rows that it was fitted to')]),
    ...families.map((each) => tableRow(each)),
    ...groups.map((each) => tableRow(each)),
    ...provenances.map((each) => tableRow(each, `read: ${each.name}`)),
  ]
  const paragraphs = [
    `**${met ? 'Met' : 'Missed'}**: ${figure(all.meanAbsolute)} ${unit} against an aim of ${aim}${check.inSample === true ? ', **on rows that it was fitted to**' : ''}. ${says}`,
    whyMissed === undefined ? '' : `Why it is missed: ${whyMissed}`,
    bandMet(all) === false && whyOutside !== undefined ? `Why the band holds ${percent(all.inside ?? 0)}: ${whyOutside}` : '',
    betweenSourcesText(check) ?? '',
    check.committed ? `![${name}: published and forecast](pictures/validation/${id}.svg)` : '',
    `${HEAD}\n${lines.join('\n')}`,
    check.sources.length === 0 ? '' : `Sources: ${check.sources.join('; ')}.`,
  ]
  return `### ${name} (${unit})\n\n${paragraphs.filter((each) => each !== '').join('\n\n')}\n`
}

/** The whole page. */
export function page(record: ValidationRecord): string {
  const sections = (which: (check: Check) => boolean): string => record.checks.filter(which).map(section).join('\n')
  return `${OPENING}
## The table to reach

${reachTable(record)}
What is missed, and why:

${missesOf(record)}
## Held to figures kept in this tree

${sections(({ committed, arithmetic }) => committed && !arithmetic)}
## Held to its own formulas

These say that a formula or table is computed as it is printed; they say nothing of how right it is.

${sections(({ committed, arithmetic }) => committed && arithmetic)}
## Held to sets that are used for checking only

These sets may be used but not passed on: neither they nor single figures of them are in this tree, only these summaries.
\`npm run validate -- --data FOLDER\` reads them from a folder; without it this part stays as the last such run left it.

${sections(({ committed }) => !committed)}`
}
