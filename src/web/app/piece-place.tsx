import { useEffect } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import type { Bench } from '#web/bench/bench.ts'
import { CarryMenu } from '#web/carry/carry-menu.tsx'
import { later } from './later.tsx'
import { PieceHead } from './piece-head.tsx'
import { PieceStage } from './piece-stage.tsx'

const TimeLine = later(async () => (await import('./answer-views.ts')).TimeLine, 'time-line')
const ShapeSide = later(async () => (await import('./answer-views.ts')).ShapeSide)
const TriedBar = later(async () => (await import('./answer-views.ts')).TriedBar, 'out-of-sight')
const SteelSide = later(async () => (await import('#web/steel/steel-side.tsx')).SteelSide)
const TreatmentSide = later(async () => (await import('#web/treatment/treatment-side.tsx')).TreatmentSide)
const PrintSide = later(async () => (await import('#web/print/print-side.tsx')).PrintSide)

const SIDES = [
  ['shape', 'Shape'],
  ['steel', 'Steel'],
  ['treatment', 'Treatment'],
  ['card', 'Card'],
] as const
export type Side = (typeof SIDES)[number][0]

/** One piece: its drawing with all that has a height beside it, its time line, and the side of it that is worked on. */
export function PiecePlace({ bench, id, side }: { readonly bench: Bench; readonly id: string; readonly side: string }) {
  const { route } = useLocation()
  const ready = bench.ready.value
  useEffect(() => {
    if (ready) bench.open(id)
  }, [bench, id, ready])
  const now = SIDES.find(([each]) => each === side)?.[0] ?? 'shape'
  if (!ready) return <p class="opening">Opening the bench ...</p>
  if (bench.pieces.value.every((each) => each.id !== id))
    return (
      <div class="notice">
        <h1>This piece is not on this device</h1>
        <p>It was put away, or it was made on another device. A link or a file brings it here.</p>
        <a class="button" href="/bench">
          To the bench
        </a>
      </div>
    )
  return (
    <div class="piece-place">
      <PieceHead bench={bench}>
        <CarryMenu bench={bench} />
      </PieceHead>
      <PieceStage bench={bench} side={now} />
      <TimeLine bench={bench} />
      <TriedBar bench={bench} />
      <section class="piece-side" aria-label={SIDES.find(([each]) => each === now)?.[1]}>
        <nav class="sides" aria-label="Sides of the piece">
          {SIDES.map(([each, says]) => (
            <button
              type="button"
              key={each}
              class="side-tab"
              aria-current={each === now ? 'page' : undefined}
              onClick={() => route(`/piece/${id}/${each}`, true)}
            >
              {says}
            </button>
          ))}
        </nav>
        <div class="side-body">
          {now === 'shape' && <ShapeSide bench={bench} />}
          {now === 'steel' && <SteelSide bench={bench} />}
          {now === 'treatment' && <TreatmentSide bench={bench} />}
          {now === 'card' && <PrintSide bench={bench} />}
        </div>
      </section>
    </div>
  )
}
