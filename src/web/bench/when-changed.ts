const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS

/** When something was last worked on, as one would say it now; both ISO instants or dates. Days are those of the device's own clock. */
export function whenChanged(changed: string, now: Date, language?: string): string {
  const at = new Date(changed)
  const sinceMs = now.getTime() - at.getTime()
  if (!(sinceMs >= 0)) return dated(at, now, language)
  if (sinceMs < 2 * MINUTE_MS) return 'just now'
  if (sinceMs < HOUR_MS) return `${Math.floor(sinceMs / MINUTE_MS)} minutes ago`
  const days = daysBetween(at, now)
  if (days === 0) return `today, ${clock(at, language)}`
  if (days === 1) return `yesterday, ${clock(at, language)}`
  return dated(at, now, language)
}

function daysBetween(from: Date, to: Date): number {
  const day = (at: Date): number => Date.UTC(at.getFullYear(), at.getMonth(), at.getDate())
  return Math.round((day(to) - day(from)) / (24 * HOUR_MS))
}

function clock(at: Date, language?: string): string {
  return new Intl.DateTimeFormat(language, { hour: '2-digit', minute: '2-digit' }).format(at)
}

function dated(at: Date, now: Date, language?: string): string {
  if (Number.isNaN(at.getTime())) return 'some time ago'
  const year = at.getFullYear() === now.getFullYear() ? {} : { year: 'numeric' as const }
  return new Intl.DateTimeFormat(language, { day: 'numeric', month: 'long', ...year }).format(at)
}
