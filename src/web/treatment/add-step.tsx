import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { addedStep, stepsOf } from './process-edits.ts'
import { soundPlace } from './sound-place.ts'
import { type StepGround, startingStep } from './starting-steps.ts'
import { STEP_KINDS, STEP_WORDS } from './step-fields.ts'

interface AddStepProps {
  readonly bench: Bench
  readonly ground: StepGround
  readonly focusStep: (index: number) => void
}

/** Puts a step in where it belongs, with figures of this steel to start from. */
export function AddStep({ bench, ground, focusStep }: AddStepProps) {
  const kind = useSignal<(typeof STEP_KINDS)[number]>('temper')
  const id = useId()
  return (
    <div class="add-step">
      <div class="field">
        <label class="name" for={id}>
          One more step
        </label>
        <select
          id={id}
          value={kind.value}
          onChange={(event) => {
            kind.value = STEP_KINDS.find((each) => each === event.currentTarget.value) ?? 'temper'
          }}
        >
          {STEP_KINDS.map((each) => (
            <option key={each} value={each} selected={each === kind.value}>
              {STEP_WORDS[each]}
            </option>
          ))}
        </select>
      </div>
      <button
        type="button"
        class="button"
        onClick={() => {
          const added = kind.value
          const at = soundPlace(stepsOf(bench.job.value), added)
          bench.edit(`add "${STEP_WORDS[added].toLowerCase()}"`, (job) => addedStep(job, startingStep(added, ground), at))
          bench.selection.value = { kind: 'step', index: at }
          focusStep(at)
        }}
      >
        Put it in
      </button>
    </div>
  )
}
