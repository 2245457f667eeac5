import { describe, expect, test } from 'vitest'
import { jsonSchemaOf, SCHEMA_NAMES } from './json-schemas.ts'
import { InputProblems } from './problems.ts'

describe('JSON Schemas', () => {
  test.each(SCHEMA_NAMES)('%s stands by itself', (name) => {
    const schema = jsonSchemaOf(name)
    expect(schema.$schema).toContain('2020-12')
    expect(schema.type).toBe('object')
    expect(schema.additionalProperties).toBe(false)
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema)
  })

  test('the job says how quantities are written', () => {
    const properties = jsonSchemaOf('job').properties as {
      profile: { items: { properties: { across: { pattern: string; examples: string[] } } } }
    }
    const { across } = properties.profile.items.properties
    expect(across.examples).toContain('5 x 12 mm')
    for (const size of [...across.examples, '7/8"', '½ in']) expect(size).toMatch(new RegExp(across.pattern, 'u'))
    for (const size of ['22', 'mm', 'wide']) expect(size).not.toMatch(new RegExp(across.pattern, 'u'))
  })

  test('every kind of step is there', () => {
    const { process } = jsonSchemaOf('job').properties as {
      process: { items: { oneOf: { properties: { do: { const: string } } }[] } }
    }
    expect(process.items.oneOf.map((step) => step.properties.do.const)).toEqual([
      'normalise',
      'anneal',
      'stress-relieve',
      'heat',
      'carry',
      'quench',
      'temper',
      'warm-bath',
      'run-colours',
    ])
  })

  test.each(['jop', 'toString', '__proto__', ''])('no schema "%s": the names are given', (name) => {
    expect(() => jsonSchemaOf(name)).toThrow(InputProblems)
    expect(() => jsonSchemaOf(name)).toThrow(/did you mean "job"|known here: job, evidence/u)
  })
})
