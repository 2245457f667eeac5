import { isScalar, Lexer, parseDocument, visit } from 'yaml'
import { InputProblems } from './problems.ts'

const MOST_BYTES = 2_000_000
/** Braces within braces, and columns that a line may stand in from the left: a job has five and twenty. */
const DEEPEST = 60
const WIDEST_INDENT = 120
/** Words, colons, commas, line ends and the like: a long job has two thousand. */
const MOST_MARKS = 30_000
/** Repeats of one marked part that a shop with like ovens may want; a file that wants more is no job. */
const MOST_REPEATS = 100

/**
 * What a job, shop or evidence file holds, from its text in YAML (or JSON, which YAML contains). `fileName` is for messages.
 * Throws `InputProblems` when the text is too large, empty, badly written, or not a group of fields.
 */
export function readJobText(text: string, fileName: string): unknown {
  const at = fileName === '' ? 'the file' : fileName
  if (text.length > MOST_BYTES)
    throw fault(`${at} holds ${(text.length / 1e6).toFixed(1)} million letters; a job has a few thousand. Is it the right file?`)
  // Word processors and some editors put a mark at the start.
  const plain = text.replace(/^\uFEFF/u, '')
  if (plain.trim() === '') throw fault(`${at} is empty; write piece, steel, profile and process into it`)
  if (plain.includes('\0')) throw fault(`${at} is not a text file; write the job as YAML or JSON`)
  const value = heldIn(plain, at)
  if (value === null || value === undefined)
    throw fault(`${at} holds only comments; write piece, steel, profile and process into it`)
  if (typeof value !== 'object' || Array.isArray(value)) {
    const what = Array.isArray(value) ? 'a list' : 'only words'
    throw fault(`${at} holds ${what}; a job is a group of fields, one to a line, as "piece: slot punch"`)
  }
  return value
}

function heldIn(text: string, at: string): unknown {
  // The reader goes down into groups within groups, and compares every field with its neighbours: it must not be sent too far.
  const tooMuch = whyTooMuch(text)
  if (tooMuch !== undefined) throw fault(`${at}: ${tooMuch}`)
  try {
    const document = parseDocument(text, {
      schema: 'core',
      version: '1.2',
      uniqueKeys: true,
      prettyErrors: true,
      stringKeys: true,
    })
    const [first] = [...document.errors, ...document.warnings]
    if (first !== undefined) {
      const where = first.linePos === undefined ? '' : `, line ${first.linePos[0].line}, column ${first.linePos[0].col}`
      throw fault(`${at}${where}: ${inWords(first.code)}`)
    }
    // A grade such as 1.2510 is a name: its digits stand as they were typed.
    visit(document, {
      Pair: (_, { key, value }) => {
        if (
          isScalar(key) &&
          key.value === 'grade' &&
          isScalar(value) &&
          typeof value.value === 'number' &&
          value.source !== undefined
        )
          value.value = value.source
      },
    })
    return document.toJS({ maxAliasCount: MOST_REPEATS })
  } catch (error) {
    if (error instanceof InputProblems) throw error
    if (!(error instanceof ReferenceError)) throw error
    // A mark with nothing behind it, or marks that multiply.
    if (error.message.startsWith('Unresolved alias')) throw fault(`${at}: ${WORDS.BAD_ALIAS}`)
    throw fault(`${at}: marked parts are repeated too often; write it out plainly`)
  }
}

function whyTooMuch(text: string): string | undefined {
  const tooDeep = 'groups stand within groups, deeper than any job; look for a bracket that is never closed'
  if (text.split('\n').some((line) => indentOf(line) > WIDEST_INDENT)) return tooDeep
  let depth = 0
  let marks = 0
  for (const token of new Lexer().lex(text)) {
    if (token === '[' || token === '{') depth++
    else if (token === ']' || token === '}') depth--
    if (depth > DEEPEST) return tooDeep
    if (++marks > MOST_MARKS) return 'more fields and words than any job has. Is it the right file?'
  }
  return undefined
}

/** Columns before the words of a line; a comment may stand as far right as it likes. */
function indentOf(line: string): number {
  const lead = /^[ \t?-]*/u.exec(line)?.[0].length ?? 0
  return line[lead] === '#' || line.trim() === '' ? 0 : lead
}

const WORDS: { readonly [code: string]: string } = {
  DUPLICATE_KEY: 'a field stands here for the second time; keep one of the two',
  TAB_AS_INDENT: 'a tab stands at the start of the line; use spaces',
  BAD_INDENT: 'the line begins too far left or right for the group it belongs to; line it up with its neighbours',
  MULTIPLE_DOCS: 'a second job begins here; keep one to a file',
  MISSING_CHAR: 'a closing mark or a comma is missing here: } ] , or a quote',
  BAD_ALIAS: 'a mark with * stands for nothing; write the value out',
  TAG_RESOLVE_FAILED: 'a tag with ! has no meaning in a job; leave it out',
  MULTILINE_IMPLICIT_KEY: 'the field name runs over a line end; is a colon or a closing quote missing?',
  BLOCK_AS_IMPLICIT_KEY: 'two fields stand on one line; put each on its own, or write { a: 1, b: 2 }',
  BLOCK_IN_FLOW: 'a list with - stands inside braces; write it with [ ]',
  KEY_OVER_1024_CHARS: 'a field name is longer than any name; is a colon missing?',
  NON_STRING_KEY: 'a field name that is no word; write a plain name',
}

function inWords(code: string): string {
  return WORDS[code] ?? 'cannot be read as YAML; look for a missing colon, quote, bracket or comma'
}

function fault(says: string): InputProblems {
  return new InputProblems([{ field: '', says }])
}
