import { expect, test } from 'vitest'
import type { HeatRecord } from '#engine/simulation/records.ts'
import { sampleJob } from '#engine/simulation/sample-job.ts'
import { treat } from '#engine/simulation/treatment.ts'

/** Heating time of the upper end of each class of thickness [mm, h]: US Navy, NAVEDTRA 14250, table 2-2, public domain (figures recalled). */
const PUBLISHED = [
  [25.4, 0.75],
  [76.2, 1.75],
  [127, 2.75],
] as const

// The table is for loaded furnaces that are brought up with the work; one piece in a muffle that holds its heat must be quicker, not many times so.
test.each(PUBLISHED)('[SH11] %f mm in a muffle is up within a half to a quarter of the furnace table', (mm, hours) => {
  const acrossM = mm / 1000
  const job = sampleJob({
    profile: { sections: [{ shape: 'round', from: { acrossM }, to: { acrossM }, lengthM: 3 * acrossM }] },
    zones: [],
    probes: [],
    shop: { ...sampleJob().shop, fires: [{ name: 'kiln', kind: 'muffle' }] },
    process: [{ do: 'heat', in: 'kiln', toK: 1118, holdS: 3600, even: true }],
  })
  const { outsideUpS, middleUpS } = treat(job, { grade: 'sketch', traceAtM: acrossM }).records[0] as HeatRecord
  const share = ((outsideUpS ?? Number.NaN) + (middleUpS ?? Number.NaN)) / 3600 / hours
  expect(share).toBeGreaterThan(0.22)
  expect(share).toBeLessThan(0.6)
})
