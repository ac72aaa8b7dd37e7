import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { csvRows } from '../../src/api/csv-rows.ts'

const read = (text: string) => [...csvRows(Buffer.from(text))].filter((part) => part !== 'pause')
const cellsOf = (text: string) => read(text).map(({ cells }) => cells)
const faultsOf = (text: string) => read(text).map(({ fault }) => fault)

/** Cells as RFC 4180, section 2, has them written: in quotes where they must be, or all of them. */
function written(rows: readonly (readonly string[])[], separator: string, lineEnd: string, all: boolean) {
  const cellText = (cell: string) =>
    all || /[",;\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell
  return rows.map((row) => row.map(cellText).join(separator)).join(lineEnd)
}

describe('rows of a CSV text', () => {
  const cell = fc.oneof(
    fc.string({ unit: fc.constantFrom('"', ',', ';', '\t', '\r', '\n', ' ', 'a', 'µ', '🔊'), maxLength: 8 }),
    fc.double({ noNaN: true }).map(String),
  )
  const table = fc
    .integer({ min: 2, max: 5 })
    .chain((length) => fc.array(fc.array(cell, { minLength: length, maxLength: length }), { maxLength: 8 }))

  it.each([
    [',', '\n'],
    [';', '\r\n'],
    ['\t', '\r'],
  ])('are those that were written, parted by %j and ended by %j', (separator, lineEnd) => {
    fc.assert(
      fc.property(table, fc.boolean(), (rows, quoted) => {
        const names = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j']
        const sheet = [names, ...rows]
        expect(cellsOf(written(sheet, separator, lineEnd, quoted))).toEqual(sheet)
      }),
      { seed: 20, numRuns: 300 },
    )
  })

  it('end where quotes open on and on without an end, and that is said in the last', () => {
    const rows = read(`a,b\n1,2\n${'",",\n""a'.repeat(1000)}`)
    expect(rows.length).toBeLessThan(10)
    expect(rows[1]).toEqual({ cells: ['1', '2'] })
    expect(rows.at(-1)?.fault).toContain('the rest of the sheet is not read')
    expect(read(`a,b\n${'"x,1\n'.repeat(1000)}`).filter(({ fault }) => fault?.includes('rest'))).toEqual([])
  })

  it('are read from any bytes, to the end and without a line twice', () => {
    const texts = fc.string({ unit: fc.constantFrom('"', '"', ',', '\n', '\r', 'a'), maxLength: 60 })
    fc.assert(
      fc.property(texts, (text) => {
        const lines = text.split(/[\r\n]+/).filter((line) => line !== '')
        expect(read(text).length).toBeLessThanOrEqual(lines.length)
        expect(cellsOf(`${text}\n`)).toEqual(cellsOf(text))
      }),
      { seed: 21, numRuns: 2000 },
    )
  })

  it.each([
    ['5" two,x', ['5" two', 'x']],
    ['5",x', ['5"', 'x']],
    ['6 1/4"" ,x', ['6 1/4"" ', 'x']],
    ['"5"" speaker" x,y', ['"5"" speaker" x', 'y']],
    ['"5" speaker,y', ['"5" speaker', 'y']],
    ['"5"" speaker",y', ['5" speaker', 'y']],
    ['"",y', ['', 'y']],
  ])('have inch marks as text: %s', (line, cells) => {
    expect(read(`a,b\n${line}\nlast,row`)).toEqual([
      { cells: ['a', 'b'] },
      { cells },
      { cells: ['last', 'row'] },
    ])
  })

  it('tell of a quote that is never closed in their own line, and the next line is read', () => {
    const text = 'a,b\n"x,1\ny,"2\n"more\nlines",3\n"z,4'
    expect(cellsOf(text)).toEqual([
      ['a', 'b'],
      ['"x', '1'],
      ['y', '"2'],
      ['more\nlines', '3'],
      ['"z', '4'],
    ])
    const never = (cell: number) => `the quote that opens cell ${cell} of the row is never closed`
    expect(faultsOf(text)).toEqual([undefined, never(1), never(2), undefined, never(1)])
  })

  it('end at 64 KiB, with the cells before that, and the next is read', () => {
    const long = 'x'.repeat(70_000)
    for (const cell of [long, `"${long}"`, `"${'y\n""'.repeat(20_000)}"`]) {
      const rows = read(`a,b,c\nlabel,${cell},3\nlast,row,4\n`)
      expect(rows).toEqual([
        { cells: ['a', 'b', 'c'] },
        { cells: ['label'], fault: 'the row is longer than 64 KiB' },
        { cells: ['last', 'row', '4'] },
      ])
    }
    expect(faultsOf(`a,b\n${'x'.repeat(65_534)},1\n`)).toEqual([undefined, undefined])
  })
})
