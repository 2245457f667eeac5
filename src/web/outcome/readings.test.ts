import { describe, expect, test } from 'vitest'
import { readAustenite } from './austenite-reading.ts'
import { grindOffMm, skinOfZone } from './grind.ts'
import { softSkin, soundSkin, squareAt } from './outcome.test-data.ts'
import { readSections, sectionsBetween } from './section-reading.ts'
import { readSkin } from './skin-reading.ts'

describe('a skin', () => {
  test('that is soft: how much to grind off, how sure, and why the file deceives', () => {
    const { short, says, deceives } = readSkin(softSkin(), 'metric')
    expect(short).toBe('Skin: grind 0.3 mm off; a file alone deceives')
    expect([grindOffMm(softSkin()), grindOffMm(soundSkin()), deceives]).toEqual([0.3, undefined, true])
    expect(says).toEqual([
      'As hard as underneath from 0.3 mm down; nine in ten such pieces from 0.18 to 0.44 mm.',
      'Right out of the quench a file bites there, and then skates. It feels the outermost 0.08 mm, under 20 HRC, and not the 62 HRC under it: grind the skin off, then judge.',
      '0.03 mm of scale lies on it; carbon is lost to 0.2 mm down.',
    ])
  })

  test('on a thin part is told beside what there is', () => {
    expect(readSkin({ ...softSkin(), thickness_mm: 2.6 }, 'metric').says[0]).toMatch(/It is 2\.6 mm thick there/u)
  })

  test('that is sound: nothing to grind, and the file tells the truth', () => {
    expect(readSkin(soundSkin(), 'metric')).toEqual({
      short: 'Skin: nothing to grind off',
      says: [
        'It is as hard at the surface as underneath.',
        'Right out of the quench a file skates on it.',
        'Hardly any scale, and the carbon is kept.',
      ],
      deceives: false,
    })
  })

  test('is measured in thousandths of an inch, and so may be nothing', () => {
    const skin = softSkin()
    const says = readSkin({ ...skin, grindOff_mm: { ...skin.grindOff_mm, value: 0.1, low: 0, high: 0.2 } }, 'inch').says
    expect(says[0]).toBe('As hard as underneath from 0.004 in down; nine in ten such pieces up to 0.008 in.')
  })

  test('is found by its zone', () => {
    const skin = [softSkin('edge'), softSkin('face')]
    expect(skinOfZone({ skin }, 'face')).toBe(skin[1])
    expect(skinOfZone({ skin }, undefined)).toBeUndefined()
    expect(skinOfZone({}, 'edge')).toBeUndefined()
  })
})

describe('a true section', () => {
  test('by the height where corner and middle are furthest apart, row by row, with what the drawn round hides', () => {
    const reading = readSections([squareAt(10), squareAt(2, 27)], 'metric')
    expect(reading?.short).toBe('Corner 41, face 25, middle 22 HRC')
    expect(reading?.rows).toEqual([
      { at: '2 mm', cells: [{ hrc: '27', from: '31' }, { hrc: '25', from: '26' }, { hrc: '22' }] },
      { at: '10 mm', cells: [{ hrc: '41', from: '45' }, { hrc: '25', from: '26' }, { hrc: '22' }] },
    ])
    expect(reading?.says).toEqual([
      'The aim is held against its corners and faces too.',
      'The pictures show it as a round of 45 mm; as quenched that reads 17 HRC too soft at the corner.',
      'Best estimates, for corners as sharp as drawn.',
    ])
  })

  test('alike all over is said so, also where all of it is under the scale', () => {
    const place = { ...squareAt(1).centre, tempered_HRC: 12 }
    expect(
      readSections([{ ...squareAt(1), corner: place, face: { ...place, tempered_HRC: 15 }, centre: place }], 'metric')?.short,
    ).toBe('Corner, face and middle alike: under 20 HRC')
    expect(readSections([], 'metric')).toBeUndefined()
  })

  test('belongs to the length that it lies on', () => {
    const crossSections = [squareAt(1), squareAt(30)]
    expect(sectionsBetween({ crossSections }, 0, 20)).toEqual([crossSections[0]])
    expect(sectionsBetween({}, 0, 20)).toEqual([])
  })
})

describe('austenite that stayed', () => {
  test('is told where there is enough of it to matter', () => {
    expect(readAustenite(undefined)).toBeUndefined()
    expect(readAustenite({ quenched: 0.12, left: 0.08, fresh: 0 })).toBeUndefined()
    const told = readAustenite({ quenched: 0.2, left: 0.155, fresh: 0 })
    expect(told?.short).toBe('Retained austenite: 16 in 100')
    expect(told?.says[0]).toBe(
      '20 in 100 of it stayed austenite in the quench, which is soft; 16 in 100 is left after the tempers.',
    )
    expect(readAustenite({ quenched: 0.2, left: 0.2, fresh: 0 })?.says[0]).toMatch(/and stays so\.$/u)
  })

  test('that turned at the end of the last temper asks for one more', () => {
    const told = readAustenite({ quenched: 0.2, left: 0, fresh: 0.18 })
    expect(told?.short).toBe('Fresh and untempered: 18 in 100')
    expect(told?.says.join(' ')).toMatch(/none is left after the tempers\. 18 in 100 .* temper once more/u)
  })
})
