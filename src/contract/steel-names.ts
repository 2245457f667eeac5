import { GRADES } from '#engine/materials/catalogue.ts'
import { namesOf } from '#engine/materials/steel-names.ts'

/** A steel that can be asked for: its own name, and others that it answers to. */
export interface NamedSteel {
  readonly name: string
  readonly also: readonly string[]
}

/** The steels of the catalogue, in its order, for a list to choose from. */
export function namedSteels(): NamedSteel[] {
  return GRADES.map((grade) => ({
    name: grade.id,
    also: [...new Set(namesOf(grade).map(({ name }) => name))].filter((name) => name !== grade.id),
  }))
}
