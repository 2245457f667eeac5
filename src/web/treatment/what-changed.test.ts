import { expect, test } from 'vitest'
import type { JobText } from '#web/job/job-text.ts'
import { changedStep, movedStep, withField, withoutStep } from './process-edits.ts'
import { whatChanged } from './what-changed.ts'

const job: JobText = {
  steel: { grade: 'W1' },
  process: [
    { do: 'heat', in: 'gas forge', to: '785 °C', part: { from: '0 mm', to: '100 mm' } },
    { do: 'quench', in: 'slack tub', depth: '35 mm' },
    { do: 'temper', in: 'small oven', at: '220 °C' },
  ],
}

test.each([
  [changedStep(job, 1, (step) => withField(step, 'depth', '60 mm')), ['Quench, how deep: 60 mm instead of 35 mm']],
  [changedStep(job, 0, (step) => withField(step, 'part.to', '90 mm')), ['Heat: 0 mm to 90 mm instead of 0 mm to 100 mm']],
  [changedStep(job, 0, (step) => withField(step, 'part', undefined)), ['Heat: all of it instead of 0 mm to 100 mm']],
  [changedStep(job, 2, (step) => withField(step, 'times', 2)), ['Temper, how often: 2']],
  [changedStep(job, 1, (step) => withField(step, 'depth', '')), ['Quench, how deep: 35 mm left out']],
  [movedStep(job, 2, 0), ['the order of the steps']],
  [withoutStep(job, 2), ['without "temper"']],
  [{ ...job, steel: { grade: 'O1' } }, ['the steel']],
  [{ ...job, process: [{ do: 'normalise' }, { do: 'run-colours' }] }, ['the whole treatment']],
  [structuredClone(job), []],
] as const)('in words %#', (after, says) => {
  expect(whatChanged(job, after)).toEqual(says)
})
