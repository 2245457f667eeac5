import './treatment.css'
import { useRef } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { bodyOfText } from '#web/drawing/body.ts'
import { FindingsList } from '#web/findings/findings-list.tsx'
import { openTrial } from '#web/findings/trial.ts'
import { Propose } from '#web/routes/propose.tsx'
import { useSteelAsked } from '#web/steel/steel-asked.ts'
import { AddStep } from './add-step.tsx'
import { CostNote } from './cost-note.tsx'
import { stepsOf, withSteps } from './process-edits.ts'
import { type StepGround, startingTreatment } from './starting-steps.ts'
import { otherProblems } from './step-outlook.ts'
import { StepRow } from './step-row.tsx'

/** The treatment step by step, to change by hand; what a change comes to; what was found. */
export function TreatmentSide({ bench }: { readonly bench: Bench }) {
  const list = useRef<HTMLOListElement>(null)
  const job = bench.job.value
  const steel = useSteelAsked(bench, job.steel).value
  const steps = stepsOf(job)
  const selection = bench.selection.value
  const opened = selection?.kind === 'step' ? selection.index : undefined
  const focusStep = (index: number): void => {
    // The rows are drawn anew before the focus can go there.
    setTimeout(() => list.current?.querySelector<HTMLElement>(`[data-step="${index}"]`)?.focus(), 0)
  }
  const ground: StepGround = {
    steel: steel.kind === 'known' ? steel.steel : undefined,
    shop: bench.composed.value.shop ?? {},
    zones: job.zones ?? [],
    units: bench.device.units.value,
    thickMm: 2 * thickestMm(bench),
  }
  const problems = otherProblems(bench.outlook.problems.value)
  const writeOne = (): void => {
    bench.edit('write a treatment', (each) => withSteps(each, startingTreatment(ground)))
    bench.selection.value = { kind: 'step', index: 0 }
    focusStep(0)
  }
  return (
    <div class="treatment">
      {steps.length === 0 && (
        <div class="treatment-none">
          <h2>No treatment yet</h2>
          <p>
            Have routes proposed for this piece in this shop, each with its forecast; or begin with a heat, a bath and a temper
            for this steel and change them by hand.
          </p>
        </div>
      )}
      <Propose bench={bench} main={steps.length === 0} />
      {steps.length === 0 && (
        <button type="button" class="button treatment-write" onClick={writeOne}>
          Write one by hand
        </button>
      )}
      {problems.length > 0 && (
        <div class="notice">
          <p class="strong">The forecast waits until this can be read:</p>
          <ul class="plain">
            {problems.slice(0, 4).map(({ field, says }) => (
              <li key={field + says}>
                {field}: {says}
              </li>
            ))}
          </ul>
        </div>
      )}
      {steps.length > 0 && (
        <>
          <h2>Step by step</h2>
          {opened === undefined && openTrial(bench).value === undefined && <CostNote bench={bench} />}
          <ol class="step-list" ref={list}>
            {steps.map((step, index) => (
              <StepRow
                key={index}
                bench={bench}
                step={step}
                index={index}
                count={steps.length}
                open={index === opened}
                focusStep={focusStep}
              />
            ))}
          </ol>
          <AddStep bench={bench} ground={ground} focusStep={focusStep} />
          <FindingsList bench={bench} />
        </>
      )}
    </div>
  )
}

/** Half of the thickest place, a flat by its thickness [mm]. */
function thickestMm(bench: Bench): number {
  return Math.max(1, ...bodyOfText(bench.job.value).sections.flatMap(({ acrossMm }) => acrossMm)) / 2
}
