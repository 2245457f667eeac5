import { describe, expect, test } from 'vitest'
import { InputProblems } from './problems.ts'
import { readJobText } from './read-job.ts'

function says(text: string, name = 'punch.yaml'): string {
  try {
    return `read: ${JSON.stringify(readJobText(text, name))}`
  } catch (error) {
    if (error instanceof InputProblems) return error.message
    throw error
  }
}

test('YAML and JSON hold the same', () => {
  const yaml =
    'piece: slot punch # free name\nsteel: { grade: S7 }\nprofile:\n  - { shape: round, across: 1/4" , length: 1\' 6" }\n'
  const held = { piece: 'slot punch', steel: { grade: 'S7' }, profile: [{ shape: 'round', across: '1/4"', length: `1' 6"` }] }
  expect(readJobText(yaml, 'a.yaml')).toEqual(held)
  expect(readJobText(JSON.stringify(held, undefined, '\t'), 'a.json')).toEqual(held)
  expect(readJobText(`\uFEFF${yaml.replaceAll('\n', '\r\n')}`, 'a.yaml')).toEqual(held)
})

test('a grade of digits keeps them all, and yes and no stay words', () => {
  expect(readJobText('steel: { grade: 1.2510 }\nstruck: no\nlength: 1:20', 'a')).toEqual({
    steel: { grade: '1.2510' },
    struck: 'no',
    length: '1:20',
  })
  expect(readJobText('steel: { grade: 1045 }', 'a')).toEqual({ steel: { grade: '1045' } })
})

describe('what is no job is refused in plain words', () => {
  test.each([
    ['', 'punch.yaml is empty'],
    ['  \n\n', 'is empty'],
    ['# nothing yet\n', 'only comments'],
    ['just words', 'only words'],
    ['- a\n- b\n', 'a list'],
    ['42', 'only words'],
    ['piece: a\npiece: b\n', 'line 2, column 1: a field stands here for the second time'],
    ['piece: a\n\tsteel: b\n', 'a tab'],
    ['shop: { fires: [ }', 'line 1'],
    ['piece: "open', 'line 1'],
    ['piece: a\n---\npiece: b\n', 'a second job begins here'],
    ['piece: *nowhere', 'stands for nothing'],
    ['piece: !!js/function "x"', 'tag with !'],
    ['piece: !secret x', 'tag with !'],
    ['piece: a: b', 'two fields stand on one line'],
    ['\u0000\u0001\u0002', 'not a text file'],
    ['{ "piece": "a", "piece": "b" }', 'second time'],
    [`${'x'.repeat(2_000_001)}`, 'million letters'],
    ['['.repeat(500_000), 'deeper than any job'],
    [`"]]]]": ${'{a: '.repeat(20_000)}`, 'deeper than any job'],
    [`piece:\n${Array.from({ length: 900 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')}`, 'deeper than any job'],
    [Array.from({ length: 100_000 }, (_, i) => `a${i}: 1`).join('\n'), 'more fields and words than any job'],
    ['- '.repeat(100_000), 'deeper than any job'],
    [`${'? '.repeat(100_000)}a`, 'deeper than any job'],
    [`- a\n${' '.repeat(200)}\n${' '.repeat(200)}# far right\n`, 'a list'],
  ])('%#', (text, why) => {
    expect(says(text)).toContain(why)
    expect(says(text).length).toBeLessThan(300)
  })

  test('marks that multiply are stopped early', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]']
    for (let i = 1; i < 12; i++)
      lines.push(
        `a${i}: &a${i} [${Array(10)
          .fill(`*a${i - 1}`)
          .join(', ')}]`,
      )
    expect(says(lines.join('\n'))).toContain('repeated too often')
  })
})
