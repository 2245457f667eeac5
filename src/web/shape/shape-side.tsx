import './shape-side.css'
import { useSignal } from '@preact/signals'
import { later } from '#web/app/later.tsx'
import type { Bench } from '#web/bench/bench.ts'
import { addedSection } from '#web/job/profile-edits.ts'
import { SectionList } from './section-list.tsx'
import { withShapeOf } from './starting-choice.ts'
import { StruckQuestion } from './struck-question.tsx'
import { ZoneList } from './zone-list.tsx'

const StartingSheet = later(async () => (await import('./starting-sheet.tsx')).StartingSheet, 'out-of-sight')

/** The shape in figures: everything that can be dragged on the drawing, and what cannot. */
export function ShapeSide({ bench }: { readonly bench: Bench }) {
  const starting = useSignal(false)
  const empty = (bench.job.value.profile ?? []).length === 0
  return (
    <div class="shape-side">
      <WholeProblems bench={bench} />
      <div class="shape-head">
        <h2>Sections</h2>
        <button
          type="button"
          class="button"
          onClick={() => {
            starting.value = true
          }}
        >
          Start from another shape
        </button>
      </div>
      {starting.value && (
        <StartingSheet
          bench={bench}
          onChosen={(chosen) => {
            bench.edit(`start from ${chosen.piece ?? 'another shape'}`, (job) => withShapeOf(job, chosen))
            bench.selection.value = undefined
            starting.value = false
          }}
          onClose={() => {
            starting.value = false
          }}
        />
      )}
      {empty ? (
        <div class="notice">
          <p>Nothing is drawn yet.</p>
          <button
            type="button"
            class="button"
            onClick={() => {
              bench.edit('the first section', (job) => addedSection(job, 0, 'above', bench.device.units.value))
              bench.selection.value = { kind: 'section', index: 0 }
            }}
          >
            Begin with one section
          </button>
        </div>
      ) : (
        <SectionList bench={bench} />
      )}
      <h2>Zones and aims</h2>
      <ZoneList bench={bench} />
      <StruckQuestion bench={bench} />
    </div>
  )
}

/** What is wrong with the piece as a whole, above everything else. */
function WholeProblems({ bench }: { readonly bench: Bench }) {
  const found = bench.outlook.problems.value.filter(({ field }) => /^(?:|piece|profile|zones|struck|probes\b.*)$/u.test(field))
  if (found.length === 0) return null
  return (
    <div class="notice loud" role="alert">
      {found.map(({ field, says }) => (
        <p key={field + says} class="strong">
          {says}
        </p>
      ))}
    </div>
  )
}
