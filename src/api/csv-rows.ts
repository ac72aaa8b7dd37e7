/** A row of a sheet: its cells, and what is wrong with it where it cannot be read whole. */
export interface SheetRow {
  cells: string[]
  fault?: string
}

const QUOTE = 0x22
const LINE_FEED = 0x0a
const CARRIAGE_RETURN = 0x0d
const BYTE_ORDER_MARK = Buffer.from('\uFEFF')
const LONGEST_ROW = 64 * 1024
const BYTES_FOR_SEPARATOR = 4096

const TOO_LONG = `the row is longer than ${LONGEST_ROW / 1024} KiB`

/**
 * Rows of a CSV text in UTF-8 (RFC 4180, Shafranovich, 2005), read one at a time as they are asked for: eight megabytes
 * of commas would be a gigabyte of cells. A quote that does not stand around its cell is text, as in `5" woofer`. What
 * is wrong with a row is told in it, and the reading goes on behind it.
 */
export function* csvRows(text: Buffer): Generator<SheetRow> {
  const separator = separatorOf(text)
  let start = text.subarray(0, BYTE_ORDER_MARK.length).equals(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK.length : 0
  while (start < text.length) {
    const { end, ...row } = rowAt(text, start, separator)
    if (!isLineEnd(text[start])) yield row
    start = text[end] === CARRIAGE_RETURN && text[end + 1] === LINE_FEED ? end + 2 : end + 1
  }
}

/** The separator that the first line has most of. */
function separatorOf(text: Buffer): number {
  const [line = ''] = text
    .subarray(0, BYTES_FOR_SEPARATOR)
    .toString()
    .split(/\r\n?|\n/, 1)
  const count = (mark: string) => line.split(mark).length
  return [',', ';', '\t'].reduce((most, mark) => (count(mark) > count(most) ? mark : most)).charCodeAt(0)
}

/** A row that begins at `start`; `end` is where its line ends. */
function rowAt(text: Buffer, start: number, separator: number): SheetRow & { end: number } {
  const cells: string[] = []
  for (let at = start; ; ) {
    const cell = cellAt(text, at, separator)
    if (cell === undefined) return unclosedRow(text, start, { separator, cell: cells.length + 1 })
    const { end } = cell
    const isShort = end - start <= LONGEST_ROW
    if (isShort) cells.push(cell.read())
    if (text[end] !== separator) return { cells, end, ...(!isShort && { fault: TOO_LONG }) }
    at = end + 1
  }
}

/** Where a cell ends, and how to read it; undefined where its quote is never closed. */
function cellAt(text: Buffer, start: number, separator: number) {
  const closing = text[start] === QUOTE ? closingQuote(text, start, separator) : 'none'
  if (closing === 'missing') return undefined
  if (closing !== 'none') return { end: closing + 1, read: () => unquoted(text, start, closing) }
  const end = plainEnd(text, start, separator)
  return { end, read: () => text.toString('utf8', start, end) }
}

/**
 * Where the quote is that closes a cell opened at `opening`; `none` where the marks of this line are text; `missing`
 * where the line ends within the cell and nothing closes it. What one search passes over without an end, no later one
 * searches again: all quotes there stand in pairs, and the second of a pair ends a search that the first began.
 */
function closingQuote(text: Buffer, opening: number, separator: number): number | 'none' | 'missing' {
  let at = text.indexOf(QUOTE, opening + 1)
  while (at >= 0 && text[at + 1] === QUOTE) at = text.indexOf(QUOTE, at + 2)
  if (at >= 0 && endsCell(text[at + 1], separator)) return at
  return at >= 0 && at < lineEnd(text, opening) ? 'none' : 'missing'
}

/** The cells of the line as they stand, so that its sender knows it again. */
function unclosedRow(text: Buffer, start: number, { separator, cell }: { separator: number; cell: number }) {
  const end = lineEnd(text, start)
  const line = text.toString('utf8', start, Math.min(end, start + LONGEST_ROW))
  const cells = line.split(String.fromCharCode(separator))
  return { cells, end, fault: `the quote that opens cell ${cell} of the row is never closed` }
}

const unquoted = (text: Buffer, opening: number, closing: number): string =>
  text.toString('utf8', opening + 1, closing).replaceAll('""', '"')

function plainEnd(text: Buffer, start: number, separator: number): number {
  let at = start
  while (!endsCell(text[at], separator)) at += 1
  return at
}

function lineEnd(text: Buffer, start: number): number {
  let at = start
  while (at < text.length && !isLineEnd(text[at])) at += 1
  return at
}

const isLineEnd = (byte: number | undefined): boolean => byte === LINE_FEED || byte === CARRIAGE_RETURN

const endsCell = (byte: number | undefined, separator: number): boolean =>
  byte === undefined || byte === separator || isLineEnd(byte)
