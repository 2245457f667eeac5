/** Whether an aim is met, by shape: a tick, or an open ring with a stroke. */
export function MetMark({ met }: { readonly met: boolean }) {
  return (
    <svg class="proof-mark" viewBox="0 0 20 20" role="img" aria-label={met ? 'met' : 'missed'}>
      {met ? (
        <path d="M3 11 8 16 17 4" fill="none" stroke="currentColor" stroke-width="2.5" />
      ) : (
        <path d="M4 16 16 4M10 2A8 8 0 1 1 9.9 2Z" fill="none" stroke="currentColor" stroke-width="2" />
      )}
    </svg>
  )
}
