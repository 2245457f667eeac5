/** A fault of a profile: the field as a job file writes it, what was read there, and what would do. */
export interface ProfileProblem {
  readonly field: string
  readonly says: string
}

/** Path of a field as a job file writes it. */
export function field(i: number, key: string): string {
  return `profile[${i}].${key}`
}

/** A length as it is said in a problem. */
export function mm(m: number): string {
  return Number.isFinite(m) ? `${Math.round(m * 1e5) / 100} mm` : String(m)
}
