import type { Bench } from '#web/bench/bench.ts'
import { Sheet } from '#web/look/sheet.tsx'
import { withSteps } from '#web/treatment/process-edits.ts'
import { turnsOf } from '#web/treatment/turns.ts'
import { type LaidOut, laidOutRoutes } from './laid-out.ts'
import { RouteColumn } from './route-column.tsx'
import type { Proposed, RoutesDesk } from './routes-desk.ts'

interface RoutesSheetProps {
  readonly bench: Bench
  readonly desk: RoutesDesk
  readonly proposed: Proposed
}

/** The proposals side by side on the same drawing, with the treatment that stands; or why there is none. */
export function RoutesSheet({ bench, desk, proposed }: RoutesSheetProps) {
  const { routes } = proposed
  const shown = laidOutRoutes(proposed, bench.job.value, bench.outlook.answered.value)
  const take = (route: LaidOut): void => {
    bench.settle()
    bench.edit(`take ${route.title.toLowerCase()}: ${route.says}`, (job) => withSteps(job, route.process))
    bench.selection.value = undefined
    turnsOf(bench).setMark(`Since ${route.title.toLowerCase()} was taken`, 'next')
    desk.laidOut.value = false
  }
  return (
    <Sheet
      title="Routes side by side"
      wide
      onClose={() => {
        desk.laidOut.value = false
      }}
    >
      {desk.outdated.value && (
        <div class="notice">
          <p>The piece, its steel or the shop has changed since these were proposed.</p>
          <button
            type="button"
            class="button"
            onClick={() => {
              desk.laidOut.value = false
              desk.ask()
            }}
          >
            Propose anew
          </button>
        </div>
      )}
      {routes.none !== undefined && (
        <div class="notice loud routes-words">
          <p class="strong">No route meets the aims with this gear.</p>
          <p>{routes.none.because}</p>
          <p>{routes.none.nearest}</p>
        </div>
      )}
      {shown.length > 0 && (
        <div class="routes" style={{ '--count': shown.length }}>
          {shown.map((route) => (
            <RouteColumn key={route.title} bench={bench} route={route} onTake={() => take(route)} />
          ))}
        </div>
      )}
      {shown.length > 0 && (
        <p class="soft routes-words">
          Heavy line: hardness of the skin, with the band that holds nine in ten. Broken line: the middle. Boxes: the aims.
          Bracket: the length that alone is heated or drawn.
        </p>
      )}
      {routes.refused.length > 0 && (
        <section class="routes-words">
          <h3>Left out on purpose</h3>
          <ul class="plain">
            {routes.refused.map(({ says, because }) => (
              <li key={says}>
                <strong>{says}</strong>: {because}
              </li>
            ))}
          </ul>
        </section>
      )}
      <div class="propose-buttons">
        <button type="button" class="button quiet" onClick={desk.putAway}>
          Put them away
        </button>
      </div>
    </Sheet>
  )
}
