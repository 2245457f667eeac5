import { useSignal } from '@preact/signals'
import type { MemoryTable } from '#report/memory-list.ts'

/** Figures of one kind that nobody has checked; long lists are made when they are opened. */
export function MemoryView({ table }: { readonly table: MemoryTable }) {
  const open = useSignal(false)
  const { name, replacedBy, figures } = table
  return (
    <details
      class="proof-memory"
      onToggle={(event) => {
        open.value = event.currentTarget.open
      }}
    >
      <summary>
        {name} ({figures.length})
      </summary>
      {open.value && (
        <>
          <p>
            <span class="strong">What would replace them.</span> {replacedBy}
          </p>
          <ul class="proof-figures">
            {figures.map(({ what, value, unit, file, from }, i) => (
              <li key={i}>
                <span class="strong">{what}</span>{' '}
                {value !== '' && (
                  <span>
                    {value} {unit}
                  </span>
                )}{' '}
                <span class="soft">
                  {from === what ? '' : `${from.replace(/\.$/u, '')}. `}
                  {file}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  )
}
