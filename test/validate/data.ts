import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parse } from 'csv-parse/sync'

export type CsvRow = Readonly<Record<string, string>>

const COMMITTED = fileURLToPath(new URL('../verification/data/', import.meta.url))
let checkingOnly: string | undefined

/** Folder with the sets that may be used for checking but not be kept here. */
export function useDataFolder(folder: string): void {
  if (!existsSync(folder)) throw new Error(`--data ${folder}: there is no such folder`)
  checkingOnly = folder
}

function read(path: string): CsvRow[] {
  return parse(readFileSync(path, 'utf8'), { columns: true, skip_empty_lines: true })
}

/** Rows of a table that is kept in this tree with its sources. */
export function committedTable(name: string): CsvRow[] {
  return read(join(COMMITTED, name))
}

/** Rows of a checking-only table; call only when a folder was given. */
export function checkingTable(name: string): CsvRow[] {
  if (checkingOnly === undefined) throw new Error(`${name} is not kept here: give its folder with --data`)
  return read(join(checkingOnly, name))
}

/** A cell as a number; NaN when it is empty. */
export function number(row: CsvRow, column: string): number {
  const cell = row[column]
  if (cell === undefined) throw new Error(`no column ${column}; there are ${Object.keys(row).join(', ')}`)
  return cell.trim() === '' ? Number.NaN : Number(cell)
}

export function text(row: CsvRow, column: string): string {
  const cell = row[column]
  if (cell === undefined) throw new Error(`no column ${column}; there are ${Object.keys(row).join(', ')}`)
  return cell
}
