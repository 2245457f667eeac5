import * as z from 'zod'
import { takeProfile } from '#contract/parse-profile.ts'
import { InputProblems, type Problem } from '#contract/problems.ts'
import type { Rows } from '#engine/arithmetic/table.ts'
import type { Surroundings } from '#engine/conduction/surroundings.ts'
import type { ThermalMaterial } from '#engine/conduction/thermal-material.ts'
import { type Outline, outlineFrom, outlineOf } from '#engine/geometry/outline.ts'

/** One conduction case with given properties, in the units of the engine. */
export interface ThermalCase {
  readonly name: string
  readonly outline: Outline
  readonly material: ThermalMaterial
  readonly startK: number
  readonly surroundings: Surroundings
  /** Levels at which the covered length ends for a while [m]: the mesh is finer there. */
  readonly waterlinesM: readonly number[]
  readonly kind: 'bath' | 'fire'
  readonly endS: number
  readonly probes: readonly { readonly name: string; readonly xM: number; readonly rM: number }[]
  readonly timesS: readonly number[]
}

const ZERO_C = 273.15

const pair = z.tuple([z.number(), z.number()])
const table = z.array(pair).min(1)
const point = pair
const outlineItem = z.union([
  point,
  z.object({
    arc: z.union([
      z.object({ to: point, centre: point }),
      z.object({ to: point, radius: z.number(), bulge: z.enum(['out', 'in']) }),
    ]),
  }),
])
const caseSchema = z.object({
  name: z.string().default('case'),
  profile: z.unknown().optional(),
  outline: z.array(outlineItem).min(3).optional(),
  density_kgPerM3: z.number().positive(),
  conductivity: table,
  specificHeat: table,
  start_C: z.number(),
  air: z.object({ T_C: z.number(), h: z.number().min(0), emissivity: z.number().min(0).max(1) }),
  bath: z.object({ T_C: z.number(), film: table, level: table, emissivity: z.number().min(0).max(1).default(0) }).optional(),
  fire: z.object({ h: z.number().min(0), emissivity: z.number().min(0).max(1), gas: table, upTo_mm: z.number() }).optional(),
  end_s: z.number().positive(),
  probes: z.array(z.object({ name: z.string(), x_mm: z.number(), r_mm: z.number() })),
  times_s: z.array(z.number().min(0)),
})

/** Reads a case as contract and solver notes write it. Throws InputProblems that name each field at fault. */
export function parseThermalCase(input: unknown): ThermalCase {
  const parsed = caseSchema.safeParse(input)
  if (!parsed.success) {
    throw new InputProblems(parsed.error.issues.map(({ path, message }) => ({ field: path.join('.'), says: message })))
  }
  const given = parsed.data
  const rest = {
    fluid: [[0, given.air.T_C + ZERO_C]],
    film: [[ZERO_C, given.air.h]],
    emissivity: given.air.emissivity,
  } as const
  return {
    name: given.name,
    outline: outlineFor(given),
    material: {
      densityKgPerM3: given.density_kgPerM3,
      conductivity: inKelvin(given.conductivity),
      specificHeat: inKelvin(given.specificHeat),
    },
    startK: given.start_C + ZERO_C,
    ...coveredBy(given, rest),
    endS: Math.max(given.end_s, ...given.times_s),
    probes: given.probes.map(({ name, x_mm, r_mm }) => ({ name, xM: x_mm / 1000, rM: r_mm / 1000 })),
    timesS: given.times_s,
  }
}

type Given = z.output<typeof caseSchema>

function outlineFor({ profile, outline }: Given): Outline {
  const problems: Problem[] = []
  if (outline !== undefined && profile !== undefined)
    problems.push({ field: 'profile', says: 'profile beside outline; give one of the two' })
  else if (outline !== undefined) return outlineFrom(outline, 0.001)
  else {
    const taken = takeProfile(profile, problems)
    if (taken !== undefined) return outlineOf(taken.profile)
  }
  throw new InputProblems(problems)
}

function coveredBy(
  { bath, fire }: Given,
  rest: Surroundings['rest'],
): Pick<ThermalCase, 'surroundings' | 'waterlinesM' | 'kind'> {
  if (bath !== undefined && fire === undefined) {
    const level = bath.level.map(([timeS, xMm]) => [timeS, xMm / 1000] as const)
    const covered = { fluid: [[0, bath.T_C + ZERO_C]], film: inKelvin(bath.film), emissivity: bath.emissivity } as const
    const held = level.filter(([, xM], row) => row === level.length - 1 || level[row + 1]![1] === xM)
    return { surroundings: { covered, rest, fromM: 0, level }, waterlinesM: [...new Set(held.map(([, xM]) => xM))], kind: 'bath' }
  }
  if (fire !== undefined && bath === undefined) {
    const upToM = fire.upTo_mm / 1000
    const covered = { fluid: inKelvinLater(fire.gas), film: [[ZERO_C, fire.h]], emissivity: fire.emissivity } as const
    return { surroundings: { covered, rest, fromM: 0, level: [[0, upToM]] }, waterlinesM: [upToM], kind: 'fire' }
  }
  throw new InputProblems([{ field: 'bath', says: 'give either bath or fire' }])
}

function inKelvin(rows: readonly (readonly [number, number])[]): Rows {
  return rows.map(([celsius, value]) => [celsius + ZERO_C, value] as const)
}

/** Rows of time against degrees Celsius. */
function inKelvinLater(rows: readonly (readonly [number, number])[]): Rows {
  return rows.map(([timeS, celsius]) => [timeS, celsius + ZERO_C] as const)
}
