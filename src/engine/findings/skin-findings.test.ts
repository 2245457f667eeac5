import { describe, expect, test } from 'vitest'
import { sampleAccount, spread } from './sample-account.ts'
import { fileSays, skinFindings } from './skin-findings.ts'
import { IN_METRIC } from './wording.ts'

const told = (grindOffM: number, halfThicknessM: number) =>
  skinFindings(sampleAccount({ softSkin: { grindOffM, halfThicknessM } }), IN_METRIC)

describe('a spoiled skin', () => {
  test('is told with how much to grind off, in strokes of a twentieth of a millimetre, and how the fire was taken', () => {
    const [found] = told(0.00021, 0.007)
    expect(found).toMatchObject({ severity: 'note', where: { zone: 'point' }, figures: { grindOffM: 0.00025 } })
    expect(found?.remedy).toMatch(/^Grind 0\.25 mm off/u)
    expect(found?.because).toMatch(/closed forge is taken as in open air/u)
    expect(found?.because).toMatch(/at the anvil/u)
  })

  test('on a thin part is a warning: little sound steel is left', () => {
    expect(told(0.00021, 0.0006)[0]).toMatchObject({ severity: 'warn' })
  })

  test('thinner than a file judges says nothing', () => {
    expect(told(0.00006, 0.007)).toEqual([])
  })
})

test.each([
  [30, 64, 'a file bites there, and then skates'],
  [30, 58, 'a file bites there, and then drags'],
  [58.5, 64, 'a file drags on it'],
  [63, 64, 'a file skates on it'],
  [20, 45, 'a file bites deep at first, and less further in'],
  [44, 45, 'a file bites, in the skin and under it'],
])('skin of %f HRC over steel of %f HRC: %s', (skin, under, says) => {
  const at = { ...sampleAccount().outlook.along[0]!.skin, quenchedHrc: spread(under) }
  expect(fileSays({ filedHrc: spread(skin), at })).toBe(says)
})
