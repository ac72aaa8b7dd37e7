import { describe, expect, it } from 'vitest'
import {
  changed,
  type Draft,
  draftFrom,
  leavesOf,
  valueAt,
  withValue,
} from '../../src/kiosk/browser/draft.ts'

const pair: Draft = {
  boxes: 2,
  drivers: [{ id: 'main', parameters: { fsHz: 124 } }],
  box: { kind: 'vented', outer: { widthMm: 120, heightMm: 240, depthMm: 160 } },
}

describe('a place of the design', () => {
  // RFC 6901, section 5: the examples of the standard.
  const standard = { foo: ['bar', 'baz'], '': 0, 'a/b': 1, 'm~n': 8, ' ': 7 }
  it.each([
    ['', standard],
    ['/foo', ['bar', 'baz']],
    ['/foo/0', 'bar'],
    ['/', 0],
    ['/a~1b', 1],
    ['/m~0n', 8],
    ['/ ', 7],
    ['/nothing/there', undefined],
    ['/constructor', undefined],
  ])('%j', (pointer, value) => {
    expect(valueAt(standard, pointer)).toEqual(value)
  })

  it('is put without touching the design before', () => {
    const before = JSON.stringify(pair)
    const after = withValue(pair, '/drivers/0/frame/depthMm', '1 1/2 in')
    expect(valueAt(after, '/drivers/0/frame')).toEqual({ depthMm: '1 1/2 in' })
    expect(JSON.stringify(pair)).toBe(before)
  })

  it('leaves no empty object behind when it goes, but what a design must have', () => {
    const framed = withValue(pair, '/drivers/0/frame/depthMm', 38)
    expect(withValue(framed, '/drivers/0/frame/depthMm', undefined)).toEqual(pair)
    expect(withValue(pair, '/drivers/0/parameters/fsHz', undefined)).toMatchObject({
      drivers: [{ id: 'main', parameters: {} }],
    })
  })

  it('takes a driver out of the list and puts one at its end', () => {
    const two = withValue(pair, '/drivers/-', { id: 'second', parameters: {} })
    expect(valueAt(two, '/drivers/1/id')).toBe('second')
    expect(valueAt(withValue(two, '/drivers/0', undefined), '/drivers')).toEqual([
      { id: 'second', parameters: {} },
    ])
  })
})

describe('a place that holds something else than it should', () => {
  it('gives way to what is typed there', () => {
    expect(withValue({ box: [] }, '/box/kind', 'closed')).toEqual({ box: { kind: 'closed' } })
    expect(withValue({ drivers: {} }, '/drivers/-', 'one')).toEqual({ drivers: ['one'] })
    expect(withValue({ drivers: [7] }, '/drivers/0/id', 'one')).toEqual({ drivers: [{ id: 'one' }] })
  })

  it('never reaches into what every object has', () => {
    const before = JSON.parse('{"__proto__": {"box": 1}}')
    expect(Object.keys(withValue(before, '/box', 2))).toEqual(['__proto__', 'box'])
    expect(Object.prototype).not.toHaveProperty('box')
  })
})

describe('a remedy', () => {
  it('takes what a remedy adds to a list before what stands there (RFC 6902, 4.1)', () => {
    const listed: Draft = { stock: [{ thicknessMm: 12 }, { thicknessMm: 18 }] }
    const more = changed(listed, [{ op: 'add', path: '/stock/1', value: { thicknessMm: 15 } }])
    expect(valueAt(more, '/stock')).toEqual([{ thicknessMm: 12 }, { thicknessMm: 15 }, { thicknessMm: 18 }])
    const last = changed(listed, [{ op: 'add', path: '/stock/-', value: { thicknessMm: 15 } }])
    expect(valueAt(last, '/stock/2/thicknessMm')).toBe(15)
  })

  it('changes the design step by step, RFC 6902', () => {
    const closed = changed(withValue(pair, '/port', { tuningHz: 100 }), [
      { op: 'replace', path: '/box/kind', value: 'closed' },
      { op: 'remove', path: '/port' },
      { op: 'add', path: '/box/lining', value: 'filled' },
    ])
    expect(closed).toEqual({ ...pair, box: { ...Object(pair['box']), kind: 'closed', lining: 'filled' } })
  })
})

describe('a design from elsewhere', () => {
  it.each(['', 'null', '[]', '7', '{', '"text"'])('%j is none', (text) => {
    expect(draftFrom(text)).toBeUndefined()
  })
  it('is none when it is longer than the service takes', () => {
    expect(draftFrom(JSON.stringify({ name: 'x'.repeat(300_000) }))).toBeUndefined()
  })
  it('tells every place that holds a value', () => {
    expect(leavesOf({ a: [1, { 'b/c': 2 }], d: null })).toEqual(['/a/0', '/a/1/b~1c', '/d'])
  })
})
