import type { Refusal } from '../outcome.ts'
import type { SweepColumns } from './sweep.ts'

export const LINE_END = /\r\n|\r|\n/
const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i
const NAMES = {
  frequency: /freq|hz|^f$/i,
  impedance: /imp|ohm|Ω|mag|\|z\||^z$/i,
  phase: /pha|deg|°|arg/i,
} satisfies Record<keyof SweepColumns['at'], RegExp>

type Name = keyof typeof NAMES

/** Where each column stands in a line; phase null without one. */
interface Layout {
  frequency: number
  impedance: number
  phase: number | null
  /** 1000 when the header says kHz. */
  hertz: number
}

const PLAIN: Layout = { frequency: 0, impedance: 1, phase: 2, hertz: 1 }
const AT = { frequency: '/csv', impedance: '/csv', phase: '/csv' }

/**
 * Reads a sweep from text: any of comma, semicolon, tab or spaces between the columns, decimal point or comma.
 * Commas are decimal marks where another separator is in the text, else separators.
 */
export function sweepFromCsv(text: string): SweepColumns | Refusal {
  const lines = text.split(LINE_END).map((line) => line.trim())
  const split = splitterOf(lines)
  const rows = lines.map((line, i) => ({ line: i + 1, cells: split(line) }))
  const numeric = rows.filter(({ cells }) => isReading(cells))
  if (numeric.length === 0)
    return {
      faults: [
        {
          at: '/csv',
          message:
            'holds no line of numbers; each line needs a frequency in Hz and an impedance in ohm, as in "120 8.4", without the units and without marks between thousands',
        },
      ],
    }
  const first = numeric[0]!
  const layout = layoutOf(rows.filter(({ line }) => line < first.line).map(({ cells }) => cells))
  // A line with more numbers than columns has commas of two meanings: 20,5,8,1.
  const doubtful = numeric.find(({ cells }) => cells.length > 3 && layout === PLAIN && cells.every(isNumber))
  if (doubtful !== undefined)
    return {
      faults: [
        {
          at: '/csv',
          message: `line ${doubtful.line} has ${doubtful.cells.length} numbers; give two or three, with semicolons between them where commas stand before the tenths`,
        },
      ],
    }
  const unread = rows.find(
    ({ line, cells }) => line > first.line && startsWithDigit(cells) && !isReading(cells),
  )
  if (unread !== undefined)
    return {
      faults: [
        {
          at: '/csv',
          message: `line ${unread.line} begins with a number and cannot be read; give two or three plain numbers, without marks between thousands`,
        },
      ],
    }
  const column = (place: number) => numeric.map(({ cells }) => toNumber(cells[place]))
  const hasPhase = layout.phase !== null && numeric.every(({ cells }) => isNumber(cells[layout.phase ?? 0]))
  return {
    frequencyHz: column(layout.frequency).map((value) => value * layout.hertz),
    impedanceOhm: column(layout.impedance),
    phaseDeg: hasPhase ? column(layout.phase ?? 0) : null,
    at: AT,
    anyOrder: false,
  }
}

function splitterOf(lines: readonly string[]): (line: string) => string[] {
  const data = lines.filter((line) => /\d/.test(line) && !/^[#*;/]/.test(line))
  const most = (mark: RegExp) =>
    data.length > 0 && data.filter((line) => mark.test(line)).length * 2 > data.length
  const separator = [/\t/, /;/, /^"[^"]*","/].find(most)
  if (separator?.source.startsWith('^')) return (line) => line.split('","').map(unquoted)
  if (separator !== undefined) return (line) => line.split(separator).map(unquoted)
  // "20, 8.1" is parted by the comma, "20,5 8,1" by the space.
  if (most(/,\s/) || !most(/\S\s+\S/)) return (line) => line.split(',').map(unquoted)
  return (line) => line.split(/\s+/).map(unquoted)
}

const isReading = (cells: readonly string[]): boolean => cells.length > 1 && cells.slice(0, 2).every(isNumber)
const startsWithDigit = ([cell = '']: readonly string[]): boolean => /^[+-]?\d/.test(cell)
const unquoted = (cell: string): string => cell.replaceAll('"', '').trim()
const isNumber = (cell: string | undefined): boolean => cell !== undefined && NUMBER.test(cell)
const toNumber = (cell: string | undefined): number => Number((cell ?? '').replace(',', '.'))

/** The last line above the numbers that names two columns says where they are. */
function layoutOf(headers: readonly string[][]): Layout {
  const header = headers.findLast(
    (cells) => placeOf(cells, 'frequency') >= 0 && placeOf(cells, 'impedance') >= 0,
  )
  if (header === undefined) return PLAIN
  const frequency = placeOf(header, 'frequency')
  const phase = placeOf(header, 'phase')
  return {
    frequency,
    impedance: placeOf(header, 'impedance'),
    phase: phase < 0 ? null : phase,
    hertz: /khz/i.test(header[frequency] ?? '') ? 1000 : 1,
  }
}

function placeOf(cells: readonly string[], name: Name): number {
  const place = cells.findIndex((cell) => NAMES[name].test(cell))
  // "impedance phase (deg)" is a phase before it is an impedance.
  return name === 'impedance' && place >= 0 && NAMES.phase.test(cells[place] ?? '')
    ? cells.findIndex((cell) => NAMES.impedance.test(cell) && !NAMES.phase.test(cell))
    : place
}
