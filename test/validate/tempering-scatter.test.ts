import { expect, test } from 'vitest'
import { TEMPERING_SCATTER } from '#engine/metallurgy/tempering-scatter.ts'
import { temperingScatter } from './tempering-scatter.ts'

/** Kinds of which this tree holds enough to measure them; with fewer steels the width is that of all kinds together. */
const FEWEST_STEELS = 3

test('[TM9] the widths of tempering bands are those that left-out tables ask for', () => {
  const measured = temperingScatter(false)
  expect(measured.length).toBeGreaterThan(5)
  for (const { known, kind, steels, sigmaHrc } of measured) {
    if (steels < FEWEST_STEELS) continue
    const stored = TEMPERING_SCATTER[known][kind]
    expect(stored - sigmaHrc, `${known}, ${kind}: ${stored} stored, ${sigmaHrc.toFixed(2)} measured`).toBeGreaterThan(-0.4)
    expect(stored - sigmaHrc, `${known}, ${kind}: ${stored} stored, ${sigmaHrc.toFixed(2)} measured`).toBeLessThan(0.6)
  }
})
