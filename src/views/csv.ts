import { stringify } from 'csv-stringify/sync'
import type { DecimalMark } from '../core/quantity.ts'
import { type Cell, plainNumber, type Table } from './table.ts'

/**
 * A table as CSV (RFC 4180, Shafranovich, 2005): one header row, lines end in CRLF.
 * With a decimal comma the columns are parted by semicolons, as sheets in such languages expect.
 */
export const csv = ({ columns, rows }: Table, decimal: DecimalMark = 'point'): string =>
  written([columns, ...rows], decimal, decimal === 'comma' ? ';' : ',')

/** One line of such a table, its cells parted by `separator`. */
export const csvRow = (cells: readonly Cell[], decimal: DecimalMark, separator: string): string =>
  written([cells], decimal, separator)

const written = (rows: readonly (readonly Cell[])[], decimal: DecimalMark, delimiter: string): string =>
  stringify(
    rows.map((row) => row.map((value) => textOf(value, decimal))),
    { delimiter, record_delimiter: 'windows' },
  )

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/
const GUARDED = /^'(?=[=+\-@\t\r])/

/** The text without the apostrophe that it got when it was handed out. */
export const withoutGuard = (text: string): string => text.replace(GUARDED, '')

/** A text that a sheet would run as a formula gets an apostrophe before it, which the sheet shows as text. */
function textOf(value: Cell, decimal: DecimalMark): string {
  if (value === null) return ''
  if (typeof value === 'number') return plainNumber(value, decimal)
  const text = String(value)
  return /^[=+\-@\t\r]/.test(text) && !NUMBER.test(text) ? `'${text}` : text
}
