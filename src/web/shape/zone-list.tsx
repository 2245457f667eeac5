import type { Bench } from '#web/bench/bench.ts'
import { problemAt } from '#web/drawing/problem-places.ts'
import { withZone } from '#web/job/measure.ts'
import { metres } from '#web/job/profile-reading.ts'
import { addedZone, steppedAim, withoutZone } from '#web/job/zone-edits.ts'
import { QuantityField } from '#web/look/quantity-field.tsx'
import { answeredZone } from '#web/outcome/answered.ts'
import { grindOffMm, skinOfZone } from '#web/outcome/grind.ts'
import { SkinFold, ZoneOutcome } from '#web/outcome/outcome-views.ts'
import { depthSays } from '#web/outcome/told-figures.ts'
import { MeasureField } from './measure-field.tsx'

/** The zones and what is wished of them, from the other end down, as they stand beside the drawing. */
export function ZoneList({ bench }: { readonly bench: Bench }) {
  const job = bench.job.value
  const selection = bench.selection.value
  const zones = (job.zones ?? [])
    .map((zone, index) => ({ zone, index }))
    .toSorted((a, b) => (metres(b.zone.from) ?? 0) - (metres(a.zone.from) ?? 0))
  const problems = bench.outlook.problems.value
  const forecast = bench.outlook.answered.value?.forecast
  const units = bench.device.units.value
  // Where no zone is hard, the skin is that of the hottest place.
  const ofNone = forecast === undefined ? undefined : skinOfZone(forecast, undefined)
  const add = (): void => {
    const section = selection?.kind === 'section' ? selection.index : undefined
    const { job: next, index } = addedZone(job, section, units)
    bench.edit('add a zone', () => next)
    bench.selection.value = { kind: 'zone', index }
    requestAnimationFrame(() => document.getElementById(`zone-${index}`)?.focus())
  }
  return (
    <>
      {zones.length === 0 && (
        <p class="soft">No part has an aim yet. With one, the forecast says how likely the steel comes out as you want it.</p>
      )}
      <ul class="shape-list">
        {zones.map(({ zone, index }) => {
          const open = selection?.kind === 'zone' && selection.index === index
          const answered = answeredZone(forecast, index, zone.name)
          const skin = answered === undefined || forecast === undefined ? undefined : skinOfZone(forecast, answered.name)
          const grindMm = skin === undefined ? undefined : grindOffMm(skin)
          const faulty = problems.some(({ field }) => field.startsWith(`zones[${index}]`))
          return (
            <li key={index} class={open ? 'shape-entry open' : 'shape-entry'}>
              <button
                type="button"
                class="shape-entry-head"
                id={`zone-${index}`}
                aria-expanded={open}
                onClick={() => {
                  bench.selection.value = open ? undefined : { kind: 'zone', index }
                }}
              >
                <span class="strong">{zone.name ?? `Zone ${index + 1}`}</span>
                <span>{zone.aim}</span>
                <span class="soft">
                  {zone.from} to {zone.to}
                </span>
                {grindMm !== undefined && !open && <span class="soft">grind {depthSays(grindMm, units)} off</span>}
                {faulty && <span class="shape-fault">at fault</span>}
              </button>
              {open && <OpenZone bench={bench} index={index} />}
            </li>
          )
        })}
      </ul>
      {ofNone !== undefined && <SkinFold skin={ofNone} units={units} />}
      <div class="shape-tools">
        <button type="button" class="button" onClick={add} disabled={(job.profile ?? []).length === 0}>
          {selection?.kind === 'section' ? 'Add a zone on this section' : 'Add a zone'}
        </button>
      </div>
    </>
  )
}

function OpenZone({ bench, index }: { readonly bench: Bench; readonly index: number }) {
  const zone = bench.job.value.zones?.[index]
  const problems = bench.outlook.problems.value
  if (zone === undefined) return null
  const forecast = bench.outlook.answered.value?.forecast
  const answered = answeredZone(forecast, index, zone.name)
  const at = `zones[${index}]`
  const own = problems.find(({ field }) => field === at)
  const name = zone.name ?? `zone ${index + 1}`
  const write = (key: 'name' | 'aim', value: string): void =>
    bench.edit(`zone ${name}: ${key}`, (job) => withZone(job, index, (each) => ({ ...each, [key]: value.trim() })))
  return (
    <div class="shape-entry-body">
      <div class="shape-fields">
        {own !== undefined && <p class="shape-fault wide">{own.says}</p>}
        <QuantityField
          name="Name"
          value={zone.name ?? ''}
          problem={problemAt(problems, `${at}.name`)}
          onTyped={(value) => write('name', value)}
        />
        <QuantityField
          name="Aim"
          value={zone.aim}
          problem={problemAt(problems, `${at}.aim`)}
          stepped={steppedAim}
          onTyped={(value) => write('aim', value)}
          list={['54..58 HRC', 'at least 52 HRC', 'at most 40 HRC']}
        />
        <MeasureField bench={bench} of={name} name="From" measure={{ of: 'zone-from', zone: index }} field={`${at}.from`} />
        <MeasureField bench={bench} of={name} name="To" measure={{ of: 'zone-to', zone: index }} field={`${at}.to`} />
      </div>
      {forecast !== undefined && answered !== undefined && <ZoneOutcome bench={bench} zone={answered} forecast={forecast} />}
      <div class="shape-tools">
        <button
          type="button"
          class="button"
          onClick={() => {
            bench.edit(`delete zone ${name}`, (job) => withoutZone(job, index))
            bench.selection.value = undefined
          }}
        >
          Delete
          <span class="out-of-sight"> zone {name}</span>
        </button>
      </div>
    </div>
  )
}
