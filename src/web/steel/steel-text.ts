import type { SteelText } from '#web/job/job-text.ts'

/** A steel in one line, as one would write it on the bar: `4140`, `C 0.4, Mn 0.85`, `unknown`. */
export function steelText(steel: SteelText | undefined): string {
  if (steel === undefined) return ''
  if (steel.grade !== undefined) return steel.grade
  if (steel.analysis !== undefined)
    return Object.entries(steel.analysis)
      .map(([element, share]) => `${element} ${share}`)
      .join(', ')
  return 'unknown'
}

const ANALYSIS = /^[A-Z][a-z]?\s*[=:\s]\s*[\d.]+\s*%?(?:\s*[,;]\s*[A-Z][a-z]?\s*[=:\s]\s*[\d.]+\s*%?)*$/u

/** What was typed of a steel: a name, an analysis (`C 0.40, Mn 0.85` or `C=0.40; Mn=0.85`), or `unknown`. */
export function steelTyped(typed: string): SteelText {
  const text = typed.trim()
  if (/^(?:unknown|\?|don'?t know)$/iu.test(text)) return { unknown: {} }
  if (!ANALYSIS.test(text)) return { grade: text }
  const shares = text.split(/[,;]/u).map((part): [string, number] => {
    const [, element = '', share = ''] = /([A-Z][a-z]?)\s*[=:\s]\s*([\d.]+)/u.exec(part) ?? []
    return [element, Number(share)]
  })
  return { analysis: Object.fromEntries(shares) }
}
