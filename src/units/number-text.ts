import Fraction from 'fraction.js'

/** A number found at the start of a text, and how many letters it took; or why there is none. */
export type NumberFound =
  | { readonly found: 'number'; readonly value: Fraction; readonly length: number }
  | { readonly found: 'nothing' }
  | { readonly found: 'doubtful'; readonly why: string; readonly mend: string }

const MOST_DIGITS = 15
const MIXED = /^(\d+)[ -](\d+)\/(\d+)/u
const SIMPLE = /^(\d+)\/(\d+)/u
const DECIMAL = /^(?:\d+(?:\.\d+)?|\.\d+)/u
const WITH_COMMAS = /^\d+(?:,\d+)+(?:\.\d+)?/u

/**
 * The unsigned number that `text` begins with, exactly: `7/8`, `1-3/16`, `1 3/16`, `1.5`, `.5`, and `22,5` for 22.5 where
 * the comma cannot mean thousands. What could be read two ways is doubtful, never guessed.
 */
export function numberAtStart(text: string): NumberFound {
  const commas = WITH_COMMAS.exec(text)
  if (commas !== null) return withComma(commas[0])
  const mixed = MIXED.exec(text)
  if (mixed !== null) {
    const [all, whole = '', top = '', bottom = ''] = mixed
    const fraction = fractionOf(top, bottom)
    if (fraction.found !== 'number') return fraction
    if (fraction.value.gte(1))
      return {
        found: 'doubtful',
        why: `${top}/${bottom} after a whole number is one or more`,
        mend: 'write a fraction less than one',
      }
    if (whole.length > MOST_DIGITS) return tooLong()
    return clean(text, all, new Fraction(whole).add(fraction.value))
  }
  const simple = SIMPLE.exec(text)
  if (simple !== null) {
    const fraction = fractionOf(simple[1] ?? '', simple[2] ?? '')
    return fraction.found === 'number' ? clean(text, simple[0], fraction.value) : fraction
  }
  const decimal = DECIMAL.exec(text)
  if (decimal === null) return { found: 'nothing' }
  if (decimal[0].length > MOST_DIGITS + 1) return tooLong()
  return clean(text, decimal[0], new Fraction(decimal[0]))
}

/** Refuses what follows on too closely: a second point or fraction bar, a power of ten, a range. */
function clean(text: string, taken: string, value: Fraction): NumberFound {
  const rest = text.slice(taken.length)
  if (/^e[+-]?\d/u.test(rest)) return { found: 'doubtful', why: 'a power of ten', mend: 'write the figure out' }
  if (/^ ?(?:\.\.|-|to ) ?\d/u.test(rest))
    return { found: 'doubtful', why: 'two figures, from one to another', mend: 'write one figure' }
  if (/^[./]/u.test(rest))
    return { found: 'doubtful', why: `"${taken}${rest.slice(0, 4)}" is no number`, mend: 'write it as 1.5 or 1-1/2' }
  if (/^ \d+\//u.test(rest))
    return { found: 'doubtful', why: 'a decimal with a fraction behind it', mend: 'write one or the other' }
  return { found: 'number', value, length: taken.length }
}

function fractionOf(top: string, bottom: string): NumberFound {
  if (top.length > MOST_DIGITS || bottom.length > MOST_DIGITS) return tooLong()
  if (/^0+$/u.test(bottom))
    return { found: 'doubtful', why: 'a fraction over nothing', mend: 'write a whole number under the bar' }
  return { found: 'number', value: new Fraction(`${top}/${bottom}`), length: 0 }
}

function withComma(text: string): NumberFound {
  const parts = text.split(',')
  const [whole = '', behind = ''] = parts
  const plain = `${whole}.${behind}`
  if (parts.length === 2 && !behind.includes('.') && (behind.length !== 3 || /^0+$/u.test(whole)) && plain.length <= MOST_DIGITS)
    return { found: 'number', value: new Fraction(plain), length: text.length }
  return {
    found: 'doubtful',
    why: `the comma in "${text}" can mean thousands or tenths`,
    mend: `write ${text.replaceAll(',', '')} or ${plain} without a comma`,
  }
}

function tooLong(): NumberFound {
  return { found: 'doubtful', why: `a number of more than ${MOST_DIGITS} digits`, mend: 'write a shorter one' }
}

/** The nearest double to a fraction, also where its parts are too great for one. */
export function nearestNumber({ s, n, d }: Fraction): number {
  const limit = BigInt(Number.MAX_SAFE_INTEGER)
  if (n <= limit && d <= limit) return (Number(s) * Number(n)) / Number(d)
  // Thirty digits of the quotient, then the runtime's own correctly rounded reading of them.
  const shift = Math.max(0, 30 + String(d).length - String(n).length)
  return Number(s) * Number(`${(n * 10n ** BigInt(shift)) / d}e-${shift}`)
}

/** `value` to twelve figures at most, without idle noughts or a power of ten; read and written again it stays the same. */
export function shortDecimal(value: number): string {
  return plainDecimal(Number(value.toPrecision(12)))
}

function plainDecimal(value: number): string {
  const text = String(value)
  if (!text.includes('e')) return text
  return Math.abs(value) < 1 ? value.toFixed(20).replace(/\.?0+$/u, '') : BigInt(value).toString()
}
