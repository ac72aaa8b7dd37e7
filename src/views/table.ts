import type { DecimalMark } from '../core/quantity.ts'

/** What stands in one cell; null for a value that does not exist, an empty cell. */
export type Cell = number | string | boolean | null

export interface Table {
  columns: string[]
  rows: Cell[][]
}

/** How a table lies in an answer. Its columns do not depend on the answer, so that a linked sheet keeps its place. */
export type TableShape =
  | {
      kind: 'rows'
      /** Names of the lists, the outer one first: `panels`, then `holes` of each. */
      lists: readonly string[]
      /** Dotted names in a row. */
      columns: readonly string[]
    }
  | {
      kind: 'columns'
      /** Name of the object whose members are lists of equal length. */
      name: string
      columns: readonly string[]
    }
  | {
      kind: 'values'
      /** Dotted names in the answer, each with its unit, empty for ratios and words. */
      values: readonly { name: string; unit: string }[]
    }

/** The table that a shape makes of an answer. */
export function tableFrom(shape: TableShape, answer: unknown): Table {
  switch (shape.kind) {
    case 'rows':
      return rowTable(shape.lists, shape.columns, answer)
    case 'columns':
      return columnTable(shape.columns, at(answer, shape.name))
    case 'values':
      return {
        columns: ['name', 'value', 'unit'],
        rows: shape.values.map(({ name, unit }) => [name, cell(at(answer, name)), unit]),
      }
  }
}

/** The rows of a list, or of the lists inside the rows of another: those begin with the name of the outer row. */
function rowTable(lists: readonly string[], columns: readonly string[], answer: unknown): Table {
  const [outer = '', inner] = lists
  const outerRows = listAt(answer, outer)
  if (inner === undefined)
    return { columns: [...columns], rows: outerRows.map((row) => columns.map((name) => cell(at(row, name)))) }
  const rows = outerRows.flatMap((row, index) =>
    listAt(row, inner).map((below) => [nameOf(row, index), ...columns.map((name) => cell(at(below, name)))]),
  )
  return { columns: [outer, ...columns], rows }
}

function columnTable(columns: readonly string[], lists: unknown): Table {
  const given = columns.map((name) => listAt(lists, name))
  const length = Math.max(0, ...given.map((list) => list.length))
  const rows = Array.from({ length }, (_, index) => given.map((list) => cell(list[index])))
  return { columns: [...columns], rows }
}

/** A row is called by its `id` or, without one, counted from 0 as in the answer. */
function nameOf(row: unknown, index: number): Cell {
  const id = at(row, 'id')
  return typeof id === 'string' ? id : index
}

const listAt = (value: unknown, path: string): readonly unknown[] => {
  const list = at(value, path)
  return Array.isArray(list) ? list : []
}

function at(value: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (below, name) => (typeof below === 'object' && below !== null ? Reflect.get(below, name) : undefined),
      value,
    )
}

function cell(value: unknown): Cell {
  if (Array.isArray(value)) return value.map((item) => cell(item)).join('; ')
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value
  return null
}

/** A number as digits, never with an exponent: not every sheet reads 1e-7 as a number. */
export function plainNumber(value: number, decimal: DecimalMark): string {
  const text = String(value)
  const plain = text.includes('e')
    ? value.toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 20 })
    : text
  return decimal === 'comma' ? plain.replace('.', ',') : plain
}
