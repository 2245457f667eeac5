import type { Forecast } from '#contract/answers.ts'

export type AnsweredZone = Forecast['zones'][number]

/** The zone of the answer that stands for one of the document, by its place and its name; undefined where the answer does not know it yet. */
export function answeredZone(forecast: Forecast | undefined, index: number, name: string | undefined): AnsweredZone | undefined {
  const zone = forecast?.zones[index]
  return zone !== undefined && (name === undefined || zone.name === name) ? zone : undefined
}
