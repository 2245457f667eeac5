/**
 * Holds the program to everything that is published and at hand, and writes down how it came out:
 *
 *   npm run validate
 *   npm run validate -- --data FOLDER    and the sets that are used for checking only
 *
 * What moved against the last record is printed as CHANGELOG takes it.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { parseArgs } from 'node:util'
import { bandMet, errorMet } from '#report/validation-record.ts'
import { COMPARISONS } from './comparisons.ts'
import { useDataFolder } from './data.ts'
import { filesOf, PICTURES } from './made.ts'
import { filesOfMemory } from './memory-page.ts'
import { ROOT, recordAsKept, recordNow } from './record.ts'
import { moved, worse } from './regression.ts'

const { values } = parseArgs({ options: { data: { type: 'string' } } })
if (values.data !== undefined) useDataFolder(values.data)

const before = recordAsKept()
const now = recordNow(COMPARISONS, before, values.data !== undefined)
for (const check of now.checks) {
  const { name, unit, aim, all } = check
  const inside =
    all.inside === undefined ? '' : `, ${Math.round(100 * all.inside)} % inside the band${bandMet(all) ? '' : ' (missed)'}`
  console.log(
    `${errorMet(check) ? 'met   ' : 'missed'}  ${name}: ${all.meanAbsolute.toFixed(2)} of ${aim} ${unit}, bias ${all.bias.toFixed(2)}, n = ${all.n}${inside}`,
  )
}
for (const { name, committed } of COMPARISONS)
  if (!committed && values.data === undefined) console.log(`as it was  ${name}: needs --data`)

const lines = moved(before, now)
console.log(lines.length === 0 ? '\nNothing moved.' : `\nFor CHANGELOG.md, under "Numbers that moved":\n\n${lines.join('\n')}`)
if (before !== undefined) for (const told of worse(before, now)) console.log(`\nWORSE: ${told}`)

const files = new Map([...filesOf(now), ...filesOfMemory()])
mkdirSync(PICTURES, { recursive: true })
for (const name of readdirSync(PICTURES)) if (!files.has(join(PICTURES, name))) rmSync(join(PICTURES, name))
for (const [path, text] of files) {
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, text)
}
console.log(
  `\nwritten: ${[...files.keys()]
    .map((path) => relative(ROOT, path))
    .filter((path) => !path.endsWith('.svg'))
    .join(', ')} and the pictures`,
)
