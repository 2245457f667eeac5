import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { firstLoadScripts } from '../../scripts/first-load.mjs'
import { PAGE } from './built-page.ts'

const ROOT = join(import.meta.dirname, '..', '..')

interface Measured {
  readonly name: string
  readonly passed: boolean
  readonly size: number
}

describe('what is fetched before the page answers', () => {
  test('stays under 200 kB', () => {
    const run = spawnSync(process.execPath, [join(ROOT, 'node_modules', 'size-limit', 'bin.js'), '--json'], {
      cwd: ROOT,
      encoding: 'utf8',
    })
    const measured = JSON.parse(run.stdout) as Measured[]
    for (const { name, size } of measured) console.log(`${name}: ${(size / 1000).toFixed(1)} kB`)
    expect(measured.map(({ name, passed }) => [name, passed])).toEqual(measured.map(({ name }) => [name, true]))
    expect(measured[0]!.size).toBeGreaterThan(50_000)
  })

  test('has the page and the engine in it, and neither a YAML reader nor the planner nor JSON Schema', () => {
    const scripts = firstLoadScripts(PAGE).map((path) => readFileSync(path, 'utf8'))
    expect(scripts.length).toBeGreaterThanOrEqual(2)
    const all = scripts.join('\n')
    const held = (words: readonly string[]) => words.filter((each) => all.includes(each))
    expect(held(['Undo', 'outline: it encloses no metal'])).toHaveLength(2)
    expect(held(['BLOCK_LITERAL', 'block-map', 'draft-2020-12', 'unevaluatedProperties'])).toEqual([])
  })
})
