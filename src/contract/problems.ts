/** One thing at fault in what was handed in: the field's path (`profile[1].across`), what was read there and what would do. */
export interface Problem {
  readonly field: string
  readonly says: string
}

/** The input is at fault, not the program: every problem found, in the order of the fields. */
export class InputProblems extends Error {
  override readonly name = 'InputProblems'
  readonly problems: readonly Problem[]

  constructor(problems: readonly Problem[]) {
    super(problems.map(({ field, says }) => (field === '' ? says : `${field}: ${says}`)).join('\n'))
    this.problems = problems
  }
}

/** A field's path from its steps: `profile`, 1, `across` is `profile[1].across`. */
export function fieldPath(start: string, path: readonly PropertyKey[]): string {
  let field = start
  for (const step of path) {
    if (typeof step === 'number') field += `[${step}]`
    else {
      const key = String(step)
      const plain = /^[\w-]{1,40}$/u.test(key)
      field += plain ? `${field === '' ? '' : '.'}${key}` : `["${key.slice(0, 40).replace(/[^\p{L}\p{N} .,'-]/gu, '?')}"]`
    }
  }
  return field
}
