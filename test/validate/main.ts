import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { COMPARISONS } from './comparisons.ts'
import { useDataFolder } from './data.ts'
import { keptPart, page, section } from './report.ts'
import { summarise } from './summary.ts'

const PAGE = fileURLToPath(new URL('../../docs/validation.md', import.meta.url))

const { values } = parseArgs({ options: { data: { type: 'string' } } })
if (values.data !== undefined) useDataFolder(values.data)

const sections: { committed: string[]; checkingOnly: string[] } = { committed: [], checkingOnly: [] }
for (const comparison of COMPARISONS) {
  if (!comparison.committed && values.data === undefined) {
    console.log(`      -  ${comparison.name}: needs --data`)
    continue
  }
  const rows = comparison.rows()
  const { n, meanAbsolute, bias, insideBand } = summarise('all', rows)
  const verdict = meanAbsolute <= comparison.aim ? 'met   ' : 'missed'
  const inside = insideBand === undefined ? '' : `, ${Math.round(100 * insideBand)} % inside the band`
  console.log(
    `${verdict}  ${comparison.name}: ${meanAbsolute.toFixed(2)} of ${comparison.aim} ${comparison.unit}, bias ${bias.toFixed(2)}, n = ${n}${inside}`,
  )
  sections[comparison.committed ? 'committed' : 'checkingOnly'].push(section(comparison, rows))
}
const existing = existsSync(PAGE) ? readFileSync(PAGE, 'utf8') : ''
writeFileSync(PAGE, page(sections.committed, values.data === undefined ? keptPart(existing) : sections.checkingOnly.join('\n')))
console.log(`written: ${PAGE}`)
