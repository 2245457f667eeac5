/** What went wrong with keeping things, and the mend. */
export interface Trouble {
  readonly says: string
  readonly mend: string
}

/** The browser's store did not answer. */
export class NoAnswer extends Error {
  override readonly name = 'NoAnswer'
}

/** In words: full, refused, or something else. */
export function troubleOf(error: unknown): Trouble {
  const name = error instanceof DOMException || error instanceof Error ? error.name : ''
  if (name === 'QuotaExceededError')
    return {
      says: 'The storage of this device is full: what you do now is not kept.',
      mend: 'Save the piece as a file, then make room on the device.',
    }
  if (name === 'VersionError')
    return {
      says: 'A newer Quenchwright has been used on this device; this one cannot keep anything beside it.',
      mend: 'Save the piece as a file, close every page of it and open the newer one.',
    }
  if (name === 'NoAnswer')
    return {
      says: 'The storage of this browser does not answer: what you do now is not kept.',
      mend: 'Save the piece as a file, then close other pages of Quenchwright and open this one anew.',
    }
  return {
    says: 'This browser refuses to keep anything: what you do now is gone when the page closes.',
    mend: 'Save the piece as a file. Private windows and strict settings forbid storage.',
  }
}
