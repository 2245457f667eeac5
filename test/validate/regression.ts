import { figure, percent } from '#report/validation-reach.ts'
import type { Check, ValidationRecord } from '#report/validation-record.ts'

const WHAT_TO_DO =
  'Find out why. If it is right that it moved, run `npm run validate` and enter the line that it prints in CHANGELOG.md under "Numbers that moved".'

/** Why a release with the figures of `now` is refused, one sentence each; none when nothing got worse. `before` is the record as kept. */
export function worse(before: ValidationRecord, now: ValidationRecord): string[] {
  const refused = before.checks.flatMap((was): string[] => {
    const is = now.checks.find(({ id }) => id === was.id)
    if (is === undefined) return [`${was.name}: was compared and is no more. ${WHAT_TO_DO}`]
    const told: string[] = []
    const rise = is.all.meanAbsolute - was.all.meanAbsolute
    if (!(rise <= was.tolerance))
      told.push(
        `${is.name}: the mean absolute error was ${exact(was.all.meanAbsolute)} ${is.unit} and is ${exact(is.all.meanAbsolute)} ${is.unit}; it may rise by ${was.tolerance}. ${WHAT_TO_DO}`,
      )
    if (is.all.n < was.all.n)
      told.push(`${is.name}: ${was.all.n} published figures were compared and only ${is.all.n} are. ${WHAT_TO_DO}`)
    return told
  })
  return [...refused, ...now.checks.flatMap(outOfBounds)]
}

function outOfBounds({ name, all: { inside }, insideBounds }: Check): string[] {
  if (inside === undefined || insideBounds === undefined) return []
  const [least, most] = insideBounds
  if (inside >= least - 5e-5 && inside <= most + 5e-5) return []
  return [
    `${name}: the band holds ${(100 * inside).toFixed(1)} % of what is published; its bounds are ${percent(least)} to ${percent(most)}. Mend the band, or state other bounds with their reason in the comparison. ${WHAT_TO_DO}`,
  ]
}

/** Comparisons whose figures read otherwise than in the record, a line each as CHANGELOG takes them. */
export function moved(before: ValidationRecord | undefined, now: ValidationRecord): string[] {
  return now.checks.flatMap((is): string[] => {
    const was = before?.checks.find(({ id }) => id === is.id)
    if (was === undefined)
      return [`- ${is.name}: new, ${exact(is.all.meanAbsolute)} ${is.unit} mean error (${is.all.n} figures${insideText(is)}).`]
    const parts = [
      exact(was.all.meanAbsolute) === exact(is.all.meanAbsolute)
        ? ''
        : `mean error ${exact(was.all.meanAbsolute)} to ${exact(is.all.meanAbsolute)} ${is.unit}`,
      was.all.n === is.all.n ? '' : `${was.all.n} to ${is.all.n} figures`,
      insideText(was) === insideText(is) ? '' : `in the band ${percent(was.all.inside ?? 0)} to ${percent(is.all.inside ?? 0)}`,
    ].filter((part) => part !== '')
    return parts.length === 0 ? [] : [`- ${is.name}: ${parts.join(', ')}.`]
  })
}

function insideText({ all: { inside } }: Check): string {
  return inside === undefined ? '' : `, ${percent(inside)} in the band`
}

/** A digit more than the page shows, since tolerances are of a tenth. */
function exact(value: number): string {
  return Math.abs(value) >= 10 ? figure(value) : value.toFixed(2)
}
