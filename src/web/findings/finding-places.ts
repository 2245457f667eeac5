import type { Finding, Forecast } from '#contract/answers.ts'
import { heightOf } from '#report/figure-text.ts'

/** A finding with its number in the forecast, and the height that it speaks of, if it has one. */
export interface PlacedFinding {
  readonly finding: Finding
  readonly index: number
  /** From the working end [mm]. */
  readonly heightMm?: number
  /** Where it stands when it has no height: over the piece, or at the bath. */
  readonly end: 'top' | 'foot'
}

const RANK: Readonly<Record<Finding['severity'], number>> = { stop: 0, warn: 1, note: 2 }
const IN_THE_BATH = ['quench', 'warm-bath', 'run-colours']

/** The findings of a forecast, the gravest first, each at its place. */
export function placedFindings(forecast: Forecast): readonly PlacedFinding[] {
  return forecast.findings
    .map((finding, index): PlacedFinding => {
      const heightMm = heightOf(finding, forecast)
      const step = finding.where?.step
      const end = step !== undefined && IN_THE_BATH.includes(forecast.steps[step]?.do ?? '') ? 'foot' : 'top'
      return { finding, index, end, ...(heightMm === undefined ? {} : { heightMm }) }
    })
    .sort((a, b) => RANK[a.finding.severity] - RANK[b.finding.severity] || a.index - b.index)
}

/** Findings that speak of one step. */
export function findingsOfStep(forecast: Forecast, step: number): readonly PlacedFinding[] {
  return placedFindings(forecast).filter(({ finding }) => finding.where?.step === step)
}
