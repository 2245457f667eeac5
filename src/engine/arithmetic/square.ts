/** x times x: one rounding, the same in every runtime, which `**` does not promise. */
export function square(x: number): number {
  return x * x
}
