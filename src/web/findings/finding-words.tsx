import './findings.css'
import type { Finding, Forecast } from '#contract/answers.ts'
import { lengthOf } from '#report/figure-text.ts'
import type { System } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import { stepWord } from '#web/treatment/step-fields.ts'
import { tryOut } from './trial.ts'
import { trySays } from './tries.ts'

/** Where a finding belongs: `struck end, 170 mm up, step 4 (quench)`. */
export function placeWords({ where }: Finding, { steps }: Forecast, units: System): string {
  const step = where?.step
  return [
    where?.zone,
    where?.x_mm === undefined ? undefined : heightWords(where.x_mm, units),
    step === undefined ? undefined : `step ${step + 1} (${stepWord(steps[step]).toLowerCase()})`,
  ]
    .filter((each) => each !== undefined)
    .join(', ')
}

function heightWords(xMm: number, units: System): string {
  return xMm < 0.5 ? 'at the working end' : `${lengthOf(xMm, units)} up`
}

interface FindingWordsProps {
  readonly bench: Bench
  readonly finding: Finding
  readonly forecast: Forecast
  /** Its first sentence stands elsewhere already. */
  readonly withoutSays?: boolean
  readonly onTried?: () => void
}

/** A finding in full: what, why with its figures, what to do, and the remedy as a thing to try. */
export function FindingWords({ bench, finding, forecast, withoutSays, onTried }: FindingWordsProps) {
  const place = placeWords(finding, forecast, bench.device.units.value)
  const tries = finding.try ?? []
  // A remedy names places in the document that raised it; once that has moved on they may be other ones.
  const current = bench.outlook.answered.value?.job === bench.composed.value
  return (
    <div class="finding-words">
      {withoutSays !== true && <p class="strong">{finding.says}</p>}
      {place !== '' && <p class="soft">{place}</p>}
      <p>{finding.because}</p>
      <p class="finding-remedy">{finding.remedy}</p>
      {tries.length > 0 && (
        <div class="finding-tries">
          {tries.map((one) => (
            <button
              type="button"
              class="button"
              key={one.says}
              disabled={!current}
              onClick={() => {
                tryOut(bench, finding, one)
                onTried?.()
              }}
            >
              Try: {trySays(one)}
            </button>
          ))}
        </div>
      )}
      {finding.caution !== undefined && (
        <p class="finding-caution">
          <strong>Take care.</strong> {finding.caution}
        </p>
      )}
    </div>
  )
}
