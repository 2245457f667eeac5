import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { outlineOf, volumeM3Of } from '#engine/geometry/outline.ts'
import { profileProblems } from '#engine/geometry/profile-problems.ts'
import { examplePieces } from '#web/bench/example-shop.ts'
import type { JobText, ShapeText } from './job-text.ts'
import {
  addedSection,
  type Feature,
  movedSection,
  reshaped,
  splitSection,
  tapered,
  withFeature,
  withoutSection,
} from './profile-edits.ts'
import { metres, profileOf } from './profile-reading.ts'
import { jointsOf } from './sound-shape.ts'

const [bottomTool, punch, chisel] = examplePieces as readonly [JobText, JobText, JobText]

const anyEdit = fc.oneof(
  fc.tuple(fc.constantFrom('above', 'below', 'split', 'delete', 'up', 'down'), fc.nat(5)),
  fc.tuple(fc.constantFrom('round', 'square', 'hexagon', 'octagon', 'flat'), fc.nat(5)),
  fc.tuple(fc.constantFrom('even', 'taper', 'dish', 'bore', 'tip', 'no dish', 'no bore'), fc.nat(5)),
)

function edited(job: JobText, [what, index]: readonly [string, number]): JobText {
  const i = index % (job.profile?.length ?? 1)
  switch (what) {
    case 'above':
    case 'below':
      return addedSection(job, i, what, 'metric')
    case 'split':
      return splitSection(job, i, 'inch')
    case 'delete':
      return withoutSection(job, i)
    case 'up':
    case 'down':
      return movedSection(job, i, what)
    case 'even':
    case 'taper':
      return tapered(job, i, what === 'taper', 'metric')
    case 'dish':
    case 'bore':
    case 'tip': {
      const ends = i === 0 || i === (job.profile?.length ?? 0) - 1
      return ends ? withFeature(job, i, what as Feature, true, 'metric') : job
    }
    case 'no dish':
    case 'no bore':
      return withFeature(job, i, what.slice(3) as Feature, false, 'metric')
    default:
      return reshaped(job, i, what as ShapeText, 'metric')
  }
}

describe('sections', () => {
  test('add, split, delete, move and reshape in any order leave a shape that can be worked out, and zones on the piece', () => {
    fc.assert(
      fc.property(fc.constantFrom(bottomTool, punch, chisel), fc.array(anyEdit, { maxLength: 10 }), (start, edits) => {
        let job = start
        for (const edit of edits) {
          const before = profileOf(job.profile ?? [])
          job = edited(job, edit)
          const after = profileOf(job.profile ?? [])
          expect(after, JSON.stringify(edit)).toBeDefined()
          // Making it even, or of another shape, can swallow a dish or a rounding: that is said and left to the smith.
          if (!['above', 'below', 'split', 'delete', 'up', 'down', 'dish', 'bore', 'tip'].includes(edit[0])) continue
          if (before !== undefined && after !== undefined && profileProblems(before).length === 0)
            expect(profileProblems(after), JSON.stringify([job.profile, edit])).toEqual([])
        }
        const totalM = jointsOf(job).at(-1) ?? 0
        for (const { from, to } of job.zones ?? []) {
          expect(metres(from)).toBeLessThan(metres(to) ?? 0)
          expect(metres(to)).toBeLessThanOrEqual(totalM + 1e-9)
        }
      }),
      { numRuns: 150 },
    )
  })

  test('two halves of a section are the same metal', () => {
    const volume = (job: JobText): number => volumeM3Of(outlineOf(profileOf(job.profile ?? [])!))
    const split = splitSection(bottomTool, 1, 'inch')
    expect(split.profile).toHaveLength(3)
    expect(volume(split) / volume(bottomTool)).toBeCloseTo(1, 9)
    expect(split.profile?.[1]).toMatchObject({ across: '3/4 in', length: '1-3/16 in', fillet: '6 mm' })
    expect(split.profile?.[2]).not.toHaveProperty('fillet')
    expect(splitSection(punch, 0, 'metric').profile?.[1]).toMatchObject({ from: '12 x 19 mm', to: '19 x 22 mm' })
  })

  test('a dish stays in the working end, whatever hangs above it', () => {
    const turned = movedSection(bottomTool, 0, 'up')
    expect(turned.profile?.[0]).toMatchObject({ across: '3/4 in', dish: { across: '17 mm', depth: '6 mm' } })
    expect(turned.profile?.[1]).not.toHaveProperty('dish')
    expect(addedSection(bottomTool, 0, 'below', 'metric').profile?.[0]).toMatchObject({
      dish: { across: '17 mm' },
      length: '25 mm',
    })
  })

  test('a new section is as thick as what it meets and pushes the zones above it up', () => {
    const next = addedSection(punch, 1, 'above', 'metric')
    expect(next.profile?.[2]).toEqual({ shape: 'round', across: '22 mm', length: '25 mm' })
    expect(next.zones?.[1]).toMatchObject({ from: '165 mm', to: '207 mm' })
    expect(next.zones?.[0]).toBe(punch.zones?.[0])
  })

  test('without a section, its zone goes and the others come down', () => {
    const next = withoutSection(punch, 0)
    expect(next.zones).toEqual([{ name: 'struck end', from: '105 mm', to: '122 mm', aim: 'at most 40 HRC' }])
    expect(withoutSection({ profile: [punch.profile![1]!] }, 0).profile).toHaveLength(1)
  })

  test('a zone that lies on one section goes with it', () => {
    const next = movedSection(chisel, 0, 'up')
    expect(next.zones?.[0]).toMatchObject({ from: '125 mm', to: '145 mm' })
    expect(movedSection(next, 1, 'down').zones).toEqual(chisel.zones)
  })

  test('a point runs on into what is added to it', () => {
    const point: JobText = { profile: [{ shape: 'round', from: '0 mm', to: '20 mm', length: '40 mm' }] }
    expect(addedSection(point, 0, 'below', 'metric').profile).toEqual([
      { shape: 'round', from: '0 mm', to: '10 mm', length: '25 mm' },
      { shape: 'round', from: '10 mm', to: '20 mm', length: '40 mm' },
    ])
  })

  test('round to flat and back keeps the thickness', () => {
    const flat = reshaped(punch, 1, 'flat', 'metric')
    expect(flat.profile?.[1]?.across).toBe('22 x 33 mm')
    expect(reshaped(flat, 1, 'square', 'metric').profile?.[1]?.across).toBe('22 mm')
  })
})
