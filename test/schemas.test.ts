import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { ZodType } from 'zod'
import { run } from '#cli/run.ts'
import { terminalOf } from '#cli/terminal.ts'
import { figureSchema, forecastSchema, jsonSchemaOf, routesSchema, steelAnswerSchema } from '#contract/index.ts'

const examples = join(import.meta.dirname, '..', 'examples')

/** What the program writes on standard output when its words are these; it must answer, and say nothing on standard error. */
async function printed(...words: string[]): Promise<string> {
  let out = ''
  let err = ''
  const code = await run(words, {
    terminal: terminalOf({ columns: 80 }, { LANG: 'C.UTF-8' }),
    write: (text) => {
      out += text
    },
    writeError: (text) => {
      err += text
    },
    errors: process.stderr,
    today: '2001-02-03',
    debug: false,
    stopped: () => Promise.resolve(),
  })
  expect({ code, err }).toEqual({ code: 0, err: '' })
  return out
}

const ANSWERS: readonly { name: string; schema: ZodType; words: readonly (readonly string[])[] }[] = [
  {
    name: 'steel',
    schema: steelAnswerSchema,
    words: [
      ['steel', 'O1'],
      ['steel', 'H13', '--grain-size', '8', '--austenitise', '1020 C', '--temper', '580 C', '--hold', '2 h'],
      ['steel', '--analysis', 'C=0.42,Mn=0.8,Si=0.25,Cr=1.0,Mo=0.2'],
      ['steel', 'A36'],
    ],
  },
  {
    name: 'forecast',
    schema: forecastSchema,
    words: [
      ['forecast', join(examples, 'flat-spring.yaml'), '--draft'],
      ['forecast', join(examples, 'hot-slot-punch.yaml'), '--draft', '--members', '40'],
      ['forecast', join(examples, 'eye-drift.yaml'), '--draft', '--members', '40'],
    ],
  },
  {
    name: 'routes',
    schema: routesSchema,
    words: [['plan', join(examples, 'plans', 'latch-spring.yaml')]],
  },
  {
    name: 'figure',
    schema: figureSchema,
    words: [
      ['convert', '52 HRC', 'HV'],
      ['convert', '300 HV', 'HB'],
      ['convert', '95 HRB', 'HB'],
    ],
  },
]

const cases = ANSWERS.flatMap(({ name, schema, words }) => words.map((each) => ({ name, schema, words: each, says: each[1] })))

describe('--json against its schema', () => {
  test.each(cases)('$name $says', async ({ name, schema, words }) => {
    const text = await printed(...words, '--json')
    const answer: unknown = JSON.parse(text)
    expect(schema.safeParse(answer).error).toBeUndefined()
    // The schema that is handed out asks for the same fields at the top, and knows every field that is there.
    const { required, properties } = jsonSchemaOf(name) as { required: string[]; properties: Record<string, unknown> }
    expect(required.length).toBeGreaterThan(1)
    expect(Object.keys(answer as object)).toEqual(expect.arrayContaining(required))
    for (const key of Object.keys(answer as object)) expect(Object.keys(properties)).toContain(key)
    expect(await printed(...words, '--json')).toBe(text)
  })

  test.each(['steel', 'forecast', 'routes', 'figure', 'job', 'evidence'])(
    'schema %s is printed as it stands in the library',
    async (name) => {
      expect(JSON.parse(await printed('schema', name))).toEqual(JSON.parse(JSON.stringify(jsonSchemaOf(name))))
    },
  )

  test('a schema refuses what lacks a field or has one too many', async () => {
    const figure = JSON.parse(await printed('convert', '52 HRC', 'HV', '--json')) as Record<string, unknown>
    const { low: _, ...lacking } = figure
    expect(figureSchema.safeParse(figure).success).toBe(true)
    expect(figureSchema.safeParse(lacking).success).toBe(false)
    expect(figureSchema.safeParse({ ...figure, extra: 1 }).success).toBe(false)
  })
})
