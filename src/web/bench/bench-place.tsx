import './bench-place.css'
import '#web/look/entries.css'
import { useSignal } from '@preact/signals'
import { useLocation } from 'preact-iso'
import { later } from '#web/app/later.tsx'
import { OpenFileButton } from '#web/carry/open-file-button.tsx'
import type { JobText } from '#web/job/job-text.ts'
import type { Bench, PutAway } from './bench.ts'
import { firstDrawing } from './first-drawing.ts'
import { PieceCard } from './piece-card.tsx'

const StartingSheet = later(async () => (await import('#web/shape/starting-sheet.tsx')).StartingSheet, 'out-of-sight')

/** The pieces in hand, the last one worked on first. */
export function BenchPlace({ bench }: { readonly bench: Bench }) {
  const { route } = useLocation()
  const pieces = bench.pieces.value.toSorted((a, b) => b.changed.localeCompare(a.changed))
  const away = bench.putAway.value
  const now = new Date()
  const starting = useSignal(false)
  const begin = (job: JobText): void => route(`/piece/${bench.add(job)}/shape`)
  if (!bench.ready.value) return <p class="opening">Opening the bench ...</p>
  return (
    <div class="place">
      <div class="bench-head">
        <h1>The bench</h1>
        <div class="bench-begin">
          <button
            type="button"
            class="button main"
            onClick={() => {
              starting.value = true
            }}
          >
            New piece
          </button>
          <button type="button" class="button" onClick={() => begin(firstDrawing(bench.device.units.value))}>
            Plain bar
          </button>
          <OpenFileButton bench={bench} class="button" />
        </div>
      </div>
      {starting.value && (
        <StartingSheet
          bench={bench}
          onChosen={begin}
          onClose={() => {
            starting.value = false
          }}
        />
      )}
      {away !== undefined && (
        <div class="notice" role="status">
          <p>{awaySays(away)}</p>
          <button type="button" class="button" onClick={bench.takeBack}>
            Take back
          </button>
        </div>
      )}
      {bench.shopIsExample.value && (
        <div class="notice">
          <p>
            These pieces, bars and tools are of a workshop that keeps the town's iron gates and bridge railings going: look round,
            change what you like.
          </p>
          <button
            type="button"
            class="button"
            onClick={() => {
              bench.startOwnShop()
              route('/shop')
            }}
          >
            Start my own shop
          </button>
        </div>
      )}
      {pieces.length === 0 ? (
        <div class="bench-empty">
          <p>Nothing lies on the bench.</p>
          <p class="soft">Begin a new piece, open a job file, or drop one here.</p>
        </div>
      ) : (
        <ul class="piece-cards">
          {pieces.map((piece) => (
            <PieceCard key={piece.id} bench={bench} piece={piece} now={now} />
          ))}
        </ul>
      )}
    </div>
  )
}

function awaySays({ pieces, bars, shop }: PutAway): string {
  if (shop === undefined) return `Put away: ${pieces[0]?.job.piece ?? 'a piece without a name'}.`
  const gone = [
    'the gear',
    ...(pieces.length > 0 ? [pieces.length === 1 ? 'one piece' : `${pieces.length} pieces`] : []),
    ...(bars.length > 0 ? [bars.length === 1 ? 'one bar' : `${bars.length} bars`] : []),
  ]
  return `Put away of the example workshop: ${gone.join(', ')}. Yours is set up at the place Shop.`
}
