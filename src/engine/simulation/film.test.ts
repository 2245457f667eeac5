import { describe, expect, test } from 'vitest'
import { type Film, FilmRecorder, instantsWanted } from './film.ts'
import { SAMPLE_HEAT, SAMPLE_QUENCH, SAMPLE_TEMPER, SAMPLE_WALK, sampleJob } from './sample-job.ts'
import { treat } from './treatment.ts'

const DRAFT = { grade: 'draft', traceAtM: 0.045 } as const
const process = [SAMPLE_HEAT, SAMPLE_WALK, { ...SAMPLE_QUENCH, depthM: 0.03 }, { ...SAMPLE_TEMPER, times: 2 }] as const
const job = sampleJob({ process })
const filmed = treat(job, { ...DRAFT, filmed: true })
const film = filmed.film as Film

/** Temperature of a node at any time, on a straight line between the instants about it. */
function filmK({ timeS, temperatureK }: Film, node: number, atS: number): number {
  const after = timeS.findIndex((s) => s >= atS)
  if (timeS[after] === atS || after === 0) return temperatureK[after]![node]!
  const share = (atS - timeS[after - 1]!) / (timeS[after]! - timeS[after - 1]!)
  return temperatureK[after - 1]![node]! + share * (temperatureK[after]![node]! - temperatureK[after - 1]![node]!)
}

describe('a filmed treatment', () => {
  test('comes to the same bits as one without a film', () => {
    const plain = treat(job, DRAFT)
    expect(plain.film).toBeUndefined()
    expect(filmed.state).toEqual(plain.state)
    expect(filmed.records).toEqual(plain.records)
    expect(filmed.trace).toEqual(plain.trace)
  })

  test('has instants of every step, in order, with an instant at every start and end', () => {
    const { timeS, step } = film
    for (let i = 1; i < timeS.length; i++) {
      expect(timeS[i]!).toBeGreaterThanOrEqual(timeS[i - 1]!)
      expect(step[i]! - step[i - 1]!).toBeGreaterThanOrEqual(0)
    }
    for (const { step: index, startS, endS } of filmed.records) {
      const own = timeS.filter((_, i) => step[i] === index)
      expect(own.length).toBeGreaterThanOrEqual(6)
      expect(own[0]!).toBeCloseTo(startS, 6)
      expect(own.some((s) => Math.abs(s - endS) < 1e-6)).toBe(true)
    }
    expect(timeS[0]).toBe(0)
    expect(timeS[timeS.length - 1]!).toBeCloseTo(filmed.records[3]!.endS, 6)
  })

  test('keeps to what was wanted of each step', () => {
    const most = instantsWanted(process, filmed.body.mesh.xM.length)
    most.forEach((wanted, index) => {
      const rounds = index === 3 ? 2 : 1
      expect(film.step.filter((step) => step === index).length).toBeLessThanOrEqual(rounds * wanted + 1)
    })
  })

  test('agrees with the trace of skin and middle, which is thinned by itself', () => {
    const { trace, body } = filmed
    const skin = nearestTo(trace.skinK, trace.timeS)
    const centre = nearestTo(trace.centreK, trace.timeS)
    expect(body.mesh.depthM[skin.node]).toBe(0)
    expect(body.mesh.depthM[centre.node]!).toBeGreaterThan(0.005)
    // Straight lines between 64 instants of a quench: a few kelvin off where the skin falls by 200 K/s.
    expect(skin.worstK).toBeLessThan(8)
    expect(centre.worstK).toBeLessThan(4)
  })

  test('the bath rises up the piece to its line, and is gone in the air', () => {
    const of = (index: number): number[] => film.levelM.filter((_, i) => film.step[i] === index)
    expect(of(0).every(Number.isNaN)).toBe(true)
    expect(of(3).every(Number.isNaN)).toBe(true)
    const wet = of(2).filter((level) => !Number.isNaN(level))
    expect(wet[0]).toBe(0)
    expect(Math.max(...wet)).toBeCloseTo(0.03, 9)
    for (let i = 1; i < wet.length; i++) expect(wet[i]!).toBeGreaterThanOrEqual(wet[i - 1]!)
    const lastWet = film.levelM.findLastIndex((level) => !Number.isNaN(level))
    expect(film.timeS[lastWet]!).toBeCloseTo(filmed.records[2]!.endS, 6)
    expect(Number.isNaN(film.levelM[lastWet + 1]!)).toBe(true)
  })

  test('the second round of a temper is the first again', () => {
    const own = film.timeS.flatMap((_, i) => (film.step[i] === 3 ? [i] : []))
    const half = own.length / 2
    expect(Number.isInteger(half)).toBe(true)
    for (let k = 0; k < half; k++) {
      const [first, second] = [own[k]!, own[k + half]!]
      expect(film.temperatureK[second]).toEqual(film.temperatureK[first])
      expect(film.timeS[second]! - film.timeS[first]!).toBeCloseTo(film.timeS[own[half]!]! - film.timeS[own[0]!]!, 6)
    }
  })

  /** The node whose film goes most nearly with a trace, and how far off it is at its worst. */
  function nearestTo(traceK: readonly number[], timeS: readonly number[]): { node: number; worstK: number } {
    let best = { node: -1, worstK: Number.POSITIVE_INFINITY }
    const at = timeS.flatMap((s, i) => (s <= film.timeS[film.timeS.length - 1]! ? [i] : []))
    for (let node = 0; node < filmed.body.mesh.xM.length; node++) {
      let worstK = 0
      for (const i of at) {
        worstK = Math.max(worstK, Math.abs(traceK[i]! - filmK(film, node, timeS[i]!)))
        if (worstK > best.worstK) break
      }
      if (worstK < best.worstK) best = { node, worstK }
    }
    return best
  }
})

describe('the recorder', () => {
  test('keeps the instants of a bend, and those of a straight line in the logarithm of time', () => {
    const recorder = new FilmRecorder([20])
    for (let i = 0; i <= 3000; i++) recorder.add(0, i, [i < 100 ? 1100 - 8 * i : 300])
    recorder.endStep(0, 3000, [300], 1, 0)
    const { timeS } = recorder.film()
    expect(timeS.length).toBeLessThanOrEqual(20)
    expect(timeS.some((s) => Math.abs(s - 100) <= 1)).toBe(true)
    expect(timeS[0]).toBe(0)
    expect(timeS[timeS.length - 1]).toBe(3000)
    expect(timeS.filter((s) => s > 200 && s < 3000).length).toBeGreaterThanOrEqual(3)
  })

  test('a step in which nothing was solved has its start and its end', () => {
    const recorder = new FilmRecorder([20, 20])
    recorder.endStep(0, 300, [290, 291], 1, 0)
    recorder.add(1, 300, [290, 291])
    recorder.add(1, 310, [280, 281])
    recorder.endStep(1, 310, [280, 281], 1, 0)
    const { timeS, step, temperatureK } = recorder.film()
    expect(timeS).toEqual([0, 300, 300, 310])
    expect(step).toEqual([0, 0, 1, 1])
    expect(Array.from(temperatureK[3]!)).toEqual([280, 281])
  })

  test('many rounds on a fine mesh are kept few each, so that the film stays of bearable size', () => {
    const long = [{ ...SAMPLE_TEMPER, times: 4 }, SAMPLE_HEAT, SAMPLE_QUENCH, { ...SAMPLE_TEMPER, times: 3 }]
    const nodes = 4000
    const wanted = instantsWanted(long, nodes)
    const all = wanted.reduce((sum, most, i) => sum + most * (i === 0 ? 4 : i === 3 ? 3 : 1), 0)
    expect(4 * nodes * all).toBeLessThan(3.4e6)
    for (const most of wanted) expect(most).toBeGreaterThanOrEqual(6)
  })
})
