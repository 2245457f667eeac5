import * as z from 'zod'
import { figureSchema, forecastSchema, routesSchema, steelAnswerSchema } from './answers.ts'
import { evidenceSchema } from './evidence-schema.ts'
import { jobSchema } from './job-schema.ts'
import { meant } from './nearest-word.ts'
import { InputProblems } from './problems.ts'

const SCHEMAS = {
  job: { schema: jobSchema, io: 'input' },
  evidence: { schema: evidenceSchema, io: 'input' },
  steel: { schema: steelAnswerSchema, io: 'output' },
  forecast: { schema: forecastSchema, io: 'output' },
  routes: { schema: routesSchema, io: 'output' },
  figure: { schema: figureSchema, io: 'output' },
} as const

/** Names that `jsonSchemaOf` knows: what is handed in (`job`, `evidence`), then the answers. */
export const SCHEMA_NAMES: readonly string[] = Object.keys(SCHEMAS)

/** The JSON Schema (draft 2020-12) of an input or an answer. Throws `InputProblems` for a name that there is none of. */
export function jsonSchemaOf(name: string): Record<string, unknown> {
  const found = Object.hasOwn(SCHEMAS, name) ? SCHEMAS[name as keyof typeof SCHEMAS] : undefined
  if (found === undefined)
    throw new InputProblems([
      { field: 'name', says: `"${name.slice(0, 60)}": no schema of this name; ${meant(name, SCHEMA_NAMES)}` },
    ])
  return z.toJSONSchema(found.schema, { io: found.io, target: 'draft-2020-12' })
}
