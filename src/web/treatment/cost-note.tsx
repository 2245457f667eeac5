import type { Bench } from '#web/bench/bench.ts'
import type { Answered } from '#web/work/desk.ts'
import { DiffWords } from './diff-words.tsx'
import { forecastDiff, isQuiet } from './forecast-diff.ts'
import { turnsOf } from './turns.ts'
import { whatChanged } from './what-changed.ts'

/** What the last change comes to, and all changes since a mark was set. */
export function CostNote({ bench }: { readonly bench: Bench }) {
  const turns = turnsOf(bench)
  const last = turns.turn.value
  // An undo to where one began, or another name, is no change worth telling.
  const turn = last !== undefined && whatChanged(last.before.job, last.after.job).length > 0 ? last : undefined
  const mark = turns.mark.value
  const full = turns.full.value
  if (turn === undefined && mark === undefined) return null
  const fault = bench.outlook.problems.value.length > 0
  const waiting = bench.outlook.stale.value && turn?.after.job !== bench.composed.value
  const since =
    mark !== undefined && full !== undefined && mark.from !== full && mark.from.job !== turn?.before.job ? mark : undefined
  return (
    <aside class="cost-note" aria-live="polite" data-waiting={waiting}>
      {waiting && (
        <p class="soft">{fault ? 'What it comes to is told once it can be read.' : 'Working out what the change comes to ...'}</p>
      )}
      {turn !== undefined && <Cost title={turn.rough ? 'The last change, at a first look' : 'The last change'} {...turn} />}
      {since !== undefined && full !== undefined && <Cost title={since.says} before={since.from} after={full} rough={false} />}
      <div class="cost-tools">
        {mark === undefined ? (
          <button type="button" class="button quiet" onClick={() => turns.setMark('Since you began to measure', 'this')}>
            Measure from here on
          </button>
        ) : (
          <button type="button" class="button quiet" onClick={turns.dropMark}>
            Measure no longer
          </button>
        )}
      </div>
    </aside>
  )
}

interface CostProps {
  readonly title: string
  readonly before: Answered
  readonly after: Answered
  readonly rough: boolean
}

function Cost({ title, before, after, rough }: CostProps) {
  const diff = forecastDiff(before.forecast, after.forecast)
  const changes = whatChanged(before.job, after.job)
  return (
    <div class="cost">
      <p>
        <strong>{title}</strong>
        {changes.length > 0 && `: ${fewOf(changes)}`}
      </p>
      {!rough && isQuiet(diff) && <p>It changes no chance and no finding.</p>}
      <DiffWords diff={diff} rough={rough} />
    </div>
  )
}

/** So many changes are told one by one. */
const TOLD = 2

function fewOf(changes: readonly string[]): string {
  if (changes.length <= TOLD + 1) return changes.join('; ')
  return `${changes.slice(0, TOLD).join('; ')}; and ${changes.length - TOLD} more`
}
