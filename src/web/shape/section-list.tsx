import type { Bench } from '#web/bench/bench.ts'
import { problemAt } from '#web/drawing/problem-places.ts'
import type { JobText } from '#web/job/job-text.ts'
import { addedSection, movedSection, splitSection, withoutSection } from '#web/job/profile-edits.ts'
import { SectionFold } from '#web/outcome/outcome-views.ts'
import { SectionFields } from './section-fields.tsx'
import { extrasWords, placeWords, sectionWords } from './section-words.ts'

/** The sections as they hang: the working end at the foot of the list, as on the drawing. The one in hand is open. */
export function SectionList({ bench }: { readonly bench: Bench }) {
  const profile = bench.job.value.profile ?? []
  const selection = bench.selection.value
  const chosen = selection?.kind === 'section' ? selection.index : undefined
  return (
    <ol class="shape-list" reversed>
      {profile
        .map((section, index) => {
          const open = chosen === index
          const faulty = problemAt(bench.outlook.problems.value, `profile[${index}]`) !== undefined
          const anyFault = bench.outlook.problems.value.some(({ field }) => field.startsWith(`profile[${index}]`))
          return (
            <li key={index} class={open ? 'shape-entry open' : 'shape-entry'}>
              <button
                type="button"
                class="shape-entry-head"
                id={`section-${index}`}
                aria-expanded={open}
                onClick={() => {
                  bench.selection.value = open ? undefined : { kind: 'section', index }
                }}
              >
                <span class="strong">{placeWords(index, profile.length)}</span>
                <span>{sectionWords(section)}</span>
                <span class="soft">
                  {section.length} long{extrasWords(section) === '' ? '' : `, ${extrasWords(section)}`}
                </span>
                {(faulty || anyFault) && <span class="shape-fault">at fault</span>}
              </button>
              {open && <OpenSection bench={bench} index={index} />}
            </li>
          )
        })
        .toReversed()}
    </ol>
  )
}

function OpenSection({ bench, index }: { readonly bench: Bench; readonly index: number }) {
  const count = bench.job.value.profile?.length ?? 0
  const units = bench.device.units
  const forecast = bench.outlook.answered.value?.forecast
  // Until the answer knows as many sections, it speaks of other ones.
  const answered = forecast?.sections?.length === count ? forecast.sections[index] : undefined
  /** Changes the list, takes another section in hand and goes to it. */
  const restructure = (says: string, change: (job: JobText) => JobText, next: number, focus?: string): void => {
    const before = bench.job.value
    bench.edit(says, change)
    if (bench.job.value === before) return
    bench.selection.value = { kind: 'section', index: next }
    requestAnimationFrame(() => document.getElementById(focus ?? `section-${next}`)?.focus())
  }
  const own = `section ${index + 1}`
  return (
    <div class="shape-entry-body">
      <SectionFields bench={bench} index={index} />
      {forecast !== undefined && answered !== undefined && (
        <SectionFold forecast={forecast} within={answered} units={units.value} />
      )}
      <div class="shape-tools" role="toolbar" aria-label={`Section ${index + 1}`}>
        <button
          type="button"
          class="button"
          onClick={() => restructure(`add above ${own}`, (job) => addedSection(job, index, 'above', units.value), index + 1)}
        >
          Add above
        </button>
        <button
          type="button"
          class="button"
          onClick={() => restructure(`add below ${own}`, (job) => addedSection(job, index, 'below', units.value), index)}
        >
          Add below
        </button>
        <button
          type="button"
          class="button"
          onClick={() => restructure(`split ${own}`, (job) => splitSection(job, index, units.value), index)}
        >
          Split
        </button>
        <button
          type="button"
          class="button"
          id={`section-${index}-up`}
          disabled={index >= count - 1}
          onClick={() =>
            restructure(`move ${own} up`, (job) => movedSection(job, index, 'up'), index + 1, upOrDown(index + 1, count, 'up'))
          }
        >
          Move up
        </button>
        <button
          type="button"
          class="button"
          id={`section-${index}-down`}
          disabled={index === 0}
          onClick={() =>
            restructure(
              `move ${own} down`,
              (job) => movedSection(job, index, 'down'),
              index - 1,
              upOrDown(index - 1, count, 'down'),
            )
          }
        >
          Move down
        </button>
        <button
          type="button"
          class="button"
          disabled={count < 2}
          onClick={() => restructure(`delete ${own}`, (job) => withoutSection(job, index), Math.max(0, index - 1))}
        >
          Delete
        </button>
      </div>
    </div>
  )
}

/** The button that goes on the way, or its head at the end of the way. */
function upOrDown(index: number, count: number, way: 'up' | 'down'): string {
  const ends = way === 'up' ? index >= count - 1 : index === 0
  return ends ? `section-${index}` : `section-${index}-${way}`
}
