import type { Forecast } from '#contract/answers.ts'
import { aimWords, bandText, hardnessText, inOrder } from '#report/figure-text.ts'
import { formatDuration } from '#units/duration.ts'
import type { Bench } from '#web/bench/bench.ts'
import { bodyOfText, trueRadiusMm } from '#web/drawing/body.ts'
import { chanceSays } from '#web/forecast/aims.ts'
import { SeverityMark } from '#web/look/severity-mark.tsx'
import { ChanceTally } from '#web/treatment/chance-tally.tsx'
import { gearUse } from './gear-use.ts'
import { hoursOf } from './hours.ts'
import type { LaidOut } from './laid-out.ts'
import { RouteDrawing } from './route-drawing.tsx'
import { routePicture } from './route-picture.ts'

interface RouteColumnProps {
  readonly bench: Bench
  readonly route: LaidOut
  readonly onTake: () => void
}

const BOX = { widthPx: 260, heightPx: 300 }
/** So many findings stand in the comparison; the rest are counted. */
const MOST_FINDINGS = 3

/** One treatment of the comparison: its picture, its chances, its time, its gear, its gravest findings. */
export function RouteColumn({ bench, route, onTake }: RouteColumnProps) {
  const { title, says, process, forecast, chance, atBest, holdsGear, own, standing } = route
  const shop = bench.composed.value.shop ?? {}
  const units = bench.device.units.value
  const body = bodyOfText(bench.job.value)
  const picture = routePicture(forecast, process, BOX, (xMm, rMm) => trueRadiusMm(body, xMm, rMm))
  const hours = hoursOf(forecast, process, shop)
  const findings = inOrder(forecast.findings)
  return (
    <article class="route" aria-label={title} data-own={own}>
      <header>
        <h3>{title}</h3>
        <p>{says}</p>
        {standing ? (
          !own && <p class="strong route-standing">Taken: it stands on the bench</p>
        ) : (
          <button type="button" class="button main" onClick={onTake}>
            Take this one
          </button>
        )}
      </header>
      <RouteDrawing picture={picture} says={`${title}: the piece and its hardness along it. ${zonesSay(forecast)}`} />
      <div class="route-chance">
        {chance !== undefined && (
          <p>
            <strong>
              {atBest === true && 'at best '}
              {chanceSays(chance)}
            </strong>{' '}
            that it all comes as aimed <ChanceTally chance={chance} />
          </p>
        )}
        <ul class="plain">
          {forecast.zones.map((zone) => (
            <li key={zone.name}>
              <strong>{zone.name}</strong>: {chanceSays(zone.chance)}
              <br />
              {bandText(zone.tempered_HRC)} HRC, aim {aimWords(zone.aim)}
            </li>
          ))}
        </ul>
      </div>
      <dl class="route-hours">
        <dt>At the fire</dt>
        <dd>{hours.fireS === 0 ? 'none' : formatDuration(hours.fireS)}</dd>
        <dt>In the oven</dt>
        <dd>{hours.ovenS === 0 ? 'none' : formatDuration(hours.ovenS)}</dd>
        <dt>From first to last</dt>
        <dd>{formatDuration(hours.allS)}</dd>
      </dl>
      <div class="route-gear">
        <p class="soft">
          {holdsGear === undefined ? 'Asks of the gear' : holdsGear ? 'Your gear can do it' : 'More than your gear can do'}
        </p>
        <ul class="plain">
          {gearUse(process, forecast, shop, units).map((use) => (
            <li key={use.name}>
              {use.name}: {use.says}
              {use.strained !== undefined && <strong>; {use.strained}</strong>}
            </li>
          ))}
        </ul>
      </div>
      <div class="route-found">
        {findings.length === 0 ? (
          <p>Nothing stands against it.</p>
        ) : (
          <ul class="plain">
            {findings.slice(0, MOST_FINDINGS).map((finding) => (
              <li key={finding.id + finding.says} class="route-finding">
                <SeverityMark severity={finding.severity} />
                <span>{finding.says}</span>
              </li>
            ))}
            {findings.length > MOST_FINDINGS && <li class="soft">and {findings.length - MOST_FINDINGS} more</li>}
          </ul>
        )}
      </div>
    </article>
  )
}

function zonesSay({ zones }: Forecast): string {
  return zones.map(({ name, tempered_HRC, aim }) => `${name} ${hardnessText(tempered_HRC)}, aim ${aimWords(aim)}`).join('; ')
}
