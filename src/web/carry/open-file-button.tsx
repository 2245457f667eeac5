import { useRef } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import type { Bench } from '#web/bench/bench.ts'
import { carryOf } from './carry.ts'

interface OpenFileButtonProps {
  readonly bench: Bench
  readonly class: string
  readonly onPicked?: () => void
}

/** Asks for job files and puts them on the bench. */
export function OpenFileButton({ bench, class: looks, onPicked }: OpenFileButtonProps) {
  const { route } = useLocation()
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" class={looks} onClick={() => input.current?.click()}>
        Open a job file
      </button>
      <input
        ref={input}
        class="out-of-sight"
        type="file"
        aria-label="Job files to open"
        tabIndex={-1}
        accept=".yaml,.yml,.json,application/yaml,application/json,text/plain"
        multiple
        onChange={async (event) => {
          const files = [...(event.currentTarget.files ?? [])]
          // The same file may be picked again after it was mended.
          event.currentTarget.value = ''
          if (files.length === 0) return
          onPicked?.()
          const id = await carryOf(bench).openFiles(files)
          if (id !== undefined) route(`/piece/${id}/shape`)
        }}
      />
    </>
  )
}
