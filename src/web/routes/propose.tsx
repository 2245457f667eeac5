import './routes.css'
import { useLocation } from 'preact-iso'
import type { Bench } from '#web/bench/bench.ts'
import { routesDesk } from './routes-desk.ts'
import { RoutesSheet } from './routes-sheet.tsx'

/** Asks the planner for whole treatments, shows how far it is, and keeps what it proposed at hand. */
export function Propose({ bench, main }: { readonly bench: Bench; readonly main: boolean }) {
  const desk = routesDesk(bench)
  const { route } = useLocation()
  const asking = desk.asking.value
  const proposed = desk.proposed.value
  const problems = desk.problems.value
  const aimless = (bench.job.value.zones ?? []).length === 0
  const toShape = (): void => route(`/piece/${bench.piece.peek()?.id ?? ''}/shape`, true)
  if (asking !== undefined) {
    const { done = 0, total = 0, says = 'steel, shape and shop' } = asking.progress ?? {}
    return (
      <div class="propose" role="status">
        <p>Looking for routes: {says} ...</p>
        <progress max={total || 1} {...(total > 0 ? { value: done } : {})} aria-label="The planner" />
        <button type="button" class="button" onClick={desk.cancel}>
          Stop looking
        </button>
      </div>
    )
  }
  return (
    <div class="propose">
      {aimless ? (
        <div class="notice">
          <p class="strong">Nothing is aimed at yet.</p>
          <p>Say in Shape what must become how hard, as edge, 0 to 20 mm, 54 to 58 HRC. Then a treatment can be proposed.</p>
          <button type="button" class="button" onClick={toShape}>
            Give an aim in Shape
          </button>
        </div>
      ) : (
        <div class="propose-buttons">
          <button type="button" class={main && proposed === undefined ? 'button main' : 'button'} onClick={desk.ask}>
            {proposed === undefined ? 'Propose a treatment' : 'Propose anew'}
          </button>
          {proposed !== undefined && (
            <>
              <button
                type="button"
                class={main ? 'button main' : 'button'}
                onClick={() => {
                  desk.laidOut.value = true
                }}
              >
                Compare the routes ({proposed.routes.routes.length})
              </button>
              <button type="button" class="button quiet" onClick={desk.putAway}>
                Put them away
              </button>
            </>
          )}
        </div>
      )}
      {proposed !== undefined && desk.outdated.value && (
        <p class="soft">They were proposed before the piece or the shop changed.</p>
      )}
      {problems.length > 0 && (
        <div class="notice">
          <p class="strong">Nothing can be proposed yet:</p>
          <ul class="plain">
            {problems.slice(0, 4).map(({ field, says }) => (
              <li key={field}>
                {field}: {says}
              </li>
            ))}
          </ul>
        </div>
      )}
      {desk.failed.value && (
        <div class="notice loud" role="alert">
          <p>The planner stopped: the part of the page that runs it ended. What you have is kept.</p>
          <button type="button" class="button" onClick={desk.ask}>
            Try again
          </button>
        </div>
      )}
      {desk.laidOut.value && proposed !== undefined && <RoutesSheet bench={bench} desk={desk} proposed={proposed} />}
    </div>
  )
}
