import type { Json } from './draft.ts'

const PLAIN = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/

/** What was typed as it goes into the design: a number, also with a decimal comma, else the text for the service to read. */
export function readWritten(text: string, unit = ''): Json | undefined {
  const trimmed = text.trim()
  if (trimmed === '') return undefined
  if (unit !== '') return `${pointed(trimmed)} ${unit}`
  return PLAIN.test(trimmed) ? Number(trimmed.replace(',', '.')) : pointed(trimmed)
}

/** One comma between digits is a decimal mark; the service reads points. */
const pointed = (text: string): string =>
  /\d,\d.*,|\./.test(text) ? text : text.replace(/(\d),(\d)/, '$1.$2')

/** A value of the design as it stands in an input, parted from its unit where that is one on offer. */
export function asWritten(value: Json | undefined, units: readonly string[]): { text: string; unit: string } {
  if (value === undefined || value === null) return { text: '', unit: '' }
  if (typeof value === 'object') return { text: JSON.stringify(value), unit: '' }
  const text = String(value)
  const parted = /^(.*\S)\s+(\S+)$/.exec(text)
  const [, figure = '', unit = ''] = parted ?? []
  return units.includes(unit) ? { text: figure, unit } : { text, unit: '' }
}

/** A list of plain numbers as people write it: parted by blanks, semicolons or commas. */
export function readNumbers(text: string): Json | undefined {
  const items = text.split(/[;,\s]+/).filter((item) => item !== '')
  if (items.length === 0) return undefined
  return items.map((item) => (PLAIN.test(item) ? Number(item.replace(',', '.')) : item))
}
