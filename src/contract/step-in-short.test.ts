import { expect, test } from 'vitest'
import { forecastSchema } from './answers.ts'
import { forecast } from './forecast-answer.ts'
import { glowAt } from './glow-colours.ts'

const JOB = {
  piece: 'gauge pin',
  struck: false,
  steel: { grade: 'O1' },
  profile: [{ shape: 'round', across: '10 mm', length: '30 mm' }],
  shop: {
    fires: [{ name: 'hearth', kind: 'coal' }],
    baths: [{ name: 'pot', kind: 'medium oil', volume: '10 L', temperature: '50 °C' }],
    ovens: [{ name: 'oven', max: '300 °C', reads: '8 °C low' }],
  },
  process: [
    { do: 'normalise', in: 'hearth', to: '870 °C', hold: '4 min', times: 2 },
    { do: 'heat', in: 'hearth', to: '800 °C', hold: '15 min', part: { from: '0 mm', to: '20 mm' } },
    { do: 'carry', for: '2 s' },
    { do: 'quench', in: 'pot', depth: '15 mm', for: '2 min' },
    { do: 'temper', in: 'oven', at: '200 °C', hold: '1 h', times: 3 },
  ],
}

test('a step in short says what is done, how often, and every caution in fewer words', () => {
  const { steps } = forecastSchema.parse(forecast(JOB, { grade: 'draft', members: 2 }))
  const [normalise, heat, carry, quench, temper] = steps.map(({ inShort }) => inShort)
  expect(normalise?.does).toBe('870 °C, hold 4 min, air to black and cold; twice')
  expect(steps[0]).toMatchObject({ times: 2, says: expect.stringContaining('Twice in all.') })
  expect(heat?.does).toBe('800 °C, 0 mm to 20 mm of it, hold 15 min')
  expect(heat?.look).toMatch(/^outside up in \d+ s, middle .*; dark cherry in shade$/u)
  expect(steps[1]).not.toHaveProperty('times')
  expect(carry?.does).toBe('at the quench in 2 s')
  expect(quench).toMatchObject({
    does: '15 mm deep, up and down, 2 min',
    look: expect.stringMatching(/^bath from 50 °C to \d+ °C$/u),
  })
  expect(temper?.does).toMatch(/^200 °C \(truly 208 °C\), 60 min once the middle is up; 3 times$/u)
  for (const { cautions, inShort } of steps) {
    expect(inShort?.cautions).toHaveLength(cautions.length)
    expect(cautions.length).toBeGreaterThan(0)
  }
})

test.each([
  [400, undefined],
  [500, 'first red'],
  [800, 'dark cherry'],
  [855, 'dark cherry to cherry'],
  [945, 'cherry to bright red'],
  [1310, 'white'],
  [1400, undefined],
])('%f degC glows as %s', (celsius, says) => {
  expect(glowAt(celsius + 273.15)).toBe(says)
})
