import { expect, test } from 'vitest'
import { fileNameOf } from './file-name.ts'

test.each([
  ['hot slot punch', 'hot-slot-punch.yaml'],
  ['Döpper, 3/4"', 'döpper-3-4.yaml'],
  ['  ../../etc/passwd ', 'etc-passwd.yaml'],
  ['', 'piece.yaml'],
  [undefined, 'piece.yaml'],
  ['???', 'piece.yaml'],
  ['CON', 'piece-con.yaml'],
  ['a'.repeat(200), `${'a'.repeat(80)}.yaml`],
])('%s', (piece, name) => {
  expect(fileNameOf(piece)).toBe(name)
})
