import { useRef } from 'preact/hooks'
import type { Bench } from '#web/bench/bench.ts'
import { problemAt } from '#web/drawing/problem-places.ts'
import type { JobText } from '#web/job/job-text.ts'
import { type Measure, measureKey, metresAt, typedAt, withTyped } from '#web/job/measure.ts'
import { steppedM } from '#web/job/snapping.ts'
import { reached } from '#web/job/sound-shape.ts'
import { QuantityField } from '#web/look/quantity-field.tsx'

interface MeasureFieldProps {
  readonly bench: Bench
  readonly measure: Measure
  readonly name: string
  /** Where the contract names it: `profile[1].fillet`. */
  readonly field: string
  /** For Undo: whose it is. */
  readonly of: string
  readonly hint?: string
}

/** One figure of the shape, as typed; its arrow keys step it by the shop's fraction as far as the metal allows. */
export function MeasureField({ bench, measure, name, field, of, hint }: MeasureFieldProps) {
  const stepped = useRef<string | undefined>(undefined)
  const says = `${of}: ${name.toLowerCase()}`
  return (
    <QuantityField
      name={name}
      value={fieldText(bench.job.value, measure)}
      {...(hint === undefined ? {} : { hint })}
      problem={problemAt(bench.outlook.problems.value, field)}
      stepped={(value, direction) => {
        const system = bench.device.units.value
        const from = withTyped(bench.job.value, measure, value)
        const nowM = metresAt(from, measure)
        if (nowM === undefined) return undefined
        stepped.current = fieldText(reached(from, measure, steppedM(nowM, direction, system), system).job, measure)
        return stepped.current
      }}
      onTyped={(typed) => {
        const merge = typed === stepped.current ? `steps ${measureKey(measure)}` : undefined
        bench.edit(says, (job) => withTyped(job, measure, typed.trim()), merge)
      }}
    />
  )
}

/** What stands in the field: the whole size of a flat, thickness and width. */
export function fieldText(job: JobText, measure: Measure): string {
  if (measure.of !== 'across') return typedAt(job, measure) ?? ''
  const section = job.profile?.[measure.section]
  return (measure.end === 'both' ? section?.across : (section?.across ?? section?.[measure.end])) ?? ''
}
