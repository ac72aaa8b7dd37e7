import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { csv } from '../../src/views/csv.ts'
import { type TableShape, tableFrom } from '../../src/views/table.ts'

const answer = {
  curves: { frequencyHz: [20, 1e-7, 200], splDb: [71.25, null, 80] },
  panels: [
    { id: 'front', sizeMm: { long: 240 }, edges: ['top', 'left'], holes: [{ id: 'a' }, { id: 'b' }] },
    { sizeMm: { long: 100 }, edges: [], holes: [{ id: 'c' }] },
  ],
  tuning: { fbHz: 105.5, name: 'flat' },
}

const CURVES: TableShape = { kind: 'columns', name: 'curves', columns: ['frequencyHz', 'splDb'] }

describe('a table of an answer', () => {
  it('has a column a list, and an empty cell where there is no value', () => {
    expect(tableFrom(CURVES, answer).rows).toEqual([
      [20, 71.25],
      [1e-7, null],
      [200, 80],
    ])
  })
  it('has a row an item, with what lies below a name and lists in one cell', () => {
    const shape: TableShape = { kind: 'rows', lists: ['panels'], columns: ['id', 'sizeMm.long', 'edges'] }
    expect(tableFrom(shape, answer).rows).toEqual([
      ['front', 240, 'top; left'],
      [null, 100, ''],
    ])
  })
  it('says before the rows of an inner list where they belong, by id or by position', () => {
    const shape: TableShape = { kind: 'rows', lists: ['panels', 'holes'], columns: ['id'] }
    expect(tableFrom(shape, answer)).toEqual({
      columns: ['panels', 'id'],
      rows: [
        ['front', 'a'],
        ['front', 'b'],
        [1, 'c'],
      ],
    })
  })
  it('keeps its columns when there is nothing to show', () => {
    expect(tableFrom(CURVES, {})).toEqual({ columns: ['frequencyHz', 'splDb'], rows: [] })
  })
  it('lists single values with their units', () => {
    const shape: TableShape = {
      kind: 'values',
      values: [
        { name: 'tuning.fbHz', unit: 'Hz' },
        { name: 'tuning.gone', unit: '' },
      ],
    }
    expect(tableFrom(shape, answer).rows).toEqual([
      ['tuning.fbHz', 105.5, 'Hz'],
      ['tuning.gone', null, ''],
    ])
  })
})

describe('CSV after RFC 4180 (Shafranovich, 2005)', () => {
  it('ends its lines in CRLF and writes numbers without exponents', () => {
    expect(csv(tableFrom(CURVES, answer))).toBe('frequencyHz,splDb\r\n20,71.25\r\n0.0000001,\r\n200,80\r\n')
  })
  it('quotes what has commas, quotes or line ends: an independent reader gets it back', () => {
    const texts = ['a,b', 'say "so"', 'two\nlines', 'plain']
    const text = csv({ columns: ['t'], rows: texts.map((item) => [item]) })
    expect(parse(text, { from: 2 }).flat()).toEqual(texts)
  })
  it('parts columns by semicolons when numbers have a decimal comma', () => {
    expect(csv({ columns: ['a', 'b'], rows: [[1.5, true]] }, 'comma')).toBe('a;b\r\n1,5;true\r\n')
  })
  it('does not let a text run as a formula, and leaves numbers alone', () => {
    const text = csv({ columns: ['a'], rows: [['=1+1'], ['@x'], [-2.5], ['-2.5 mm'], ['-1.5e-3'], ['-.5']] })
    expect(text).toBe("a\r\n'=1+1\r\n'@x\r\n-2.5\r\n'-2.5 mm\r\n-1.5e-3\r\n-.5\r\n")
  })
})
