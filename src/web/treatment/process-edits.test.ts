import { describe, expect, test } from 'vitest'
import type { JobText } from '#web/job/job-text.ts'
import {
  addedStep,
  changedStep,
  fieldOf,
  movedStep,
  stepsOf,
  withField,
  withoutStep,
  withSteps,
  wordsOf,
} from './process-edits.ts'

const job: JobText = {
  piece: 'drift',
  process: [
    { do: 'heat', in: 'gas forge', to: '945 °C', part: { from: '0 mm', to: '100 mm' } },
    { do: 'quench', in: 'oil drum', depth: '35 mm' },
    { do: 'temper', in: 'small oven', at: '215 °C', times: 2 },
  ],
}

describe('fields of a step', () => {
  const heat = stepsOf(job)[0] ?? { do: '' }

  test('are read as they were typed, groups too', () => {
    expect(fieldOf(heat, 'part.to')).toBe('100 mm')
    expect(wordsOf({ do: 'temper', times: 2 }, 'times')).toBe('2')
    expect(wordsOf({ do: 'heat', even: false }, 'even')).toBe('no')
    expect(wordsOf(heat, 'hold')).toBe('')
  })

  test('are written in their place, and the others stay the same', () => {
    const hotter = withField(heat, 'to', '950 °C')
    expect(Object.keys(hotter)).toEqual(Object.keys(heat))
    expect(hotter).toEqual({ ...heat, to: '950 °C' })
    expect(withField(heat, 'part.to', '90 mm').part).toEqual({ from: '0 mm', to: '90 mm' })
    expect(withField({ do: 'heat' }, 'part.from', '0 mm')).toEqual({ do: 'heat', part: { from: '0 mm' } })
  })

  test('are left out when nothing is written, and an empty group goes with its last field', () => {
    expect(withField(heat, 'to', '')).toEqual({ do: 'heat', in: 'gas forge', part: heat.part })
    expect(withField(withField(heat, 'part.from', undefined), 'part.to', undefined)).toEqual({
      do: 'heat',
      in: 'gas forge',
      to: '945 °C',
    })
    expect(withField(heat, 'part', undefined)).not.toHaveProperty('part')
  })
})

describe('steps of a job', () => {
  const order = (each: JobText): string[] => stepsOf(each).map((step) => step.do)

  test('are added, taken up and down, taken out; the document that was is untouched', () => {
    const before = structuredClone(job)
    expect(order(addedStep(job, { do: 'carry', for: '3 s' }, 1))).toEqual(['heat', 'carry', 'quench', 'temper'])
    expect(order(addedStep(job, { do: 'temper' }, 3)).at(-1)).toBe('temper')
    expect(order(movedStep(job, 2, 0))).toEqual(['temper', 'heat', 'quench'])
    expect(order(movedStep(job, 0, 1))).toEqual(['quench', 'heat', 'temper'])
    expect(order(withoutStep(job, 1))).toEqual(['heat', 'temper'])
    expect(changedStep(job, 1, (step) => withField(step, 'depth', '60 mm')).process?.[1]).toEqual({
      do: 'quench',
      in: 'oil drum',
      depth: '60 mm',
    })
    expect(job).toEqual(before)
  })

  test('what changes nothing gives the same document, so that there is nothing to undo', () => {
    expect(movedStep(job, 0, -1)).toBe(job)
    expect(movedStep(job, 2, 3)).toBe(job)
    expect(withoutStep(job, 7)).toBe(job)
    expect(changedStep(job, 1, (step) => step)).toBe(job)
  })

  test('the last step taken out leaves no treatment, not an empty one', () => {
    expect(withSteps(job, [])).toEqual({ piece: 'drift' })
    expect(withoutStep({ process: [{ do: 'heat' }] }, 0)).toEqual({})
  })
})
