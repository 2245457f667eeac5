import { describe, expect, test } from 'vitest'
import { foundAgainstForecast, SCATTER_STYLE } from './found-against-forecast.ts'

const rows = [
  { label: 'hinge', family: 'plain carbon', published: 40, forecast: 42, low: 38, high: 46 },
  { label: 'latch', family: 'high carbon', published: 50, forecast: 60, low: 55, high: 65 },
  { label: 'bolt <1>', family: 'high carbon', published: 60, forecast: 60 },
]
const drawn = foundAgainstForecast({ id: 'gate', title: 'Gates & hinges', unit: 'HRC', rows, logarithmic: false })

function attributes(pattern: RegExp): number[][] {
  return [...drawn.matchAll(pattern)].map((match) => match.slice(1).map(Number))
}

describe('found against forecast', () => {
  test('a figure that is met lies on the diagonal, one that is forecast too hard lies over it', () => {
    const [diagonal] = attributes(/<line x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)" class="same"/gu)
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = diagonal ?? []
    const onLine = (x: number): number => y1 + ((x - x1) * (y2 - y1)) / (x2 - x1)
    const [circle] = attributes(/<circle cx="([\d.]+)" cy="([\d.]+)"/gu)
    expect(circle?.[1]).toBeLessThan(onLine(circle?.[0] ?? 0))
    // Sides of a square are its middle less four.
    const met = attributes(/<rect x="([\d.]+)" y="([\d.]+)" width="8" height="8"/gu)[1]
    expect((met?.[1] ?? 0) + 4).toBeCloseTo(onLine((met?.[0] ?? 0) + 4), 0)
  })

  test('families have shapes and names, a figure outside its band is heavier, and a band is a whisker', () => {
    expect(drawn.match(/<circle/gu)).toHaveLength(2)
    expect(drawn).toContain('>plain carbon</text>')
    expect(drawn.match(/class="mark outside"/gu)).toHaveLength(1)
    expect(drawn.match(/class="whisker"/gu)).toHaveLength(2)
  })

  test('says in words what it shows, safe inside a page', () => {
    expect(drawn).toContain(
      '3 published figures against the forecast of each. Furthest off: latch, published 50, forecast 60 HRC.',
    )
    expect(drawn).toContain('1 of 2 published figures lie outside the band.')
    expect(drawn).toContain('Gates &amp; hinges')
    expect(drawn).not.toContain('<style')
    const alone = foundAgainstForecast({ id: 'gate', title: '', unit: '', rows, logarithmic: false, style: SCATTER_STYLE })
    expect(alone).toContain('<style>')
  })

  test('has decades where figures are of several sizes', () => {
    const wide = [1, 10, 100].map((value) => ({ label: '', published: value, forecast: value }))
    const picture = foundAgainstForecast({ id: 'x', title: '', unit: '', rows: wide, logarithmic: true })
    for (const tick of [1, 3, 10, 30, 100]) expect(picture).toContain(`>${tick}</text>`)
  })
})
