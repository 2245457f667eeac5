import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { profileProblems } from '#engine/geometry/profile-problems.ts'
import { examplePieces } from '#web/bench/example-shop.ts'
import type { JobText } from '#web/job/job-text.ts'
import { typedAt } from '#web/job/measure.ts'
import { profileOf } from '#web/job/profile-reading.ts'
import { bodyOfText } from './body.ts'
import { advance, type Gesture, type GestureEvent, heldJob, IDLE } from './gesture.ts'
import { handlesOf } from './handles.ts'

const [bottomTool, punch] = examplePieces as readonly [JobText, JobText, JobText]

function gripOf(job: JobText, key: string) {
  const found = handlesOf(job, bodyOfText(job), []).find((each) => each.key === key)
  if (found === undefined) throw new Error(`no handle ${key}`)
  return found
}

/** The events one after the other, and the document that the page then holds. */
function played(job: JobText, events: readonly GestureEvent[]): { state: Gesture; job: JobText } {
  let state = IDLE
  let now = job
  for (const event of events) {
    const next = advance(state, event)
    now = heldJob(state, event, next) ?? now
    state = next
  }
  return { state, job: now }
}

const at = (xMm: number, rMm: number) => ({ xMm, rMm })
const moved = (xMm: number, rMm: number): GestureEvent => ({ kind: 'moved', at: at(xMm, rMm), slackMm: 0.5, system: 'metric' })

describe('taking hold', () => {
  const across = { of: 'across', section: 1, end: 'both' } as const
  const grip = gripOf(punch, 'across 1 both')
  const pressed: GestureEvent = { kind: 'pressed', grip, job: punch, at: at(115, 11) }

  test('a hand that goes out by 2 mm makes it 4 mm thicker, on the fraction', () => {
    const { job, state } = played(punch, [pressed, moved(115, 13.1)])
    expect(state.kind).toBe('dragging')
    expect(typedAt(job, across)).toBe('26 mm')
  })

  test('a tap moves nothing', () => {
    const { job, state } = played(punch, [pressed, moved(115.3, 11.2), { kind: 'released' }])
    expect(job).toBe(punch)
    expect(state).toBe(IDLE)
  })

  test('a move along the metal does not count for what goes across it', () => {
    expect(played(punch, [pressed, moved(150, 11.1)]).state.kind).toBe('pressed')
  })

  test('what was let go stays, what was escaped is as it was', () => {
    expect(typedAt(played(punch, [pressed, moved(115, 12), { kind: 'released' }]).job, across)).toBe('24 mm')
    expect(played(punch, [pressed, moved(115, 12), { kind: 'escaped' }]).job).toBe(punch)
    expect(played(punch, [moved(115, 12), { kind: 'escaped' }]).job).toBe(punch)
  })

  test('back where it began, it is the same document', () => {
    expect(played(punch, [pressed, moved(115, 30), moved(115, 11)]).job).toBe(punch)
  })

  test('while one hand holds it, another cannot take it', () => {
    const other: GestureEvent = { ...pressed, grip: gripOf(punch, 'length 0') }
    const { state } = played(punch, [pressed, other])
    expect(state.kind === 'pressed' && state.grip.key).toBe('across 1 both')
  })

  test('the width of a flat follows the hand on its left side', () => {
    const width = gripOf(punch, 'width 0 to')
    const { job } = played(punch, [{ kind: 'pressed', grip: width, job: punch, at: at(50, -11) }, moved(50, -12)])
    expect(typedAt(job, width.measure)).toBe('24 mm')
  })

  test('a depth from the working end grows upward, and it is said what stops it', () => {
    const depth = gripOf(bottomTool, 'dish-depth 0')
    const { state, job } = played(bottomTool, [{ kind: 'pressed', grip: depth, job: bottomTool, at: at(6, 0) }, moved(60, 0)])
    expect(typedAt(job, depth.measure)).toBe('8.5 mm')
    expect(state.kind === 'dragging' && state.blocked).toContain('half of its width')
  })
})

test('whatever a hand does on any handle, the metal stays sound', () => {
  const anyMove = fc.tuple(fc.double({ min: -300, max: 300, noNaN: true }), fc.double({ min: -80, max: 80, noNaN: true }))
  fc.assert(
    fc.property(
      fc.constantFrom(...examplePieces),
      fc.array(fc.tuple(fc.nat(60), anyMove, anyMove), { maxLength: 5 }),
      (start, drags) => {
        let job = start
        for (const [which, first, second] of drags) {
          const handles = handlesOf(job, bodyOfText(job), [])
          const grip = handles[which % handles.length]
          if (grip === undefined) return
          const from = at(grip.xMm, grip.rMm)
          job = played(job, [
            { kind: 'pressed', grip, job, at: from },
            moved(...first),
            moved(...second),
            { kind: 'released' },
          ]).job
          const profile = profileOf(job.profile ?? [])
          expect(profile && profileProblems(profile)).toEqual([])
        }
      },
    ),
    { numRuns: 100 },
  )
})
