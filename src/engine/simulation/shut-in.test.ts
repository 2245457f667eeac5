import { describe, expect, test } from 'vitest'
import type { ProcessStep } from './process.ts'
import type { Cooled, HeatRecord } from './records.ts'
import { sampleJob } from './sample-job.ts'
import { treat } from './treatment.ts'

const anneal = (change: Partial<Extract<ProcessStep, { do: 'anneal' }>> = {}): Cooled => {
  const step: ProcessStep = { do: 'anneal', in: 'gas forge', toK: 1133, holdS: 600, ...change }
  const { records } = treat(sampleJob({ process: [step] }), { grade: 'draft', traceAtM: 0.01 })
  const { cooled } = records[0] as HeatRecord
  if (cooled === undefined) throw new Error('nothing is told of the cooling')
  return cooled
}

describe('[SH10] cooling after an anneal', () => {
  const air = anneal({ coolIn: 'still air' })
  const vermiculite = anneal({ coolIn: 'vermiculite' })
  const ashes = anneal({ coolIn: 'ashes' })
  const furnace = anneal()

  test('goes ever more slowly from air to ashes, to vermiculite, to a shut furnace', () => {
    const s = [air, ashes, vermiculite, furnace].map(({ slowestS }) => slowestS ?? Number.NaN)
    expect(s[1]! / s[0]!).toBeGreaterThan(3)
    expect(s[2]!).toBeGreaterThan(s[1]!)
    expect(s[3]!).toBeGreaterThan(s[2]!)
    expect(vermiculite.coldS).toBeGreaterThan(10 * air.slowestS!)
  })

  test('leaves the softer steel the slower it goes', () => {
    const hv = [air, ashes, vermiculite, furnace].map(({ softestHv }) => softestHv ?? Number.NaN)
    expect(hv).toEqual([...hv].sort((a, b) => b - a))
    expect(hv[0]! - hv[3]!).toBeGreaterThan(20)
  })

  test('a rate is that of a furnace', () => {
    expect(anneal({ coolKPerS: 40 / 3600 })).toMatchObject({ in: 'furnace' })
    expect(anneal({ coolKPerS: 40 / 3600 }).coldS).toBeLessThan(furnace.coldS)
  })

  test('what was never austenite has no hardness to tell', () => {
    expect(anneal({ toK: 900, coolIn: 'ashes' }).softestHv).toBeUndefined()
  })
})
