import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { readJobText } from '#contract/read-job.ts'
import { InputFault } from './faults.ts'

/** A job is a page of text; a file larger than this is something else, and is not opened. */
const MOST_BYTES = 2_000_000

export interface JobFile {
  readonly path: string
  readonly text: string
  readonly job: unknown
  /** Gives what a file that the job names holds, found beside the job. */
  readonly readFile: (name: string) => unknown
}

/** Reads a job file; throws `InputFault` or `InputProblems` with the file's name and the mend. */
export function jobFile(path: string): JobFile {
  const text = textOf(path)
  return { path, text, job: readJobText(text, path), readFile: (name) => readJobText(textOf(resolve(dirname(path), name)), name) }
}

/** Text of a file, after a look at what it is and how large. */
export function textOf(path: string): string {
  let bytes: Buffer
  try {
    const about = statSync(path)
    if (about.isDirectory()) throw new InputFault(`${path}: a folder, not a file; name the job file in it`)
    if (!about.isFile()) throw new InputFault(`${path}: not a plain file; name a job file`)
    if (about.size > MOST_BYTES)
      throw new InputFault(
        `${path}: ${(about.size / 1e6).toFixed(0)} MB; a job file has a page of text (at most ${MOST_BYTES / 1e6} MB). Is it the right file?`,
      )
    bytes = readFileSync(path)
  } catch (error) {
    throw error instanceof InputFault ? error : new InputFault(`${path}: ${whyNot(error)}`)
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    if (text.includes('\0')) throw new TypeError('binary')
    return text
  } catch {
    throw new InputFault(`${path}: not a text file in UTF-8; write the job as YAML or JSON`)
  }
}

function whyNot(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code === 'ENOENT') return 'there is no such file; look at the name and the folder'
  if (code === 'EACCES' || code === 'EPERM') return 'it may not be opened by you; look at its permissions'
  if (code === 'ENOTDIR') return 'part of the path is a file, not a folder'
  if (code === 'ENAMETOOLONG') return 'the name is too long for a file'
  return error instanceof Error ? error.message : String(error)
}

/** Writes a report or a card; only to a name that can be nothing else, so that a slip never writes over a job. */
export function writeReport(path: string, html: string, option: '--report' | '--out' = '--report'): void {
  if (!/\.html?$/iu.test(path)) throw new InputFault(`${option} ${path}: the name of a page ends in .html`)
  written(path, html, option, false)
}

/** Writes a job file; never over one that is there. */
export function writeJob(path: string, text: string): void {
  if (!/\.(?:ya?ml|json)$/iu.test(path)) throw new InputFault(`--out ${path}: the name of a job file ends in .yaml or .json`)
  written(path, text, '--out', true)
}

function written(path: string, text: string, option: string, fresh: boolean): void {
  try {
    mkdirSync(dirname(resolve(path)), { recursive: true })
    writeFileSync(path, text, { flag: fresh ? 'wx' : 'w' })
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined
    if (code === 'EEXIST' && fresh)
      throw new InputFault(`${option} ${path}: there is such a file already; give another name or move it away`)
    throw new InputFault(`${option} ${path}: cannot be written: ${code === 'EISDIR' ? 'it is a folder' : whyNot(error)}`)
  }
}
