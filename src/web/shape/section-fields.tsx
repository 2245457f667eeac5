import type { Bench } from '#web/bench/bench.ts'
import { problemAt } from '#web/drawing/problem-places.ts'
import type { ShapeText } from '#web/job/job-text.ts'
import { type Feature, reshaped, tapered, withFeature } from '#web/job/profile-edits.ts'
import { Choice } from '#web/look/choice.tsx'
import { MeasureField } from './measure-field.tsx'

const SHAPES: readonly (readonly [ShapeText, string])[] = [
  ['round', 'Round'],
  ['square', 'Square'],
  ['hexagon', 'Hexagon'],
  ['octagon', 'Octagon'],
  ['flat', 'Flat'],
]

interface SectionProps {
  readonly bench: Bench
  readonly index: number
}

/** Everything that one section has: cross-section, sizes, length, and what is at its joint and in its end face. */
export function SectionFields({ bench, index }: SectionProps) {
  const job = bench.job.value
  const section = job.profile?.[index]
  const count = job.profile?.length ?? 0
  if (section === undefined) return null
  const of = `section ${index + 1}`
  const units = bench.device.units
  const even = section.across !== undefined
  const size = section.shape === 'flat' ? 'Thickness x width' : section.shape === 'round' ? 'Diameter' : 'Across flats'
  const at = `profile[${index}]`
  const whole = bench.outlook.problems.value.find(({ field }) => field === at || field === `${at}.shape`)
  return (
    <div class="shape-fields">
      {whole !== undefined && <p class="shape-fault wide">{whole.says}</p>}
      <div class="wide">
        <Choice
          name="Cross-section"
          value={section.shape}
          values={SHAPES}
          onChosen={(shape) => bench.edit(`${of}: ${shape}`, (now) => reshaped(now, index, shape, units.value))}
        />
      </div>
      <div class="wide">
        <Choice
          name="Along it"
          value={even ? 'even' : 'taper'}
          values={[
            ['even', 'Even'],
            ['taper', 'Tapered'],
          ]}
          onChosen={(next) =>
            bench.edit(`${of}: ${next === 'taper' ? 'tapered' : 'even'}`, (now) =>
              tapered(now, index, next === 'taper', units.value),
            )
          }
        />
      </div>
      {even ? (
        <MeasureField
          bench={bench}
          of={of}
          name={size}
          measure={{ of: 'across', section: index, end: 'both' }}
          field={`${at}.across`}
        />
      ) : (
        <>
          <MeasureField
            bench={bench}
            of={of}
            name={`${size}, ${index === count - 1 ? 'other end' : 'upper end'}`}
            measure={{ of: 'across', section: index, end: 'to' }}
            field={`${at}.to`}
          />
          <MeasureField
            bench={bench}
            of={of}
            name={`${size}, ${index === 0 ? 'working end' : 'lower end'}`}
            measure={{ of: 'across', section: index, end: 'from' }}
            field={`${at}.from`}
          />
        </>
      )}
      <MeasureField bench={bench} of={of} name="Length" measure={{ of: 'length', section: index }} field={`${at}.length`} />
      {index > 0 && (
        <MeasureField
          bench={bench}
          of={of}
          name="Fillet at its lower joint"
          measure={{ of: 'fillet', section: index }}
          field={`${at}.fillet`}
          hint={section.fillet === undefined ? 'None: a sharp corner' : ''}
        />
      )}
      {(index === 0 || index === count - 1) && <EndFace bench={bench} index={index} />}
    </div>
  )
}

const FEATURES: readonly (readonly [Feature, string, string])[] = [
  ['dish', 'a dish', 'Dish'],
  ['bore', 'a bore', 'Bore'],
  ['tip', 'a rounding', 'Rounding'],
]

/** What is in the end face: put in or taken out, each with its sizes. */
function EndFace({ bench, index }: SectionProps) {
  const section = bench.job.value.profile?.[index]
  const units = bench.device.units
  const face = index === 0 ? 'the working end' : 'the other end'
  const at = `profile[${index}]`
  return (
    <fieldset class="shape-face wide">
      <legend>In {face}</legend>
      {FEATURES.filter(([feature]) => section?.[feature] !== undefined).map(([feature, , name]) => {
        const own = problemAt(
          bench.outlook.problems.value.filter(({ field }) => field === `${at}.${feature}`),
          `${at}.${feature}`,
        )
        return (
          <div key={feature} class="shape-feature">
            {feature === 'tip' ? (
              <MeasureField
                bench={bench}
                of={face}
                name="Rounding, radius"
                measure={{ of: 'tip', section: index }}
                field={`${at}.tip`}
              />
            ) : (
              (['across', 'depth'] as const).map((key) => (
                <MeasureField
                  key={key}
                  bench={bench}
                  of={face}
                  name={`${name}, ${key}`}
                  measure={{ of: `${feature}-${key}`, section: index }}
                  field={`${at}.${feature}.${key}`}
                />
              ))
            )}
            <button
              type="button"
              class="button"
              onClick={() =>
                bench.edit(`take out ${name.toLowerCase()}`, (now) => withFeature(now, index, feature, false, units.value))
              }
            >
              Take out
              <span class="out-of-sight"> the {name.toLowerCase()}</span>
            </button>
            {own !== undefined && feature !== 'tip' && <p class="shape-fault">{own}</p>}
          </div>
        )
      })}
      <div class="shape-tools">
        {FEATURES.filter(([feature]) => section?.[feature] === undefined).map(([feature, says]) => (
          <button
            type="button"
            key={feature}
            class="button"
            onClick={() => bench.edit(`add ${says}`, (now) => withFeature(now, index, feature, true, units.value))}
          >
            Add {says}
          </button>
        ))}
      </div>
    </fieldset>
  )
}
