import './chance-tally.css'
import { chanceSays } from '#web/forecast/aims.ts'

/** A chance as ten strokes of a tally, the sure ones heavy; where it stood before is marked below. Words stand beside it for who cannot see it. */
export function ChanceTally({ chance, was }: { readonly chance: number; readonly was?: number | undefined }) {
  const heavy = Math.round(chance * 10)
  return (
    <svg class="chance-tally" viewBox="0 0 104 18" role="img" aria-label={chanceSays(chance)}>
      {Array.from({ length: 10 }, (_, i) => (
        <rect key={i} class={i < heavy ? 'sure' : 'open'} x={2 + i * 10} y="1" width="6" height="12" rx="1" />
      ))}
      {was !== undefined && Math.round(was * 10) !== heavy && <path class="was" d={`M${Math.round(was * 10) * 10} 13v5`} />}
    </svg>
  )
}
