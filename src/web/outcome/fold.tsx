import './outcome.css'
import type { ComponentChildren } from 'preact'

/** One line that matters, with the rest of it a tap away. */
export function Fold({ short, children }: { readonly short: string; readonly children: ComponentChildren }) {
  return (
    <details class="outcome-fold">
      <summary>{short}</summary>
      <div class="outcome-more">{children}</div>
    </details>
  )
}
