import type { Routes } from '#contract/answers.ts'
import { aimWords, bandText, chanceText, hardnessText, inOrder, SEVERITY_WORDS } from '#report/figure-text.ts'
import type { System } from '#units/length.ts'
import { forecastText } from './forecast-text.ts'
import { set, type Terminal } from './terminal.ts'

/** Every route in a few lines. */
export function planSummary({ routes, none }: Routes, { columns, strong }: Terminal): string {
  const lines: string[] = []
  if (none !== undefined)
    lines.push(
      strong('No route in this shop meets every aim.'),
      set(none.because, columns),
      set(`The nearest: ${none.nearest}`, columns),
      '',
    )
  for (const [i, route] of routes.entries()) {
    lines.push(strong(set(`Route ${i + 1}: ${route.says}`, columns)))
    lines.push(
      set(
        `${sentence(chanceText(route.chance))} that every zone meets its aim. ${route.holdsGear ? 'Your gear can hold it.' : 'Your gear cannot hold all of it.'}`,
        columns,
        '  ',
      ),
    )
    for (const { name, aim, tempered_HRC } of route.forecast.zones)
      lines.push(set(`${name}: ${hardnessText(tempered_HRC)} (${bandText(tempered_HRC)}), aim ${aimWords(aim)}`, columns, '  '))
    const grave = inOrder(route.forecast.findings).filter(({ severity }) => severity !== 'note')
    for (const { severity, says } of grave.slice(0, 3)) lines.push(set(`${SEVERITY_WORDS[severity]}: ${says}`, columns, '  '))
    lines.push('')
  }
  return lines.join('\n').trimEnd()
}

/** The routes of a plan: the best in full, the others in a few lines each, and what was left out. */
export function routesText(
  { routes, none, refused }: Routes,
  terminal: Terminal,
  options: { readonly units: System; readonly sources: boolean },
): string {
  const { columns, strong, soft } = terminal
  const lines = [planSummary({ routes, none, refused }, terminal), '']
  const best = routes[0]
  if (best !== undefined)
    lines.push(soft('-'.repeat(columns)), strong('Route 1 in full'), '', forecastText(best.forecast, terminal, options), '')
  if (refused.length > 0) {
    lines.push(strong('Left out on purpose'))
    for (const { says, because } of refused)
      lines.push(set(/[.!?]$/u.test(says) ? `${says} ${sentence(because)}` : `${says}: ${because}`, columns, '- '))
    lines.push('')
  }
  if (best !== undefined)
    lines.push(soft(set('--take 1 --out JOB.yaml writes the job with that route in it; forecast works it out finely.', columns)))
  return lines.join('\n').trimEnd()
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
