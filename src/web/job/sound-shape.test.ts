import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseJob } from '#contract/parse-job.ts'
import { InputProblems } from '#contract/problems.ts'
import { profileProblems } from '#engine/geometry/profile-problems.ts'
import type { System } from '#units/length.ts'
import { examplePieces } from '#web/bench/example-shop.ts'
import type { JobText } from './job-text.ts'
import { type Measure, metresAt, typedAt } from './measure.ts'
import { profileOf, shapeFaults } from './profile-reading.ts'
import { fractionM, steppedM } from './snapping.ts'
import { jointsOf, reached } from './sound-shape.ts'

const bored: JobText = {
  piece: 'bucking bar',
  steel: { grade: '1045' },
  profile: [
    {
      shape: 'round',
      from: '30 mm',
      to: '36 mm',
      length: '25 mm',
      dish: { across: '20 mm', depth: '5 mm' },
      bore: { across: '8 mm', depth: '20 mm' },
    },
    { shape: 'hexagon', across: '24 mm', length: '50 mm', fillet: '4 mm' },
    { shape: 'square', from: '24 mm', to: '12 mm', length: '30 mm', tip: { radius: '2 mm' } },
  ],
}
const pieces: readonly JobText[] = [...examplePieces, bored]

const anyMeasure: fc.Arbitrary<Measure> = fc.oneof(
  fc.record({ of: fc.constantFrom('across', 'width'), section: fc.nat(2), end: fc.constantFrom('from', 'to', 'both') }),
  fc.record({
    of: fc.constantFrom('length', 'fillet', 'tip', 'dish-across', 'dish-depth', 'bore-across', 'bore-depth'),
    section: fc.nat(2),
  }),
  fc.record({ of: fc.constantFrom('zone-from', 'zone-to'), zone: fc.nat(1) }),
) as fc.Arbitrary<Measure>
const anySystem = fc.constantFrom<System>('metric', 'inch')
const anyDrag = fc.tuple(anyMeasure, fc.double({ min: -0.05, max: 0.3, noNaN: true }), anySystem)

function inputProblems(job: JobText): readonly { readonly field: string; readonly says: string }[] {
  try {
    parseJob({ ...job, process: undefined, shop: undefined }, { process: 'absent-ok' })
    return []
  } catch (error) {
    if (error instanceof InputProblems) return error.problems
    throw error
  }
}

describe('dragging', () => {
  test('any drags on any piece leave a shape and zones that can be worked out', () => {
    fc.assert(
      fc.property(fc.constantFrom(...pieces), fc.array(anyDrag, { maxLength: 12 }), (start, drags) => {
        let job = start
        for (const [measure, wantedM, system] of drags) job = reached(job, measure, wantedM, system).job
        const profile = profileOf(job.profile ?? [])
        expect(profile).toBeDefined()
        if (profile !== undefined) expect(profileProblems(profile)).toEqual([])
        expect(inputProblems(job)).toEqual([])
        expect(job.zones?.length).toBe(start.zones?.length)
      }),
      { numRuns: 150 },
    )
  })

  test('what is reached lies on the fractions of the shop, or on a border that was there', () => {
    fc.assert(
      fc.property(fc.constantFrom(...pieces), anyDrag, (start, [measure, wantedM, system]) => {
        const { job } = reached(start, measure, wantedM, system)
        if (job === start || typedAt(job, measure) === typedAt(start, measure)) return
        const count = (metresAt(job, measure) ?? 0) / fractionM(system)
        const borders = [
          ...jointsOf(start),
          ...(start.zones ?? []).flatMap((_, zone) => [
            metresAt(start, { of: 'zone-from', zone }),
            metresAt(start, { of: 'zone-to', zone }),
          ]),
        ]
        const onBorder =
          'zone' in measure &&
          borders.some((each) => Math.abs((each ?? 0) - (metresAt(job, measure) ?? 1)) <= fractionM(system) + 1e-9)
        expect(onBorder || Math.abs(count - Math.round(count)) < 1e-6).toBe(true)
      }),
    )
  })

  test('a hand that goes too far is told why, and the metal stops at the last fraction that will do', () => {
    const dish = reached(bored, { of: 'dish-across', section: 0 }, 0.05, 'metric')
    expect(metresAt(dish.job, { of: 'dish-across', section: 0 })).toBeCloseTo(0.03, 9)
    expect(dish.blocked).toContain('wider than the end')
    const bore = reached(bored, { of: 'bore-depth', section: 0 }, 1, 'metric')
    expect(metresAt(bore.job, { of: 'bore-depth', section: 0 })).toBeCloseTo(0.1045, 9)
    expect(bore.blocked).toContain('goes through')
    const length = reached(bored, { of: 'length', section: 1 }, -1, 'metric')
    expect(metresAt(length.job, { of: 'length', section: 1 })).toBeGreaterThan(0)
  })

  test('a fillet is drawn out no further than there is room', () => {
    const { job, blocked } = reached(bored, { of: 'fillet', section: 1 }, 0.03, 'metric')
    expect(blocked).toContain('no room')
    expect(metresAt(job, { of: 'fillet', section: 1 })).toBeGreaterThan(0.004)
  })

  test('a shape that is at fault may still be mended by hand', () => {
    const broken: JobText = {
      ...bored,
      profile: bored.profile?.with(0, { ...bored.profile[0]!, dish: { across: '40 mm', depth: '5 mm' } }) ?? [],
    }
    expect(shapeFaults(broken.profile ?? [])).not.toEqual([])
    const { job } = reached(broken, { of: 'dish-across', section: 0 }, 0.02, 'metric')
    expect(shapeFaults(job.profile ?? [])).toEqual([])
  })

  test('ends of zones hold to the piece, to joints and to their neighbours', () => {
    const [, punch] = examplePieces as readonly [JobText, JobText, JobText]
    expect(typedAt(reached(punch, { of: 'zone-to', zone: 0 }, 0.0602, 'metric').job, { of: 'zone-to', zone: 0 })).toBe('60 mm')
    expect(typedAt(reached(punch, { of: 'zone-to', zone: 0 }, 0.5, 'metric').job, { of: 'zone-to', zone: 0 })).toBe('165 mm')
    expect(typedAt(reached(punch, { of: 'zone-to', zone: 1 }, 0.5, 'metric').job, { of: 'zone-to', zone: 1 })).toBe('182 mm')
    expect(metresAt(reached(punch, { of: 'zone-from', zone: 1 }, 0.5, 'inch').job, { of: 'zone-from', zone: 1 })).toBeLessThan(
      0.182,
    )
  })
})

describe('fractions', () => {
  test('a step first comes onto the fraction, then goes by it', () => {
    expect(steppedM(0.0222, 1, 'metric')).toBeCloseTo(0.0225, 12)
    expect(steppedM(0.0225, 1, 'metric')).toBeCloseTo(0.023, 12)
    expect(steppedM(0.0222, -1, 'metric')).toBeCloseTo(0.022, 12)
    expect(steppedM(0.0254, 10, 'inch')).toBeCloseTo(0.0254 * 1.625, 12)
    expect(steppedM(0.0004, -1, 'metric')).toBe(0)
  })
})
