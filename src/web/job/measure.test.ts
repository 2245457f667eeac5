import { describe, expect, test } from 'vitest'
import type { JobText } from './job-text.ts'
import { type Measure, metresAt, typedAt, withMetres, withTyped } from './measure.ts'

const job: JobText = {
  profile: [
    { shape: 'flat', from: '5 x 16 mm', to: '19 x 22 mm', length: '60 mm' },
    { shape: 'round', across: '7/8 in', length: '110 mm', fillet: '3 mm' },
    { shape: 'round', from: '22 mm', to: '16 mm', length: '12 mm', bore: { across: '6 mm', depth: '20 mm' } },
  ],
  zones: [
    { name: 'edge', from: '0 mm', to: '40 mm', aim: '54..58 HRC' },
    { name: 'struck end', from: '165 mm', to: '182 mm', aim: 'at most 40 HRC' },
  ],
  probes: [{ x: '100 mm' }],
  process: [
    { do: 'heat', in: 'forge', to: '945 °C', part: { from: '0 mm', to: '182 mm' } },
    { do: 'quench', in: 'oil', depth: '170 mm' },
  ],
}

describe('one figure of the shape', () => {
  test.each<[Measure, string | undefined]>([
    [{ of: 'across', section: 0, end: 'from' }, '5 mm'],
    [{ of: 'width', section: 0, end: 'to' }, '22 mm'],
    [{ of: 'across', section: 1, end: 'both' }, '7/8 in'],
    [{ of: 'across', section: 1, end: 'to' }, '7/8 in'],
    [{ of: 'across', section: 2, end: 'both' }, undefined],
    [{ of: 'fillet', section: 0 }, undefined],
    [{ of: 'bore-depth', section: 2 }, '20 mm'],
    [{ of: 'zone-to', zone: 1 }, '182 mm'],
  ])('%o stands as typed', (measure, typed) => {
    expect(typedAt(job, measure)).toBe(typed)
  })

  test('what is typed stands as typed, and nothing else changes', () => {
    const next = withTyped(job, { of: 'across', section: 1, end: 'both' }, '15/16"')
    expect(next.profile?.[1]?.across).toBe('15/16"')
    expect(next.profile?.[0]).toBe(job.profile?.[0])
    expect(next.zones).toBe(job.zones)
  })

  test('an even section dragged at one end tapers, and is even again when both ends agree', () => {
    const taper = withMetres(job, { of: 'across', section: 1, end: 'to' }, 0.02, 'metric')
    expect(taper.profile?.[1]).toMatchObject({ from: '7/8 in', to: '20 mm' })
    expect(taper.profile?.[1]?.across).toBeUndefined()
    const even = withTyped(taper, { of: 'across', section: 1, end: 'from' }, '20 mm')
    expect(even.profile?.[1]).toMatchObject({ across: '20 mm' })
    expect(even.profile?.[1]?.from).toBeUndefined()
  })

  test('one side of a flat changes, the other stays as typed', () => {
    expect(withMetres(job, { of: 'across', section: 0, end: 'from' }, 0.0055, 'metric').profile?.[0]?.from).toBe('5.5 x 16 mm')
    expect(withMetres(job, { of: 'width', section: 0, end: 'to' }, 0.0254, 'inch').profile?.[0]?.to).toBe('19 mm x 1 in')
    expect(withTyped(job, { of: 'across', section: 0, end: 'from' }, '1/4 x 3/4 in').profile?.[0]?.from).toBe('1/4 x 3/4 in')
  })

  test('a fillet of nothing is a sharp corner', () => {
    expect(withTyped(job, { of: 'fillet', section: 1 }, '0 mm').profile?.[1]).not.toHaveProperty('fillet')
    expect(withTyped(job, { of: 'fillet', section: 1 }, '').profile?.[1]).not.toHaveProperty('fillet')
    expect(metresAt(job, { of: 'fillet', section: 2 })).toBe(0)
  })

  test('the same length changes nothing, whatever it was typed in', () => {
    expect(withMetres(job, { of: 'across', section: 1, end: 'both' }, 0.022225, 'metric')).toBe(job)
  })
})

describe('what stands on the metal goes with it', () => {
  test('a longer section carries zones and points beyond it along', () => {
    const next = withMetres(job, { of: 'length', section: 1 }, 0.12, 'metric')
    expect(next.zones?.[1]).toMatchObject({ from: '175 mm', to: '192 mm' })
    expect(next.zones?.[0]).toBe(job.zones?.[0])
    expect(next.probes).toBe(job.probes)
    expect(withMetres(job, { of: 'length', section: 0 }, 0.07, 'metric').probes?.[0]?.x).toBe('110 mm')
  })

  test('there and back from the same document is the same document', () => {
    const there = withMetres(job, { of: 'length', section: 1 }, 0.06, 'metric')
    expect(there.zones?.[1]).toMatchObject({ from: '115 mm', to: '132 mm' })
    expect(withMetres(job, { of: 'length', section: 1 }, 0.11, 'metric')).toBe(job)
  })

  test('a zone within a shortened section ends with it; treatment reaches no further than the piece', () => {
    const next = withMetres(job, { of: 'length', section: 0 }, 0.03, 'metric')
    expect(next.zones?.[0]?.to).toBe('30 mm')
    expect(next.process?.[0]).toMatchObject({ part: { from: '0 mm', to: '152 mm' } })
    expect(next.process?.[1]).toMatchObject({ depth: '152 mm' })
  })
})
