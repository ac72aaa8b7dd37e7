import type { Json } from './draft.ts'

const PLAIN = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/
/** Marks between thousands are sure only where the other mark stands behind them. */
const THOUSANDS = /^([+-]?\d{1,3})((?:,\d{3})+)(?=\.\d)|^([+-]?\d{1,3})((?:\.\d{3})+)(?=,\d)/

/** Three digits behind the only mark may be thousands or thousandths: the service asks, for nobody here can know. */
export const DOUBTFUL = /^[+-]?[1-9]\d{0,2},\d{3}(?![\d.,])/

/** What was typed as it goes into the design: a number, also with a decimal comma, else the text for the service to read. */
export function readWritten(text: string, unit = ''): Json | undefined {
  const trimmed = text.trim().replace(THOUSANDS, (whole) => whole.replaceAll(/[.,]/g, ''))
  if (trimmed === '') return undefined
  if (unit !== '') return `${pointed(trimmed)} ${unit}`
  return numberIn(trimmed) ?? pointed(trimmed)
}

/** A number too large for a computer stays text, for JSON has none for it; zero has no sign. */
function numberIn(text: string): number | undefined {
  const value = PLAIN.test(text) && !DOUBTFUL.test(text) ? Number(text.replace(',', '.')) : Number.NaN
  return Number.isFinite(value) ? value + 0 : undefined
}

/** One comma between digits is a decimal mark; the service reads points. */
const pointed = (text: string): string =>
  DOUBTFUL.test(text) || /\d,\d.*,|\./.test(text) ? text : text.replace(/(\d),(\d)/, '$1.$2')

/** A value of the design as it stands in an input, parted from its unit where that is one on offer. */
export function asWritten(value: Json | undefined, units: readonly string[]): { text: string; unit: string } {
  if (value === undefined || value === null) return { text: '', unit: '' }
  if (typeof value === 'object') return { text: JSON.stringify(value), unit: '' }
  const text = String(value)
  const parted = /^(.*\S)\s+(\S+)$/.exec(text)
  const [, figure = '', unit = ''] = parted ?? []
  return units.includes(unit) ? { text: figure, unit } : { text, unit: '' }
}

/** A number, or several with a fraction, and the unit behind it. */
const WITH_UNIT = /^([\d\s/.]+?)\s*(mm|cm|m|in|inch|inches|"|″)$/

/**
 * A list of numbers as people write it: parted by blanks, semicolons or commas, each with a unit of its own or none.
 * A comma before a single digit is a decimal mark, for no saw has a diameter of one digit.
 */
export function readNumbers(text: string): Json | undefined {
  const parts = text
    .replaceAll(/(mm|cm|\bin\b|inch|inches|"|″)\s+(?=\d)/g, '$1;')
    .split(/[;\n]|,(?!\d(?!\d))/)
    .map((part) => part.trim().replace(/(\d),(\d)$/, '$1.$2'))
  const items = parts.flatMap((part) => (WITH_UNIT.test(part) ? [part] : part.split(/\s+/)))
  const written = items.filter((item) => item !== '')
  return written.length === 0 ? undefined : written.map((item) => readWritten(item) ?? item)
}
