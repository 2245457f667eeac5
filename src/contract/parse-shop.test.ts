import { describe, expect, test } from 'vitest'
import { takeShop } from './parse-shop.ts'
import type { Problem } from './problems.ts'

function problemsOf(shop: unknown): Problem[] {
  const problems: Problem[] = []
  takeShop(shop, 'shop', problems)
  return problems
}

describe('testers and files of a shop', () => {
  test('are kept as typed', () => {
    const { typed } = takeShop(
      {
        testers: [{ name: 'bench tester', scale: 'HRC', block: '60 HRC', shows: '59 HRC' }],
        files: [{ name: 'green file', hardness: '55 HRC' }],
      },
      'shop',
      [],
    )
    expect(typed.testers[0]?.shows).toMatchObject({ typed: '59 HRC', value: 59, scale: 'HRC' })
    expect(typed.files[0]?.hardness.typed).toBe('55 HRC')
  })

  test('a fault names the field and the mend', () => {
    expect(problemsOf({ files: [{ name: 'green file', hardness: 55 }] })).toEqual([
      { field: 'shop.files[0].hardness', says: expect.stringContaining('55 HRC') },
    ])
    expect(problemsOf({ testers: [{ name: 'bench tester', scale: 'leeb' }] })[0]?.field).toBe('shop.testers[0].scale')
    expect(problemsOf({ file: [] })[0]?.says).toContain('files')
  })
})
