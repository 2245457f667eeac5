import fc from 'fast-check'
import { expect, test } from 'vitest'
import { applyEdits, type JobEdit, NoSuchPlace } from './job-edits.ts'

const job = {
  piece: 'slot punch',
  profile: [
    { shape: 'round', across: '22 mm', length: '60 mm' },
    { shape: 'round', across: '30 mm', length: '40 mm' },
  ],
  process: [
    { do: 'heat', in: 'coal fire', to: '845 °C' },
    { do: 'quench', in: 'oil drum', depth: '35 mm' },
  ],
}

test('writes, removes, inserts and replaces, each in what the one before left', () => {
  const after = applyEdits(job, [
    { path: ['process', 1, 'depth'], value: '60 mm' },
    { path: ['process', 0, 'part', 'to'], value: '80 mm' },
    { path: ['process', 2], insert: { do: 'temper', at: '205 °C' } },
    { path: ['process', 2, 'times'], value: 2 },
    { path: ['profile', 0] },
    { path: ['piece'], value: undefined },
  ])
  expect(after).toEqual({
    profile: [job.profile[1]],
    process: [
      { do: 'heat', in: 'coal fire', to: '845 °C', part: { to: '80 mm' } },
      { do: 'quench', in: 'oil drum', depth: '60 mm' },
      { do: 'temper', at: '205 °C', times: 2 },
    ],
  })
  expect(after).not.toHaveProperty('piece')
})

test('a key that is written anew keeps its place, a list that is not there yet is made', () => {
  const after = applyEdits(job, [
    { path: ['profile'], value: [] },
    { path: ['zones', 0], insert: { from: '0 mm' } },
  ]) as object
  expect(Object.keys(after)).toEqual(['piece', 'profile', 'process', 'zones'])
  expect(after).toHaveProperty('zones', [{ from: '0 mm' }])
})

test('what no path touches is shared, and no change at all gives the same document', () => {
  const after = applyEdits(job, [{ path: ['process', 1, 'depth'], value: '60 mm' }]) as typeof job
  expect(after.profile).toBe(job.profile)
  expect(after.process[0]).toBe(job.process[0])
  expect(after.process[1]).not.toBe(job.process[1])
  expect(applyEdits(job, [{ path: ['process', 1, 'depth'], value: '35 mm' }])).toBe(job)
  expect(applyEdits(job, [{ path: ['struck'] }])).toBe(job)
  expect(applyEdits(job, [])).toBe(job)
})

test.each<[string, JobEdit]>([
  ['process.7.depth: the list has 2 items', { path: ['process', 7, 'depth'], value: '1 mm' }],
  ['process.2: the list has 2 items', { path: ['process', 2] }],
  ['process.-1: the list has 2 items', { path: ['process', -1], insert: {} }],
  ['piece.0: no list stands there', { path: ['piece', 0], value: 'x' }],
  ['process.depth: no group of fields stands there', { path: ['process', 'depth'], value: 'x' }],
  ['piece: only a list takes something in between', { path: ['piece'], insert: 'x' }],
])('says %s', (says, edit) => {
  expect(() => applyEdits(job, [edit])).toThrow(NoSuchPlace)
  expect(() => applyEdits(job, [edit])).toThrow(says)
})

/** Documents of groups and lists, with a path that leads to somewhere in them. */
const documents = fc.letrec<{ any: unknown; group: unknown; list: unknown }>((tie) => ({
  any: fc.oneof({ maxDepth: 4 }, fc.string(), fc.integer(), fc.boolean(), tie('group'), tie('list')),
  group: fc.dictionary(fc.string({ minLength: 1, maxLength: 3 }), tie('any'), { maxKeys: 4 }),
  list: fc.array(tie('any'), { maxLength: 4 }),
}))

test('never changes what it is given, and taking an insert out again gives back the same content', () => {
  fc.assert(
    fc.property(documents.group, fc.array(documents.any, { maxLength: 4 }), fc.nat(3), documents.any, (group, list, at, item) => {
      const document = { ...(group as object), list }
      const before = structuredClone(document)
      const place = Math.min(at, list.length)
      const grown = applyEdits(document, [{ path: ['list', place], insert: item }])
      expect(document).toEqual(before)
      expect(applyEdits(grown, [{ path: ['list', place] }])).toEqual(before)
      const written = applyEdits(document, [{ path: ['deep', 'er', 'still'], value: item }])
      expect(applyEdits(written, [{ path: ['deep'] }])).toEqual(
        Object.fromEntries(Object.entries(before).filter(([key]) => key !== 'deep')),
      )
      expect(document).toEqual(before)
    }),
  )
})
