import type { Forecast } from '#contract/answers.ts'
import type { Bench } from '#web/bench/bench.ts'
import { chanceSays } from '#web/forecast/aims.ts'
import { AusteniteFold, SectionFold, SkinFold } from './folds.tsx'
import { sectionsBetween } from './section-reading.ts'
import { skinOfZone } from './skin-reading.ts'
import { hrcSays } from './told-figures.ts'

type Zone = Forecast['zones'][number]

/** The zone of the answer that stands for one of the document, by its place and its name; undefined where the answer does not know it yet. */
export function answeredZone(forecast: Forecast | undefined, index: number, name: string | undefined): Zone | undefined {
  const zone = forecast?.zones[index]
  return zone !== undefined && (name === undefined || zone.name === name) ? zone : undefined
}

/** What comes of a zone: its hardness in a line; skin, corners and what stayed soft a tap away. */
export function ZoneOutcome({
  bench,
  zone,
  forecast,
}: {
  readonly bench: Bench
  readonly zone: Zone
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
      <SectionFold sections={sectionsBetween(forecast, zone.from_mm, zone.to_mm)} units={units} />
      <AusteniteFold share={zone.austenite_share} />
    </section>
  )
}
