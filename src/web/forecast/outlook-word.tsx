import './outlook-word.css'
import type { Bench } from '#web/bench/bench.ts'
import { answerSays, faultsSay } from './outlook-says.ts'

/** Where the forecast of the open piece stands, in one line, with what can be done about it. */
export function OutlookWord({ bench }: { readonly bench: Bench }) {
  const { answered, stale, problems, untreated, progress, failed, halted } = bench.outlook
  const failure = failed.value
  if (failure !== undefined)
    return (
      <div class="outlook-word notice loud" role="alert">
        <span>{failure.says}</span>
        <button type="button" class="button" onClick={failure.retry}>
          Try again
        </button>
      </div>
    )
  const now = progress.value
  const forecast = answered.value?.forecast
  const waiting = forecast === undefined && now === undefined && problems.value.length === 0 && !untreated.value && !halted.value
  return (
    <div class="outlook-word">
      <span role="status">
        {problems.value.length > 0
          ? `${faultsSay(problems.value.length)}; the forecast waits`
          : untreated.value
            ? 'no treatment yet'
            : halted.value
              ? 'stopped; only the coarse answer stands'
              : !stale.value && forecast !== undefined
                ? answerSays(forecast)
                : forecast === undefined
                  ? 'working it out'
                  : 'coarse, the band follows'}
      </span>
      {halted.value && (
        <button type="button" class="button quiet" onClick={bench.outlook.resume}>
          Work it out
        </button>
      )}
      {waiting && <progress aria-label="Working out the first answer" />}
      {now !== undefined && (
        <>
          <progress max={now.total} value={now.done} aria-label="Working out the full answer" />
          <button type="button" class="button quiet" onClick={bench.outlook.halt}>
            Stop
          </button>
        </>
      )}
    </div>
  )
}
