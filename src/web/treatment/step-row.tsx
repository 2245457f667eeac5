import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import { findingsOfStep, type PlacedFinding } from '#web/findings/finding-places.ts'
import type { StepText } from '#web/job/job-text.ts'
import { SeverityMark } from '#web/look/severity-mark.tsx'
import { Fold } from '#web/outcome/fold.tsx'
import { readColours } from './colour-reading.ts'
import { ColourWindow } from './colour-window.tsx'
import { CostNote } from './cost-note.tsx'
import { movedStep, stepsOf, withoutStep } from './process-edits.ts'
import { fieldsOf, stepWord } from './step-fields.ts'
import { StepForm } from './step-form.tsx'
import { answeredIndex, clockSays, stepProblems } from './step-outlook.ts'
import { stepSummary } from './step-summary.ts'
import { stepTold } from './step-told.ts'

interface StepRowProps {
  readonly bench: Bench
  readonly step: StepText
  readonly index: number
  readonly count: number
  readonly open: boolean
  readonly focusStep: (index: number) => void
}

/** One step of the treatment: in one line, and opened with its fields, what the forecast says of it and what to take care of. */
export function StepRow({ bench, step, index, count, open, focusStep }: StepRowProps) {
  const answered = bench.outlook.answered.value
  const known = answeredIndex(stepsOf(answered?.job ?? {}), stepsOf(bench.job.value), index)
  const told = known === undefined ? undefined : answered?.forecast.steps[known]
  const found = answered === undefined || known === undefined ? [] : findingsOfStep(answered.forecast, known)
  const shown = fieldsOf(step).flatMap(({ as, path }) => (as === 'part' ? ['part', 'part.from', 'part.to'] : [path]))
  const { ofField, ofStep } = stepProblems(bench.outlook.problems.value, index, shown)
  const word = stepWord(step)
  const select = (): void => {
    bench.selection.value = open ? undefined : { kind: 'step', index }
    bench.instantS.value = open ? Number.POSITIVE_INFINITY : (told?.end_s ?? Number.POSITIVE_INFINITY)
  }
  const move = (to: number): void => {
    bench.edit(`move "${word.toLowerCase()}"`, (job) => movedStep(job, index, to))
    bench.selection.value = { kind: 'step', index: to }
    focusStep(to)
  }
  return (
    <li class="step-row" data-open={open} data-fault={ofField.size + ofStep.length > 0}>
      <button type="button" class="step-touch" data-step={index} aria-expanded={open} onClick={select}>
        <span class="step-number">{index + 1}</span>
        <span class="step-words">
          <strong>{word}</strong> {stepSummary(step)}
          {told !== undefined && <span class="soft step-clock"> {clockSays(told)}</span>}
        </span>
        <span class="step-marks">
          {found.map(({ finding, index: number }) => (
            <SeverityMark key={number} severity={finding.severity} />
          ))}
        </span>
      </button>
      {ofStep.map((says) => (
        <p class="step-problem" key={says}>
          {says}
        </p>
      ))}
      {!open && ofField.size > 0 && <p class="step-problem">{[...ofField.values()][0]}</p>}
      {open && (
        <div class="step-open">
          <StepForm bench={bench} step={step} index={index} problems={ofField} />
          <CostNote bench={bench} />
          {told !== undefined && <StepSays told={told} units={bench.device.units.value} />}
          {found.length > 0 && <StepFound bench={bench} found={found} />}
          {told !== undefined && told.cautions.length > 0 && (
            <details class="step-cautions">
              <summary>Take care ({told.cautions.length})</summary>
              <ul>
                {told.cautions.map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ul>
            </details>
          )}
          <div class="step-tools">
            <button type="button" class="button quiet" disabled={index === 0} onClick={() => move(index - 1)}>
              Earlier
            </button>
            <button type="button" class="button quiet" disabled={index === count - 1} onClick={() => move(index + 1)}>
              Later
            </button>
            <button
              type="button"
              class="button quiet"
              onClick={() => {
                bench.edit(`take out "${word.toLowerCase()}"`, (job) => withoutStep(job, index))
                bench.selection.value = undefined
                focusStep(Math.min(index, count - 2))
              }}
            >
              Take out
            </button>
          </div>
        </div>
      )}
    </li>
  )
}

/** What the forecast says of a step; the seconds of colours that run as a picture, grain and carbide a tap away. */
function StepSays({ told, units }: { readonly told: Forecast['steps'][number]; readonly units: System }) {
  const { says, grain } = stepTold(told.says)
  const colours = readColours(told.colours, units)
  return (
    <>
      {colours !== undefined && <ColourWindow reading={colours} />}
      <p class="step-says">{says}</p>
      {grain !== undefined && (
        <Fold short={grain.short}>
          <p>{grain.says}</p>
        </Fold>
      )}
    </>
  )
}

/** What was found at a step, one line each; touching one opens it on the drawing. */
function StepFound({ bench, found }: { readonly bench: Bench; readonly found: readonly PlacedFinding[] }) {
  return (
    <ul class="step-found">
      {found.map(({ finding, index }) => (
        <li key={index}>
          <button
            type="button"
            class="finding-touch"
            onClick={() => {
              bench.selection.value = { kind: 'finding', index }
            }}
          >
            <SeverityMark severity={finding.severity} />
            <span>{finding.says}</span>
          </button>
        </li>
      ))}
    </ul>
  )
}
