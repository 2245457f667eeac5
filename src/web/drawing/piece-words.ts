import { formatLength, type System } from '#units/length.ts'
import type { JobText } from '#web/job/job-text.ts'
import { bathBelow } from './water-lines.ts'

/** The drawing in words, for those who do not see it. */
export function inWords(job: JobText, lengthMm: number, units: System): string {
  const sections = (job.profile ?? []).map(
    ({ shape, across, from, to, length }) => `${shape} ${across ?? `${from} to ${to}`}, ${length} long`,
  )
  const zones = (job.zones ?? []).map(({ name, from, to, aim }, i) => `${name ?? `zone ${i + 1}`} from ${from} to ${to}, ${aim}`)
  const { name, air, lines } = bathBelow(job)
  const under = lines.at(-1)
  return [
    sections.length === 0
      ? 'Nothing is drawn yet.'
      : `${formatLength(lengthMm / 1000, units)} long. From the working end: ${sections.join('; ')}.`,
    ...(zones.length === 0 ? [] : [`Zones: ${zones.join('; ')}.`]),
    ...(name === undefined || under === undefined
      ? []
      : [`It hangs over: ${name}. ${under.lineMm === null ? 'All of it goes under' : `The first ${under.typed} go under`}.`]),
    ...(air === undefined ? [] : [`It cools in ${air}.`]),
  ].join(' ')
}
