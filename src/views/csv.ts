import { stringify } from 'csv-stringify/sync'
import type { DecimalMark } from '../core/quantity.ts'
import { type Cell, plainNumber, type Table } from './table.ts'

/**
 * A table as CSV (RFC 4180, Shafranovich, 2005): one header row, lines end in CRLF.
 * With a decimal comma the columns are parted by semicolons, as sheets in such languages expect.
 */
export function csv({ columns, rows }: Table, decimal: DecimalMark = 'point'): string {
  return stringify([columns, ...rows.map((row) => row.map((value) => written(value, decimal)))], {
    delimiter: decimal === 'comma' ? ';' : ',',
    record_delimiter: 'windows',
  })
}

/** A text that a sheet would run as a formula gets an apostrophe before it, which the sheet shows as text. */
function written(value: Cell, decimal: DecimalMark): string {
  if (value === null) return ''
  if (typeof value === 'number') return plainNumber(value, decimal)
  const text = String(value)
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text
}
