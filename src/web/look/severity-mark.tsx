import type { Finding } from '#contract/answers.ts'

const WORDS = { stop: 'Stop', warn: 'Take care', note: 'Note' } as const

/** How grave a finding is, by shape and weight: a filled square on its corner, a heavy triangle, a thin ring. */
export function SeverityMark({ severity }: { readonly severity: Finding['severity'] }) {
  return (
    <svg class="severity" viewBox="0 0 22 22" role="img" aria-label={WORDS[severity]}>
      {severity === 'stop' && <path d="M11 1 21 11 11 21 1 11Z" fill="currentColor" />}
      {severity === 'stop' && <path d="M7 11H15" stroke="var(--ground)" stroke-width="3" />}
      {severity === 'warn' && <path d="M11 3 20 19H2Z" fill="none" stroke="currentColor" stroke-width="2.5" />}
      {severity === 'warn' && <path d="M11 8V13M11 15.2V17.2" stroke="currentColor" stroke-width="2.2" />}
      {severity === 'note' && <circle cx="11" cy="11" r="8" fill="none" stroke="currentColor" stroke-width="1.5" />}
      {severity === 'note' && <circle cx="11" cy="11" r="2" fill="currentColor" />}
    </svg>
  )
}
