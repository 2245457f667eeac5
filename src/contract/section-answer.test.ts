import { describe, expect, test } from 'vitest'
import { forecastSchema } from './answers.ts'
import { forecast } from './forecast-answer.ts'

const JOB = {
  piece: 'gate hinge drift',
  steel: { grade: '4140' },
  profile: [
    { shape: 'square', across: '28 mm', length: '90 mm' },
    { shape: 'octagon', across: '24 mm', length: '40 mm' },
  ],
  zones: [{ name: 'face', from: '0 mm', to: '30 mm', aim: '48..56 HRC' }],
  shop: {
    fires: [{ name: 'gas forge', kind: 'gas' }],
    baths: [{ name: 'oil tank', kind: 'medium oil', volume: '40 L', temperature: '50 °C' }],
    ovens: [{ name: 'small oven', max: '260 °C' }],
  },
  process: [
    { do: 'heat', in: 'gas forge', to: '850 °C', hold: '15 min' },
    { do: 'carry', for: '3 s' },
    { do: 'quench', in: 'oil tank', depth: 'whole', for: '4 min', agitation: 'moderate' },
    { do: 'temper', in: 'small oven', at: '230 °C', hold: '1 h', times: 1 },
  ],
}

describe('[GE6] true cross-sections in an answer', () => {
  test('a solved section stands with its round beside it; what was not solved is assumed and said', () => {
    const answer = forecastSchema.parse(forecast(JOB, { grade: 'draft', members: 20 }))
    expect(answer.crossSections).toHaveLength(1)
    const [section] = answer.crossSections!
    expect(section).toMatchObject({ name: 'face', shape: 'square', across_mm: 28 })
    const { corner, face, centre, equivalentRound } = section!
    expect(corner.cooling_800_500_s!).toBeLessThan(face.cooling_800_500_s!)
    expect(face.cooling_800_500_s!).toBeLessThan(centre.cooling_800_500_s!)
    expect(corner.quenched_HRC).toBeGreaterThanOrEqual(centre.quenched_HRC)
    expect(equivalentRound.across_mm).toBeCloseTo(1.05 * 28, 1)
    expect(equivalentRound.corner.cooling_pct).toBeGreaterThan(20)
    expect(Math.abs(equivalentRound.centre.cooling_pct)).toBeLessThan(12)
    const said = answer.assumptions.filter(({ says }) => says.includes('equivalent round')).map(({ says }) => says)
    expect(said).toEqual(['Worked as the equivalent round: octagon.'])
  })

  test('a sketch solves none and assumes all of it', () => {
    const answer = forecast(JOB, { grade: 'sketch' })
    expect(answer.crossSections).toBeUndefined()
    expect(answer.assumptions.map(({ says }) => says)).toContain('Worked as the equivalent round: square, octagon.')
  })
})
