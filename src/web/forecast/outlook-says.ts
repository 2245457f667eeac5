import type { Forecast } from '#contract/answers.ts'
import { aimState, chanceSays } from './aims.ts'

/** The zone that is least likely to meet its aim. */
export function weakestZone({ zones }: Pick<Forecast, 'zones'>): Forecast['zones'][number] | undefined {
  return zones.reduce<Forecast['zones'][number] | undefined>(
    (least, zone) => (least === undefined || zone.chance < least.chance ? zone : least),
    undefined,
  )
}

/** A full answer in one line: the zone that is least sure, its hardness nine times in ten, its chance. */
export function answerSays(forecast: Pick<Forecast, 'zones' | 'along'>): string {
  const zone = weakestZone(forecast)
  if (zone === undefined) {
    const face = forecast.along[0]?.skin_tempered_HRC
    return face === undefined
      ? 'worked out'
      : `working end ${Math.round(face.low)} to ${Math.round(face.high)} HRC; no aim is set`
  }
  const { low, high } = zone.tempered_HRC
  const verdict = { met: 'meets its aim', doubtful: 'may meet its aim', missed: 'is likely to miss its aim' }[
    aimState(zone.chance)
  ]
  const band = high < 20 ? 'under 20 HRC' : `${Math.max(0, Math.round(low))} to ${Math.round(high)} HRC`
  return `${zone.name} ${band}, ${verdict}: ${chanceSays(zone.chance)}`
}

/** A count of faults as one would say it. */
export function faultsSay(count: number): string {
  return count === 1 ? 'one thing cannot be read' : `${count} things cannot be read`
}
