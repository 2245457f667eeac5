import { describe, expect, test } from 'vitest'
import { bodyOfText, trueRadiusMm } from '#web/drawing/body.ts'
import type { SectionText } from '#web/job/job-text.ts'
import { carryOver } from './carry-over.ts'

const body = (...profile: SectionText[]) => bodyOfText({ profile })
const flat: SectionText = { shape: 'flat', from: '4 x 20 mm', to: '10 x 20 mm', length: '40 mm' }
const round: SectionText = { shape: 'round', across: '20 mm', length: '60 mm' }

describe('a field on its own drawing', () => {
  test('fills the true outline: the skin of the equivalent round lies on the edge', () => {
    const chisel = body(flat, round)
    const carry = carryOver(chisel, chisel)
    const [, edgeMm] = carry(20, chisel.sections[0]!.equivalentMm[0] / 4 + chisel.sections[0]!.equivalentMm[1] / 4)
    expect(edgeMm).toBeCloseTo(3.5)
    expect(carry(70, 10)).toEqual([70, 10])
    expect(carry(70, 5)).toEqual([70, 5])
  })

  test('is stretched as the drawing says', () => {
    const chisel = body(flat, round)
    const carry = carryOver(chisel, chisel)
    for (const xMm of [0, 10, 25, 39, 41, 100]) expect(carry(xMm, 2)[1]).toBeCloseTo(trueRadiusMm(chisel, xMm, 2))
  })
})

describe('a field on a drawing that has moved on', () => {
  test('each section is stretched onto what it has become', () => {
    const before = body({ ...round, length: '40 mm' }, { ...round, across: '10 mm' })
    const after = body({ ...round, length: '50 mm', across: '30 mm' }, { ...round, across: '10 mm' })
    const carry = carryOver(before, after)
    expect(carry(20, 10)).toEqual([25, 15])
    expect(carry(70, 5)).toEqual([80, 5])
  })

  test('with a section more or less, the whole length is stretched', () => {
    const before = body(round)
    const after = body(round, round)
    expect(carryOver(before, after)(30, 4)).toEqual([60, 4])
  })
})
