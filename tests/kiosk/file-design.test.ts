import { expect, it } from 'vitest'
import { designFrom } from '../../src/kiosk/browser/file-design.ts'

it.each([['{}'], ['{"name":"page","version":"1.0"}'], ['[1]'], ['{"drivers":'], ['{"toString":1}']])(
  '%s is no design',
  (text) => expect(designFrom(text)).toBeUndefined(),
)

it('anything with one member of a design is one, to be mended on the page', () => {
  expect(designFrom('{"box":7}')).toEqual({ box: 7 })
})

it.each([9000, 60_000])('a wiring nested %s deep is no design', (depth) => {
  const text = `{"wiring":${'{"series":['.repeat(depth / 10)}${'['.repeat(depth)}${']'.repeat(depth)}${']}'.repeat(depth / 10)}}`
  expect(designFrom(text)).toBeUndefined()
})
