import { useId } from 'preact/hooks'
import { lengthText } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import { bodyOfText } from '#web/drawing/body.ts'
import type { StepText } from '#web/job/job-text.ts'
import { QuantityField } from '#web/look/quantity-field.tsx'
import { gearOffered } from './gear-offered.ts'
import { changedStep, withField, wordsOf } from './process-edits.ts'
import { fieldsOf, type StepField, stepWord } from './step-fields.ts'
import { steppedLength } from './stepping.ts'

interface StepFormProps {
  readonly bench: Bench
  readonly step: StepText
  readonly index: number
  /** What is wrong, by field. */
  readonly problems: ReadonlyMap<string, string>
}

/** What can be typed and chosen about one step. Changes of one field in a row are one step to undo. */
export function StepForm({ bench, step, index, problems }: StepFormProps) {
  const put = (path: string, value: unknown, says: string): void => {
    bench.edit(
      `${stepWord(step)}: ${says.toLowerCase()}`,
      (job) => changedStep(job, index, (each) => withField(each, path, value)),
      `process[${index}].${path}`,
    )
  }
  return (
    <div class="step-form" onFocusOut={bench.settle}>
      {fieldsOf(step).map((field) => (
        <OneField key={field.path} bench={bench} step={step} put={put} field={field} problems={problems} />
      ))}
    </div>
  )
}

function OneField({ field, problems, ...rest }: Omit<SharedProps, 'problem'> & ProblemsProp & { readonly field: StepField }) {
  const shared = { ...rest, problem: problems.get(field.path) }
  switch (field.as) {
    case 'gear':
      return <GearField {...shared} field={field} />
    case 'one-of':
      return <OneOfField {...shared} field={field} />
    case 'part':
      return <PartField {...shared} problems={problems} />
    case 'typed':
      return (
        <QuantityField
          name={field.says}
          value={wordsOf(rest.step, field.path)}
          onTyped={(typed) => rest.put(field.path, typed.trim(), field.says)}
          problem={shared.problem}
          {...(field.stepped === undefined ? {} : { stepped: field.stepped })}
          {...(field.hint === undefined ? {} : { hint: field.hint })}
          {...(field.list === undefined ? {} : { list: field.list })}
        />
      )
  }
}

interface ProblemsProp {
  readonly problems: ReadonlyMap<string, string>
}

interface SharedProps {
  readonly bench: Bench
  readonly step: StepText
  readonly put: (path: string, value: unknown, says: string) => void
  readonly problem: string | undefined
}

function GearField({ bench, step, put, problem, field }: SharedProps & { readonly field: StepField & { as: 'gear' } }) {
  const offered = gearOffered(bench.composed.value.shop ?? {}, field.sorts)
  const now = wordsOf(step, 'in')
  const known = offered.find(({ name }) => name.toLowerCase() === now.toLowerCase())
  return (
    <SelectField
      name={field.says}
      value={known?.name ?? now}
      values={[
        ...(now === '' ? [['', 'whichever is there'] as const] : []),
        ...offered.map(({ name, says }) => [name, says] as const),
        ...(known === undefined && now !== '' ? [[now, `${now}, not in this shop`] as const] : []),
      ]}
      problem={problem}
      onChosen={(name) => put('in', name, field.says)}
    />
  )
}

function OneOfField({ bench, step, put, problem, field }: SharedProps & { readonly field: StepField & { as: 'one-of' } }) {
  const now = wordsOf(step, field.path) || wordsOf({ do: '', it: field.usual }, 'it')
  const offered = field.values.map(([value, says]) => ({ value, says, words: wordsOf({ do: '', it: value }, 'it') }))
  return (
    <SelectField
      name={field.says}
      value={now}
      values={[
        ...(field.unsaid === undefined ? [] : [['', field.unsaid(step, bench.composed.value.shop ?? {})] as const]),
        ...offered.map(({ words, says }) => [words, says] as const),
        ...((field.unsaid !== undefined && now === '') || offered.some(({ words }) => words === now)
          ? []
          : [[now, now] as const]),
      ]}
      problem={problem}
      onChosen={(words) => put(field.path, offered.find((each) => each.words === words)?.value ?? words, field.says)}
    />
  )
}

interface SelectFieldProps {
  readonly name: string
  readonly value: string
  readonly values: readonly (readonly [value: string, says: string])[]
  readonly problem: string | undefined
  readonly onChosen: (value: string) => void
}

function SelectField({ name, value, values, problem, onChosen }: SelectFieldProps) {
  const id = useId()
  return (
    <div class="field">
      <label class="name" for={id}>
        {name}
      </label>
      <select
        id={id}
        value={value}
        aria-invalid={problem === undefined ? undefined : 'true'}
        aria-describedby={problem === undefined ? undefined : `${id}-says`}
        onChange={(event) => onChosen(event.currentTarget.value)}
      >
        {values.map(([each, says]) => (
          <option key={each} value={each} selected={each === value}>
            {says}
          </option>
        ))}
      </select>
      {problem !== undefined && (
        <span class="problem" id={`${id}-says`}>
          {problem}
        </span>
      )}
    </div>
  )
}

function PartField({ bench, step, put, problems }: SharedProps & ProblemsProp) {
  const units = bench.device.units.value
  const some = step.part !== undefined
  const half = (): string => {
    const grid = units === 'inch' ? 0.0127 : 0.005
    return lengthText(Math.max(1, Math.round(bodyOfText(bench.job.value).lengthMm / 2000 / grid)) * grid, units)
  }
  const name = 'How much of it'
  const end = (key: 'from' | 'to', says: string) => (
    <QuantityField
      name={says}
      value={wordsOf(step, `part.${key}`)}
      onTyped={(typed) => put(`part.${key}`, typed.trim(), `${says} from the working end`)}
      stepped={(typed, direction) => steppedLength(typed, direction, { zero: key === 'from' })}
      problem={problems.get(`part.${key}`)}
    />
  )
  return (
    <>
      <SelectField
        name={name}
        value={some ? 'part' : 'all'}
        values={[
          ['all', 'all of it'],
          ['part', 'only a length of it'],
        ]}
        problem={problems.get('part')}
        onChosen={(chosen) =>
          put('part', chosen === 'all' ? undefined : { from: units === 'inch' ? '0 in' : '0 mm', to: half() }, name)
        }
      />
      {some && end('from', 'From')}
      {some && end('to', 'To, from the working end')}
    </>
  )
}
