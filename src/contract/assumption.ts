/** Something that nobody said and that was filled in, with the reason; it stands in every answer. */
export interface Assumption {
  readonly says: string
  readonly because: string
}
