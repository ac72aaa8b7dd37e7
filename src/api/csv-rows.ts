/** A row of a sheet: its cells, and what is wrong with it where it cannot be read whole. */
export interface SheetRow {
  cells: string[]
  fault?: string
}

/** A sheet as it is read; what was found once is not looked for again. */
interface Reading {
  text: Buffer
  separator: number
  /** From where a line end was looked for last, and where it is. */
  line: { from: number; end: number }
  /** Bytes read since the last pause. */
  read: number
  /** How many bytes may still be read a second time. */
  left: number
}

const QUOTE = 0x22
const LINE_FEED = 0x0a
const CARRIAGE_RETURN = 0x0d
const BYTE_ORDER_MARK = Buffer.from('\uFEFF')
const LONGEST_ROW = 64 * 1024
const BYTES_FOR_SEPARATOR = 4096
/** What is read again behind quotes that are never closed, as a multiple of the text. */
const MOST_READ_AGAIN = 3
/** Some milliseconds of reading, whatever the bytes are. */
const BYTES_BETWEEN_PAUSES = 64 * 1024

const TOO_LONG = `the row is longer than ${LONGEST_ROW / 1024} KiB`

/**
 * Rows of a CSV text in UTF-8 (RFC 4180, Shafranovich, 2005), read one at a time as they are asked for: eight megabytes
 * of commas would be a gigabyte of cells. A quote that does not stand around its cell is text, as in `5" woofer`. What
 * is wrong with a row is told in it, and the reading goes on behind it. A `pause` comes where so much was read that
 * others should have their turn, also where no row has.
 */
export function* csvRows(text: Buffer): Generator<SheetRow | 'pause'> {
  const reading = {
    text,
    separator: separatorOf(text).charCodeAt(0),
    line: { from: 0, end: -1 },
    read: 0,
    left: MOST_READ_AGAIN * text.length,
  }
  let start = text.subarray(0, BYTE_ORDER_MARK.length).equals(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK.length : 0
  while (start < text.length) {
    if (isLineEnd(text[start])) {
      if (isTimeForOthers(reading, 1)) yield 'pause'
      start += 1
      continue
    }
    const { end, ...row } = yield* rowAt(reading, start)
    yield row
    start = end + 1
  }
}

function isTimeForOthers(reading: Reading, bytes: number): boolean {
  reading.read += bytes
  if (reading.read < BYTES_BETWEEN_PAUSES) return false
  reading.read = 0
  return true
}

/** The separator that the first line has most of. */
export function separatorOf(text: Buffer): ',' | ';' | '\t' {
  const [line = ''] = text
    .subarray(0, BYTES_FOR_SEPARATOR)
    .toString()
    .split(/\r\n?|\n/, 1)
  const count = (mark: string) => line.split(mark).length
  return ([',', ';', '\t'] as const).reduce<',' | ';' | '\t'>(
    (most, mark) => (count(mark) > count(most) ? mark : most),
    ',',
  )
}

/** A row that begins at `start`; `end` is where its line ends. */
function* rowAt(reading: Reading, start: number): Generator<'pause', SheetRow & { end: number }> {
  const { text, separator } = reading
  const cells: string[] = []
  for (let at = start; ; ) {
    const cell = cellAt(reading, at)
    const reached = 'searchedTo' in cell ? cell.searchedTo : cell.end + 1
    if (isTimeForOthers(reading, reached - at)) yield 'pause'
    if ('searchedTo' in cell) return unclosedRow(reading, start, { ...cell, cell: cells.length + 1 })
    const { end } = cell
    const isShort = end - start <= LONGEST_ROW
    if (isShort) cells.push(cell.read())
    if (text[end] !== separator) return { cells, end, ...(!isShort && { fault: TOO_LONG }) }
    at = end + 1
  }
}

/** Where a cell ends, and how to read it; where its quote is never closed, how far a closing one was looked for. */
function cellAt(reading: Reading, start: number) {
  const { text, separator } = reading
  const closing = text[start] === QUOTE ? closingQuote(reading, start) : 'none'
  if (typeof closing === 'object') return closing
  if (closing !== 'none') return { end: closing + 1, read: () => unquoted(text, start, closing) }
  const end = plainEnd(text, start, separator)
  return { end, read: () => text.toString('utf8', start, end) }
}

/**
 * Where the quote is that closes a cell opened at `opening`; `none` where the marks of this line are text; where
 * the line ends within the cell and nothing closes it, how far that was looked for.
 */
function closingQuote(reading: Reading, opening: number): number | 'none' | { searchedTo: number } {
  const { text, separator } = reading
  let at = text.indexOf(QUOTE, opening + 1)
  while (at >= 0 && text[at + 1] === QUOTE) at = text.indexOf(QUOTE, at + 2)
  if (at >= 0 && endsCell(text[at + 1], separator)) return at
  if (at >= 0 && at < lineEndFrom(reading, opening)) return 'none'
  return { searchedTo: at < 0 ? text.length : at }
}

/**
 * The cells of the line as they stand, so that its sender knows it again; what is behind the line is read once more, now
 * as rows of its own. A sheet in which that goes on and on ends with the row.
 */
function unclosedRow(
  reading: Reading,
  start: number,
  { searchedTo, cell }: { searchedTo: number; cell: number },
) {
  const { text, separator } = reading
  const end = lineEndFrom(reading, start)
  const line = text.toString('utf8', start, Math.min(end, start + LONGEST_ROW))
  const cells = line.split(String.fromCharCode(separator))
  const fault = `the quote that opens cell ${cell} of the row is never closed`
  reading.left -= Math.max(0, searchedTo - end)
  return reading.left < 0
    ? { cells, end: text.length, fault: `${fault}, like many before it; the rest of the sheet is not read` }
    : { cells, end, fault }
}

const unquoted = (text: Buffer, opening: number, closing: number): string =>
  text.toString('utf8', opening + 1, closing).replaceAll('""', '"')

function plainEnd(text: Buffer, start: number, separator: number): number {
  let at = start
  while (!endsCell(text[at], separator)) at += 1
  return at
}

/** The first line end from `start` on; of one line it is asked for each of its cells. */
function lineEndFrom({ text, line }: Reading, start: number): number {
  if (start >= line.from && start <= line.end) return line.end
  let at = start
  while (at < text.length && !isLineEnd(text[at])) at += 1
  line.from = start
  line.end = at
  return at
}

const isLineEnd = (byte: number | undefined): boolean => byte === LINE_FEED || byte === CARRIAGE_RETURN

const endsCell = (byte: number | undefined, separator: number): boolean =>
  byte === undefined || byte === separator || isLineEnd(byte)
