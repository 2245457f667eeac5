import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { outlineOf, totalLengthM } from '#engine/geometry/outline.ts'
import { profileProblems } from '#engine/geometry/profile-problems.ts'
import { lengthText, parseLength, type System } from '#units/length.ts'
import { parseJob } from './parse-job.ts'
import { InputProblems } from './problems.ts'
import { type StartingPiece, startingPieces } from './starting-pieces.ts'

const UNITS: readonly System[] = ['metric', 'inch']
const all = UNITS.flatMap((units) => startingPieces(units).map((piece) => ({ units, kind: piece.kind, piece })))
const metres = (text: string): number => {
  const length = parseLength(text)
  if (!length.ok) throw new Error(length.says)
  return length.value.lengthM
}
const read = (document: unknown) => parseJob(document, { process: 'absent-ok' }).job

/** Any sizes within what each may be, typed in either unit. */
function anySizes({ sizes }: StartingPiece): fc.Arbitrary<Record<string, string>> {
  return fc.record(
    Object.fromEntries(
      sizes.map(({ key, least, most }) => [
        key,
        fc.tuple(fc.integer({ min: 0, max: 1000 }), fc.constantFrom<System>(...UNITS)).map(([share, units]) => {
          const m = metres(least) + (share / 1000) * (metres(most) - metres(least))
          const typed = lengthText(Math.round(m * 1e4) / 1e4, units)
          return metres(typed) < metres(least) ? least : metres(typed) > metres(most) ? most : typed
        }),
      ]),
    ),
  )
}

describe.each(all)('$kind, $units', ({ piece, units }) => {
  test('is a sound job as it stands, hardened at one end and soft where it is struck', () => {
    const { job } = piece
    const { profile, zones, struck, steel } = read(job())
    expect(profileProblems(profile)).toEqual([])
    expect(outlineOf(profile).pieces.length).toBeGreaterThan(2)
    expect(piece.grades).toContain(steel.gradeId)
    expect(zones.some(({ name }) => name === 'struck end')).toBe(struck)
    expect(Math.max(...zones.map(({ aim }) => aim.lowHrc ?? 0))).toBeGreaterThanOrEqual(35)
    expect(job().profile.map(({ shape }) => shape).length).toBeGreaterThan(0)
    expect(piece.says).toMatch(/no source/u)
    if (units === 'inch') expect(JSON.stringify(job())).not.toMatch(/\d mm/u)
  })

  test('each of its steels can be had', () => {
    for (const grade of piece.grades) expect(read({ ...piece.job(), steel: { grade } }).steel.gradeId).toBe(grade)
  })

  test('holds for other sizes, or says which size does not go with the others', () => {
    let sound = 0
    fc.assert(
      fc.property(anySizes(piece), (sizes) => {
        let document: unknown
        try {
          document = piece.job(sizes)
        } catch (error) {
          expect(error).toBeInstanceOf(InputProblems)
          for (const { field } of (error as InputProblems).problems)
            expect(piece.sizes.map(({ key }) => `sizes.${key}`)).toContain(field)
          return
        }
        const { profile, zones } = read(document)
        expect(totalLengthM(profile)).toBeGreaterThan(0.014)
        expect(Math.max(...zones.map(({ toM }) => toM))).toBeLessThanOrEqual(totalLengthM(profile) * (1 + 1e-9))
        sound++
      }),
      { numRuns: 60 },
    )
    expect(sound).toBeGreaterThan(5)
  })

  test('each size moves something, and a fifth more or less is taken', () => {
    for (const { key, default: usual } of piece.sizes)
      for (const share of [0.8, 1.2]) {
        const document = piece.job({ [key]: lengthText(metres(usual) * share, units) })
        expect(document.profile, key).not.toEqual(piece.job().profile)
        expect(() => read(document)).not.toThrow()
      }
  })
})

test('a size that cannot be, or that it has not, is named with the mend', () => {
  const [chisel] = startingPieces('metric')
  const said = (sizes: Record<string, string>): readonly string[] => {
    try {
      chisel?.job(sizes)
      return []
    } catch (error) {
      return (error as InputProblems).problems.map(({ field, says }) => `${field}: ${says}`)
    }
  }
  expect(said({ bar: '19' })).toEqual([expect.stringMatching(/^sizes\.bar: .*unit/u)])
  expect(said({ bar: '2 m', girth: '3 mm' })).toEqual([
    'sizes.girth: not one of its sizes; these are bar, length, width, edge, blade',
    'sizes.bar: 2 m: write 8 mm to 40 mm',
  ])
  expect(said({ length: '110 mm', blade: '90 mm' })).toEqual([
    'sizes.length: 110 mm: too short for that blade and something to hold; make it longer, or the blade shorter',
  ])
  expect(said({ blade: '60 mm' })).toEqual([])
})

test('what was typed stays as typed', () => {
  const hammer = startingPieces('metric').find(({ kind }) => kind === 'hand hammer')
  expect(hammer?.job({ side: '1-3/4 in' }).profile[1]?.across).toBe('1-3/4 in')
})

test('the kinds are all there, once each', () => {
  const kinds = startingPieces('metric').map(({ kind }) => kind)
  expect(new Set(kinds).size).toBe(kinds.length)
  expect(kinds).toEqual(
    expect.arrayContaining([
      'cold chisel',
      'hot chisel',
      'cape chisel',
      'slot punch',
      'butcher',
      'top fuller',
      'centre punch',
      'drift pin',
      'eye drift',
      'rivet set',
      'hot-cut hardy',
      'bottom tool',
      'heading tool',
      'hand hammer',
      'flat spring',
      'screwdriver',
    ]),
  )
})
