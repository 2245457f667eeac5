import { useLocation } from 'preact-iso'
import { chanceSays } from '#web/forecast/aims.ts'
import type { SectionText } from '#web/job/job-text.ts'
import { SmallOutline } from '#web/shape/small-outline.tsx'
import type { Piece } from '#web/shelf/shelf.ts'
import { steelText } from '#web/steel/steel-text.ts'
import { ChanceTally } from '#web/treatment/chance-tally.tsx'
import type { Bench } from './bench.ts'
import { whenChanged } from './when-changed.ts'

const OUTLINE = { widthPx: 112, heightPx: 168 }
const NOTHING: readonly SectionText[] = []

/** A piece in hand: what it looks like, of which steel, when it was last worked on, what it was promised. */
export function PieceCard({ bench, piece, now }: { readonly bench: Bench; readonly piece: Piece; readonly now: Date }) {
  const { route } = useLocation()
  const { job, promise } = piece
  const name = job.piece ?? 'without a name'
  const sections = (job.profile ?? NOTHING).length
  return (
    <li class="piece-card">
      <div class="piece-card-drawing">
        {sections > 0 ? <SmallOutline job={job} {...OUTLINE} /> : <span class="soft">nothing drawn yet</span>}
      </div>
      <div class="piece-card-words">
        <h2>
          <a href={`/piece/${piece.id}/shape`}>{name}</a>
        </h2>
        <p>{steelText(job.steel) || 'no steel chosen yet'}</p>
        {promise !== undefined && (
          <p class="piece-card-promise">
            <ChanceTally chance={promise.chance} />
            <span>
              {promise.zone}: {chanceSays(promise.chance)}
            </span>
          </p>
        )}
        <p class="soft">
          {whenChanged(piece.changed, now)}
          {piece.example === true && ', from the example workshop'}
        </p>
      </div>
      <div class="piece-card-does">
        <button
          type="button"
          class="button quiet"
          onClick={() => route(`/piece/${bench.add({ ...job, piece: `${name}, copy` })}/shape`)}
        >
          Copy<span class="out-of-sight"> {name}</span>
        </button>
        <button type="button" class="button quiet" onClick={() => bench.remove(piece.id)}>
          Put away<span class="out-of-sight"> {name}</span>
        </button>
      </div>
    </li>
  )
}
