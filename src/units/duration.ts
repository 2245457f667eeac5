import Fraction from 'fraction.js'
import { trimmed } from './length.ts'
import { type Measure, type MeasureOptions, readMeasure, unit } from './measure.ts'
import { nearestNumber, shortDecimal } from './number-text.ts'
import { type Reading, read, refused } from './reading.ts'

export interface TypedDuration {
  readonly typed: string
  readonly durationS: number
}

const DURATIONS: Measure = {
  name: 'time',
  example: '12 min, 1 h 20 min or 3.5 s',
  usual: ['min', 's'],
  units: [
    unit('day,days', '86400'),
    unit('h,hr,hrs,hour,hours', '3600'),
    unit('min,mins,minute,minutes', '60'),
    unit('s,sec,secs,second,seconds', '1'),
  ],
}

/** Two parts of a clock, with the unit of the first: `1:20 h` is 1 h 20 min, `1:20 min` is 1 min 20 s. */
const CLOCK = /^(\d{1,3}):([0-5]\d)\s*(h|hr|hrs|hours?|min|mins|minutes?)?$/iu

/** `1 h 20 min`, `90 s`, `3.5 s`, `2 hours`, `1/2 h`, `1:20 h`; nothing only with `zero`. `10 m` is metres and refused. */
export function parseDuration(input: unknown, options: MeasureOptions = {}): Reading<TypedDuration> {
  const clock = typeof input === 'string' && input.length < 40 ? CLOCK.exec(input.trim()) : null
  if (clock !== null) return readClock(input as string, clock, options)
  if (typeof input === 'string' && /\d\s*m$/iu.test(input.slice(0, 60).trim()))
    return refused(input, 'm stands for metres', 'write min for minutes, as 12 min')
  const exact = readMeasure(input, DURATIONS, options)
  return exact.ok ? read({ typed: String(input), durationS: nearestNumber(exact.value) }) : exact
}

function readClock(input: string, clock: RegExpExecArray, options: MeasureOptions): Reading<TypedDuration> {
  const [, first = '', second = '', unitWord] = clock
  if (unitWord === undefined)
    return refused(
      input,
      `${first} h ${second} min, or ${first} min ${second} s?`,
      `write ${first}:${second} h or ${first}:${second} min`,
    )
  const outer = unitWord.toLowerCase().startsWith('h') ? 3600 : 60
  const durationS = new Fraction(first).mul(outer).add(new Fraction(second).mul(outer / 60))
  if (durationS.equals(0) && options.zero !== true) return refused(input, 'no time at all', `write it as ${DURATIONS.example}`)
  return read({ typed: input, durationS: nearestNumber(durationS) })
}

/** For reading, as one would say it: `3.5 s`, `90 s`, `12 min`, `1 h 20 min`. */
export function formatDuration(durationS: number): string {
  if (!(durationS >= 120)) return `${trimmed(durationS, durationS < 10 ? 1 : 0)} s`
  const minutes = Math.round(durationS / 60)
  if (minutes < 60) return durationS < 600 && durationS % 60 !== 0 ? minutesAndSeconds(durationS) : `${minutes} min`
  const hours = Math.floor(minutes / 60)
  return minutes % 60 === 0 ? `${hours} h` : `${hours} h ${minutes % 60} min`
}

function minutesAndSeconds(durationS: number): string {
  const whole = Math.round(durationS)
  return whole % 60 === 0 ? `${whole / 60} min` : `${Math.floor(whole / 60)} min ${whole % 60} s`
}

/** For typing again: the same time. */
export function durationText(durationS: number): string {
  if (durationS >= 3600 && durationS % 60 === 0) {
    const minutes = (durationS % 3600) / 60
    return minutes === 0 ? `${durationS / 3600} h` : `${Math.floor(durationS / 3600)} h ${minutes} min`
  }
  if (durationS >= 120 && durationS % 60 === 0) return `${durationS / 60} min`
  return `${shortDecimal(durationS)} s`
}
