import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const root = join(import.meta.dirname, '..')
const rules = [...readFileSync(join(root, 'docs/model.md'), 'utf8').matchAll(/^- \*\*\[([A-Z]{2}\d+)\]/gmu)].map(([, id]) => id)
const tests = ['src', 'test'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join(folder, name)),
)
const titled = tests.flatMap((file) =>
  [...readFileSync(join(root, file), 'utf8').matchAll(/['`]\[([A-Z]{2}\d+)\] /gu)].map(([, id]) => ({ file, id })),
)

test('every rule of the model has a number of its own', () => {
  expect(rules.length).toBeGreaterThan(50)
  expect(rules.filter((id, i) => rules.indexOf(id) !== i)).toEqual([])
})

test('a test that names a rule names one that stands in docs/model.md', () => {
  expect(titled.length).toBeGreaterThan(40)
  expect(titled.filter(({ id }) => !rules.includes(id))).toEqual([])
})
