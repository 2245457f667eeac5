import { expect, test } from 'vitest'
import { heatSetting, holdSetting, lengthSetting, volumeSetting, walkSetting } from './remedy-edits-settings.ts'

test.each([
  [1078.9, 'metric', 'nearest', '805 °C'],
  [1078.9, 'metric', 'up', '810 °C'],
  [1078.15, 'metric', 'down', '805 °C'],
  [1078.9, 'inch', 'nearest', '1480 °F'],
  [1078.9, 'inch', 'up', '1490 °F'],
] as const)('%f K is set to %s %s: %s', (kelvin, units, way, text) => {
  expect(heatSetting(kelvin, units, way).text).toBe(text)
})

test.each([
  [0.0612, 'metric', 'up', '62 mm'],
  [0.0612, 'metric', 'down', '61 mm'],
  [0.06, 'metric', 'up', '60 mm'],
  [0.0027, 'metric', 'nearest', '2.5 mm'],
  [0.0027, 'inch', 'up', '1/8 in'],
  [0.0612, 'inch', 'nearest', '2-7/16 in'],
  [0, 'inch', 'nearest', '0 in'],
] as const)('%f m is %s %s: %s', (metres, units, way, text) => {
  const { si, text: set } = lengthSetting(metres, units, way)
  expect(set).toBe(text)
  expect(Math.abs(si - metres)).toBeLessThan(0.0016)
})

test('holds are whole minutes and never less, walks never more, tanks never smaller', () => {
  expect(holdSetting(901).text).toBe('16 min')
  expect(holdSetting(900).text).toBe('15 min')
  expect(holdSetting(7300).text).toBe('2 h 15 min')
  expect(walkSetting(4.8).text).toBe('4.5 s')
  expect(walkSetting(9.7).text).toBe('9 s')
  expect(volumeSetting(0.0213, 'metric').text).toBe('25 L')
  expect(volumeSetting(0.0213, 'inch').text).toBe('6 gal')
})
