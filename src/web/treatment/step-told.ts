/** What is said of a step, and what it does to grain and carbide, which is for who asks. */
export interface StepTold {
  readonly says: string
  readonly grain?: { readonly short: string; readonly says: string }
}

/** Takes what a heat does to grain and carbide out of the words on the step; how often it is done stays with them. */
export function stepTold(says: string): StepTold {
  const parts = /^(.*?) (Grain: ASTM .*?)(?: ((?:Twice|\d+ times) in all\.))?$/u.exec(says)
  if (parts === null) return { says }
  const [, first = '', grain = '', often] = parts
  const after = /then (?:[\d.]+, )*([\d.]+\d)/u.exec(grain)?.[1]
  return {
    says: often === undefined ? first : `${first} ${often}`,
    grain: { short: after === undefined ? 'Grain' : `Grain after it: ASTM ${after}`, says: grain },
  }
}
