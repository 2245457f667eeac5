import './carry.css'
import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import type { Bench } from '#web/bench/bench.ts'
import { carryOf } from './carry.ts'

const MOST_SHOWN = 6

/** Takes in what is dropped on the page and what its address holds, and tells what came of it. */
export function CarryNotice({ bench }: { readonly bench: Bench }) {
  const carry = carryOf(bench)
  const { route } = useLocation()
  const over = useSignal(false)
  const ready = bench.ready.value

  useEffect(() => {
    if (!ready) return
    const address = async (): Promise<void> => {
      if (!/[#&]plan=/u.test(location.hash)) return
      const { href, pathname, search } = location
      // Taken once: opening the page anew must not put it on the bench again.
      history.replaceState(history.state, '', pathname + search)
      const id = await carry.openAddress(href)
      if (id !== undefined) route(`/piece/${id}/shape`, true)
    }
    void address()
    const onHash = (): void => void address()
    addEventListener('hashchange', onHash)
    return () => removeEventListener('hashchange', onHash)
  }, [ready, carry, route])

  useEffect(() => {
    // The events of a file that is dragged over the page's parts come in pairs, the next one's before the last one's.
    let inside = 0
    const withFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true
    const enter = (event: DragEvent): void => {
      if (!withFiles(event)) return
      inside++
      over.value = true
    }
    const leave = (event: DragEvent): void => {
      if (!withFiles(event)) return
      inside = Math.max(0, inside - 1)
      over.value = inside > 0
    }
    const stay = (event: DragEvent): void => {
      if (withFiles(event)) event.preventDefault()
    }
    const drop = async (event: DragEvent): Promise<void> => {
      if (!withFiles(event)) return
      event.preventDefault()
      inside = 0
      over.value = false
      const id = await carry.openFiles([...(event.dataTransfer?.files ?? [])])
      if (id !== undefined) route(`/piece/${id}/shape`)
    }
    const onDrop = (event: DragEvent): void => void drop(event)
    addEventListener('dragenter', enter)
    addEventListener('dragleave', leave)
    addEventListener('dragover', stay)
    addEventListener('drop', onDrop)
    return () => {
      removeEventListener('dragenter', enter)
      removeEventListener('dragleave', leave)
      removeEventListener('dragover', stay)
      removeEventListener('drop', onDrop)
    }
  }, [carry, route, over])

  const told = carry.told.value
  const problems = told?.problems ?? []
  return (
    <>
      {over.value && (
        <div class="carry-drop" aria-hidden="true">
          <p>Let go: the job file comes onto the bench as a new piece.</p>
        </div>
      )}
      {told !== undefined && (
        <div
          class={told.loud === true ? 'notice loud carry-told' : 'notice carry-told'}
          role={told.loud === true ? 'alert' : 'status'}
        >
          <p class="strong">{told.says}</p>
          {problems.length > 0 && (
            <ul class="carry-problems">
              {problems.slice(0, MOST_SHOWN).map(({ field, says }, i) => (
                // Two faults may be told in the same words.
                <li key={i}>
                  {field !== '' && <b>{field}: </b>}
                  {says}
                </li>
              ))}
              {problems.length > MOST_SHOWN && <li>and {problems.length - MOST_SHOWN} more</li>}
            </ul>
          )}
          {told.link !== undefined && (
            <input
              class="carry-link"
              aria-label="Link to this plan"
              readOnly
              value={told.link}
              onFocus={(event) => event.currentTarget.select()}
            />
          )}
          {told.mend !== undefined && <p>{told.mend}</p>}
          <button type="button" class="button" onClick={carry.heard}>
            Close
          </button>
        </div>
      )}
    </>
  )
}
