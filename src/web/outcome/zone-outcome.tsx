import type { Forecast } from '#contract/answers.ts'
import type { Bench } from '#web/bench/bench.ts'
import { chanceSays } from '#web/forecast/aims.ts'
import type { AnsweredZone } from './answered.ts'
import { AusteniteFold, SectionFold, SkinFold } from './folds.tsx'
import { skinOfZone } from './grind.ts'
import { hrcSays } from './told-figures.ts'

/** What comes of a zone: its hardness in a line; skin, corners and what stayed soft a tap away. */
export function ZoneOutcome({
  bench,
  zone,
  forecast,
}: {
  readonly bench: Bench
  readonly zone: AnsweredZone
  readonly forecast: Forecast
}) {
  const units = bench.device.units.value
  const skin = skinOfZone(forecast, zone.name)
  const { tempered_HRC: hrc, quenched_HRC: quenched, chance } = zone
  const band = hrc.high < 20 ? '' : ` (${hrcSays(hrc.low)} to ${hrcSays(hrc.high)})`
  return (
    <section class="outcome" aria-label={`What comes of ${zone.name}`}>
      <p>
        {bench.outlook.stale.value && <span class="soft">Before the last change: </span>}
        Comes to <span class="strong">{hrcSays(hrc.value)} HRC</span>
        {band}, from {hrcSays(quenched.value)} as quenched. Chance of its aim: {chanceSays(chance)}.
      </p>
      {skin !== undefined && <SkinFold skin={skin} units={units} />}
      <SectionFold forecast={forecast} within={zone} units={units} />
      <AusteniteFold share={zone.austenite_share} />
    </section>
  )
}
