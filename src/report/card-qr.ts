import { encode } from 'uqr'
import type { CardFormat } from './card-sizes.ts'
import { element } from './svg.ts'

/** White around the code that readers need, in modules (ISO/IEC 18004). */
const QUIET = 4
/** A smaller module is more than a phone held over a sooty card can be asked for. */
const LEAST_MODULE_MM = 0.33

export interface CardCode {
  readonly sideMm: number
  readonly moduleMm: number
  readonly version: number
  readonly correction: 'M' | 'L'
  readonly svg: string
}

/** The link as a code of dark and light modules in a square of at most `roomMm`; or the side it would need there [mm]. */
export function cardCode(link: string, roomMm: number, format: CardFormat): CardCode | { readonly needsMm: number } {
  let least = Number.POSITIVE_INFINITY
  for (const correction of ['M', 'L'] as const) {
    const code = encoded(link, correction)
    if (code === undefined) continue
    const modules = code.size + 2 * QUIET
    least = Math.min(least, modules * LEAST_MODULE_MM)
    const moduleMm = Math.min(format.mostModuleMm, roomMm / modules)
    if (moduleMm < (correction === 'M' ? format.moduleForM : LEAST_MODULE_MM)) continue
    const sideMm = modules * moduleMm
    return { sideMm, moduleMm, version: code.version, correction, svg: drawn(code.data, sideMm) }
  }
  return { needsMm: least }
}

function encoded(link: string, ecc: 'M' | 'L'): ReturnType<typeof encode> | undefined {
  try {
    return encode(link, { ecc, border: 0 })
  } catch {
    // More than the largest code holds: uqr says so by throwing, and there is nothing else it can refuse in a text.
    return undefined
  }
}

function drawn(rows: readonly (readonly boolean[])[], sideMm: number): string {
  const modules = rows.length + 2 * QUIET
  const dark = rows.flatMap((row, y) =>
    row.flatMap((on, x) => {
      if (!on || row[x - 1] === true) return []
      const end = row.indexOf(false, x)
      return [`M${x + QUIET} ${y + QUIET}h${(end < 0 ? row.length : end) - x}v1H${x + QUIET}z`]
    }),
  )
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'qw-code',
      role: 'img',
      'aria-label': 'code that opens this plan',
      viewBox: `0 0 ${modules} ${modules}`,
      style: `width:${Math.round(sideMm * 100) / 100}mm;height:${Math.round(sideMm * 100) / 100}mm`,
      'shape-rendering': 'crispEdges',
    },
    element('path', { d: `M0 0h${modules}v${modules}H0z`, fill: '#fff' }),
    element('path', { d: dark.join(''), fill: '#000' }),
  )
}
