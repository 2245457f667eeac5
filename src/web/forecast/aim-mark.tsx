import type { AimState } from './aims.ts'

/** How an aim stands, by shape: a filled disc with a tick, a half-filled disc, an open square struck through. */
export function AimMark({ state, xPx, yPx }: { readonly state: AimState; readonly xPx: number; readonly yPx: number }) {
  return (
    <g transform={`translate(${xPx} ${yPx})`} class="aim-mark" stroke="currentColor" stroke-width="2" fill="none">
      {state === 'met' && <circle r="8" fill="currentColor" />}
      {state === 'met' && <path d="M-4 0 -1 3.5 4.5 -3" stroke="var(--ground)" stroke-width="2.25" />}
      {state === 'doubtful' && <circle r="7.5" fill="var(--ground)" />}
      {state === 'doubtful' && <path d="M0 -7.5A7.5 7.5 0 0 0 0 7.5Z" fill="currentColor" stroke="none" />}
      {state === 'missed' && <rect x="-7" y="-7" width="14" height="14" fill="var(--ground)" />}
      {state === 'missed' && <path d="M-7 7 7 -7" />}
    </g>
  )
}
