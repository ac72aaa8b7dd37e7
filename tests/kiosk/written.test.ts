import { describe, expect, it } from 'vitest'
import { asWritten, readNumbers, readWritten } from '../../src/kiosk/browser/written.ts'

describe('what is typed', () => {
  it.each([
    ['', '', undefined],
    ['  ', '', undefined],
    ['12', '', 12],
    ['12,5', '', 12.5],
    [' 12.5 ', '', 12.5],
    ['-3', '', -3],
    ['.5', '', 0.5],
    ['6 1/4 in', '', '6 1/4 in'],
    ['16,5 cm', '', '16.5 cm'],
    ['16', 'cm', '16 cm'],
    ['6 1/4', 'in', '6 1/4 in'],
    ['abc', '', 'abc'],
    ['1,200.5', '', 1200.5],
    ['1e3', '', '1e3'],
    ['24,000.5', '', 24000.5],
    ['1.200,5', '', 1200.5],
    ['1,200,000.25 mm', '', '1200000.25 mm'],
    // Three digits behind one comma: which was meant cannot be known, and the service asks.
    ['1,200', '', '1,200'],
    ['10,000', 'mAh', '10,000 mAh'],
    ['0,125', '', 0.125],
    ['1,25', '', 1.25],
    ['1.200', '', 1.2],
    // A number beyond those of a computer would be lost as null in JSON.
    ['9'.repeat(400), '', '9'.repeat(400)],
  ])('%j with the unit %j goes on as %j', (text, unit, value) => {
    expect(readWritten(text, unit)).toEqual(value)
  })

  it.each([
    [undefined, { text: '', unit: '' }],
    [12.5, { text: '12.5', unit: '' }],
    ['16 cm', { text: '16', unit: 'cm' }],
    ['6 1/4 in', { text: '6 1/4', unit: 'in' }],
    ['3 cubits', { text: '3 cubits', unit: '' }],
    ['abc', { text: 'abc', unit: '' }],
  ])('%j comes back as it was written', (value, shown) => {
    expect(asWritten(value, ['mm', 'cm', 'in'])).toEqual(shown)
  })

  it('a list keeps what it does not understand for the service to tell of', () => {
    expect(readNumbers('22, 25;32  35,5')).toEqual([22, 25, 32, 35.5])
    expect(readNumbers('22,25,32')).toEqual([22, 25, 32])
    expect(readNumbers('1 3/8 in, 2 in')).toEqual(['1 3/8 in', '2 in'])
    expect(readNumbers('35 mm 4 cm')).toEqual(['35 mm', '4 cm'])
    expect(readNumbers('22 x 35.5')).toEqual([22, 'x', 35.5])
    expect(readNumbers('  ')).toBeUndefined()
  })

  it('zero has no sign', () => {
    expect(Object.is(readWritten('-0'), 0)).toBe(true)
  })
})
