import './shop-place.css'
import '#web/look/entries.css'
import { useComputed, useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Problem } from '#contract/problems.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { ShopText } from '#web/job/job-text.ts'
import { QuantityField } from '#web/look/quantity-field.tsx'
import { GEAR_LISTS, type GearList, gearAdded, gearOf, gearPutAway, gearTyped } from './gear-lists.ts'
import { TankPicture } from './tank-picture.tsx'

/** The gear, set up once: every forecast and every plan is made for it. */
export function ShopPlace({ bench }: { readonly bench: Bench }) {
  const problems = useShopProblems(bench)
  const before = useSignal<{ readonly shop: ShopText; readonly says: string } | undefined>(undefined)
  const shop = bench.shop.value
  const change = (next: ShopText): void => {
    before.value = undefined
    bench.keepShop(next)
  }
  const away = (says: string, next: ShopText): void => {
    const held = { shop, says }
    bench.keepShop(next)
    before.value = held
  }
  return (
    <div class="place">
      <h1>The shop</h1>
      <p class="shop-why">What stands here decides what can be planned. It goes into every job file that is saved or printed.</p>
      {bench.shopIsExample.value && (
        <div class="notice">
          <p>This is the gear of the example workshop.</p>
          <button
            type="button"
            class="button main"
            onClick={() => away('The example gear is put away.', Object.fromEntries(GEAR_LISTS.map(({ key }) => [key, []])))}
          >
            Start my own shop
          </button>
        </div>
      )}
      {before.value !== undefined && (
        <div class="notice" role="status">
          <p>{before.value.says}</p>
          <button type="button" class="button" onClick={() => change(before.value?.shop ?? shop)}>
            Take back
          </button>
        </div>
      )}
      {GEAR_LISTS.map((list) => (
        <GearSection key={list.key} list={list} shop={shop} problems={problems.value} onChange={change} onAway={away} />
      ))}
    </div>
  )
}

interface GearSectionProps {
  readonly list: GearList
  readonly shop: ShopText
  readonly problems: readonly Problem[]
  readonly onChange: (shop: ShopText) => void
  readonly onAway: (says: string, shop: ShopText) => void
}

function GearSection({ list, shop, problems, onChange, onAway }: GearSectionProps) {
  const items = gearOf(shop, list.key)
  return (
    <section class="gear" aria-labelledby={`gear-${list.key}`}>
      <div class="gear-head">
        <h2 id={`gear-${list.key}`}>{list.title}</h2>
        <p class="soft">{list.why}</p>
      </div>
      <ul class="entries">
        {items.map((item, index) => (
          // A piece of gear has no other mark than its place: its name is being typed.
          <li key={index} class="entry" aria-label={item.name}>
            {list.key === 'baths' && <TankPicture bath={item} />}
            <div class="entry-fields">
              {list.fields.map((field) => {
                const at = `shop.${list.key}[${index}].${field.key}`
                const problem = problems.find((each) => each.field === at)?.says
                const typed = (value: string): void => onChange(gearTyped(shop, list, index, field.key, value))
                return field.values === undefined ? (
                  <QuantityField
                    key={field.key}
                    name={field.says}
                    value={item[field.key] ?? ''}
                    onTyped={typed}
                    problem={problem}
                    {...(field.hint === undefined ? {} : { hint: field.hint })}
                  />
                ) : (
                  <label key={field.key} class="field">
                    <span class="name">{field.says}</span>
                    <select value={item[field.key] ?? ''} onChange={(event) => typed(event.currentTarget.value)}>
                      {(field.optional === true || item[field.key] === undefined) && (
                        <option value="">{field.unsaid?.(item) ?? 'by its name'}</option>
                      )}
                      {field.values.map((value) => (
                        <option key={value} value={value}>
                          {field.words?.[value] ?? value}
                        </option>
                      ))}
                    </select>
                    {problem !== undefined && <span class="problem">{problem}</span>}
                  </label>
                )
              })}
            </div>
            <button
              type="button"
              class="button quiet"
              onClick={() => onAway(`Put away: ${item.name}.`, gearPutAway(shop, list.key, index))}
            >
              Put away<span class="out-of-sight"> {item.name}</span>
            </button>
          </li>
        ))}
      </ul>
      {items.length === 0 && <p>No {list.one} in this shop.</p>}
      <button type="button" class="button" onClick={() => onChange(gearAdded(shop, list))}>
        Add a{list.one.startsWith('o') ? 'n' : ''} {list.one}
      </button>
    </section>
  )
}

/** Faults of the shop as it stands, found by the same reading as a job file's. */
function useShopProblems(bench: Bench) {
  const problems = useSignal<readonly Problem[]>([])
  const shop = useComputed(() => bench.shop.value)
  useEffect(
    () =>
      shop.subscribe((now) => {
        bench.crew.ask('shopProblems', [now]).answer.then(
          (found) => {
            if (now === shop.peek()) problems.value = found
          },
          (error: unknown) => console.error(error),
        )
      }),
    [bench, shop, problems],
  )
  return problems
}
