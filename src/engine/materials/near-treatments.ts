import type { Grade } from './catalogue.ts'
import { nearGrades } from './steel-names.ts'

/**
 * Grades whose treatment may stand in where the catalogue has none, beside those that share a name: neighbours in carbon and alloy.
 * Common practice, no source; every figure that is lent says so.
 */
const NEIGHBOURS: { readonly [grade: string]: readonly string[] } = {
  '1035': ['1040', '1045'],
  '1040': ['1045'],
  '1055': ['1060'],
  '1070': ['1075', '1080'],
  '1075': ['1080'],
  '1084': ['1080'],
  '1137': ['1040', '1045'],
  '1141': ['1045'],
  '1144': ['1045'],
  '1541': ['1045'],
  '1566': ['1060'],
  '4142': ['4140'],
  '4150': ['4140'],
  '4330V': ['4340'],
  '5130': ['5140'],
  '5140': ['41Cr4'],
  '5150': ['5160'],
  '8640': ['8740', '4140'],
  '8650': ['8660', '8640'],
  '8740': ['8640', '4140'],
  '9255': ['55Si7', '9260'],
  '54SiCr6': ['9260', '55Si7'],
  '55NiCrMoV7': ['L6'],
  '115CrV3': ['W1', 'W2'],
  C75S: ['1075', '1080'],
  C80U: ['1080', 'W1'],
  C105U: ['W1', '1095'],
}

/** Ids of the grades that may lend a treatment to `grade`, the nearest first. */
export function lendersTo(grade: Grade): readonly string[] {
  const sameName = nearGrades(grade).map(({ gradeId }) => gradeId)
  return [...new Set([...sameName, ...(NEIGHBOURS[grade.id] ?? [])])]
}
