import './starting-sheet.css'
import './shape-side.css'
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { StartingPiece } from '#contract/starting-pieces.ts'
import { lengthText } from '#units/length.ts'
import type { Bench } from '#web/bench/bench.ts'
import { systemOf } from '#web/job/following.ts'
import type { JobText } from '#web/job/job-text.ts'
import { metres } from '#web/job/profile-reading.ts'
import { steppedM } from '#web/job/snapping.ts'
import { QuantityField } from '#web/look/quantity-field.tsx'
import { Sheet } from '#web/look/sheet.tsx'
import { SmallOutline } from './small-outline.tsx'
import { madeOf } from './starting-choice.ts'

interface StartingSheetProps {
  readonly bench: Bench
  /** Told once, with the piece as chosen: shape, zones, struck or not, a name and a steel. */
  readonly onChosen: (job: JobText) => void
  readonly onClose: () => void
}

/** Shapes to begin with, by kind of tool: one is chosen, its sizes are changed, and it is taken. */
export function StartingSheet({ bench, onChosen, onClose }: StartingSheetProps) {
  const units = bench.device.units.value
  const pieces = useSignal<readonly StartingPiece[]>([])
  const kind = useSignal<string | undefined>(undefined)
  useEffect(() => {
    let wanted = true
    void import('#contract/starting-pieces.ts').then(({ startingPieces }) => {
      if (wanted) pieces.value = startingPieces(units)
    })
    return () => {
      wanted = false
    }
  }, [units, pieces])
  const chosen = pieces.value.find((each) => each.kind === kind.value)
  return (
    <Sheet title="Start from a shape" wide onClose={onClose}>
      <div class="starting">
        {chosen !== undefined && <Chosen key={chosen.kind} piece={chosen} onTaken={onChosen} />}
        <ul class="starting-kinds">
          {pieces.value.map((piece) => (
            <li key={piece.kind}>
              <button
                type="button"
                class="starting-kind"
                aria-pressed={piece.kind === kind.value}
                onClick={() => {
                  kind.value = piece.kind
                }}
              >
                <SmallOutline job={piece.job()} widthPx={76} heightPx={120} />
                <span>{piece.kind}</span>
              </button>
            </li>
          ))}
        </ul>
      </div>
    </Sheet>
  )
}

interface ChosenProps {
  readonly piece: StartingPiece
  readonly onTaken: (job: JobText) => void
}

/** The shape that was chosen, with its sizes to change; what is wrong with one is said at it, and the drawing keeps the last that would do. */
function Chosen({ piece, onTaken }: ChosenProps) {
  const sizes = useSignal<Readonly<Record<string, string>>>({})
  const head = useRef<HTMLHeadingElement>(null)
  const made = madeOf(piece, sizes.value)
  const last = useRef<JobText>(piece.job())
  if (made.job !== undefined) last.current = made.job
  useEffect(() => {
    head.current?.focus()
    head.current?.scrollIntoView({ block: 'nearest' })
  }, [])
  return (
    <section class="starting-chosen" aria-label={piece.kind}>
      <div class="starting-drawn">
        <SmallOutline job={last.current} widthPx={150} heightPx={270} />
      </div>
      <div class="starting-sizes">
        <h3 ref={head} tabIndex={-1}>
          {piece.kind}
        </h3>
        <p>{piece.says}</p>
        <p class="soft">Made of {piece.grades.join(', ')}.</p>
        <div class="shape-fields">
          {piece.sizes.map(({ key, label, default: usual, least, most }) => (
            <QuantityField
              key={key}
              name={label}
              value={sizes.value[key] ?? usual}
              problem={made.problems?.[key]}
              hint={`${least} to ${most}`}
              onTyped={(typed) => {
                sizes.value = { ...sizes.value, [key]: typed }
              }}
              stepped={(value, direction) => {
                const nowM = metres(value)
                return nowM === undefined ? undefined : lengthText(steppedM(nowM, direction, systemOf(value)), systemOf(value))
              }}
            />
          ))}
        </div>
        {made.problems?.[''] !== undefined && (
          <p class="shape-fault" role="alert">
            {made.problems['']}
          </p>
        )}
        <button
          type="button"
          class="button main"
          disabled={made.job === undefined}
          onClick={() => {
            if (made.job !== undefined) onTaken(made.job)
          }}
        >
          Take this shape
        </button>
      </div>
    </section>
  )
}
