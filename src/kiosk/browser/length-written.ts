import { DOUBTFUL } from './written.ts'

/**
 * Millimetres and litres of the units that people write beside a measure (NIST SP 811, appendix B.8). The service reads
 * all measures; this is for the one thing that the page works out itself, a size given in another way.
 */
const MM: Readonly<Record<string, number>> = {
  '': 1,
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  inch: 25.4,
  inches: 25.4,
  '"': 25.4,
  '″': 25.4,
  ft: 304.8,
}
const LITRES: Readonly<Record<string, number>> = { '': 1, l: 1, ml: 0.001, 'ft^3': 28.316846592 }

const MIXED = /^(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+)\s*(.*)$/
const DECIMAL = /^(\d+(?:[.,]\d*)?|[.,]\d+)\s*(.*)$/

/** Millimetres of a measure as it stands in the design, with or without its unit; NaN where this page cannot read it. */
export const mmOf = (value: unknown): number => measured(value, MM)

/** Litres of a volume, likewise. */
export const litresOf = (value: unknown): number => measured(value, LITRES)

function measured(value: unknown, units: Readonly<Record<string, number>>): number {
  const text = String(value ?? '').trim()
  if (DOUBTFUL.test(text)) return Number.NaN
  const [, whole = '0', over = '', under = '', unit] = MIXED.exec(text) ?? []
  if (unit !== undefined) return (Number(whole) + Number(over) / Number(under)) * factor(unit, units)
  const [, figure = '', behind = ''] = DECIMAL.exec(text) ?? []
  return figure === '' ? Number.NaN : Number(figure.replace(',', '.')) * factor(behind, units)
}

const factor = (unit: string, units: Readonly<Record<string, number>>): number => {
  const name = unit.trim().toLowerCase()
  return Object.hasOwn(units, name) ? (units[name] ?? Number.NaN) : Number.NaN
}
