import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jsonFault } from '../../src/api/json-fault.ts'

const SEED = 20_260_104
const RUNS = 2000

describe('where a text stops being JSON, and why', () => {
  it.each([
    ['{"netVolumeL": 3', 1, 17, 'it ends where a comma or } is expected'],
    ['{"netVolumeL": NaN}', 1, 16, 'JSON has no NaN and no Infinity'],
    ['{"netVolumeL": -Infinity}', 1, 16, 'JSON has no NaN and no Infinity'],
    ['{\n  "netVolumeL": 2,2\n}', 2, 19, 'a number takes a decimal point, not a comma'],
    ['{"count": 1,}', 1, 13, 'there is a comma too many'],
    ['[1, 2, ]', 1, 8, 'there is a comma too many'],
    ['{count: 1}', 1, 2, 'names stand in double quotes'],
    ["{'count': 1}", 1, 2, 'names and text stand in double quotes'],
    ['{"count": 1 // one\n}', 1, 13, 'JSON has no comments'],
    ['{"count": 1 "lengthMm": 2}', 1, 13, 'a comma or } is expected, not "lengthMm"'],
    ['{"count" 1}', 1, 10, 'a colon is expected, not 1'],
    ['{"name": "a\nb"}', 1, 10, 'this text has no closing quote'],
    ['{"name": "a\\x"}', 1, 10, 'this text has no closing quote'],
    ['{"count": 01}', 1, 11, 'a number is written like'],
    ['{"count": .5}', 1, 11, 'a number is written like'],
    ['{"count": undefined}', 1, 11, 'a value is expected, not undefined'],
    ['{"a": [1, 2}', 1, 12, 'a comma or ] is expected, not }'],
    ['{} {}', 1, 4, 'the end is expected, not {'],
    ['{"a":\u00a01}', 1, 6, 'a value is expected, not an invisible sign'],
    ['<html>', 1, 1, 'a value is expected, not <'],
  ])('%j', (text, line, column, cause) => {
    expect(() => JSON.parse(text)).toThrow(SyntaxError)
    expect(jsonFault(text)).toContain(`at line ${line}, column ${column}: ${cause}`)
  })

  it('echoes no more than a word', () => {
    expect(jsonFault(`{"a": ${'secret'.repeat(1000)}}`).length).toBeLessThan(120)
  })

  it('is not confused by 50,000 nested lists', () => {
    expect(jsonFault('['.repeat(50_000))).toContain('column 50001: it ends where a value or ] is expected')
  })
})

/** The engine's own message tells the place of some faults; where a number is broken it points into the number. */
it(`finds the place that the engine tells, in ${RUNS} broken texts of seed ${SEED}`, () => {
  let told = 0
  const broken = fc
    .tuple(fc.json({ maxDepth: 3 }), fc.nat(), fc.constantFrom(...'{}[],:"x0-.e \n\\'))
    .map(
      ([text, any, sign]) =>
        text.slice(0, any % (text.length + 1)) + sign + text.slice(any % (text.length + 1)),
    )
    .filter((text) => complaintOf(text) !== undefined)
  fc.assert(
    fc.property(broken, (text) => {
      const place = placeOf(text)
      expect(place).toBeLessThanOrEqual(text.length)
      const engines = /^(?:Expected|Unexpected non-whitespace).* at position (\d+)/.exec(
        complaintOf(text) ?? '',
      )
      if (engines === null) return
      told += 1
      expect(text.slice(place, Number(engines[1]))).toMatch(/^[\w.+-]*$/)
      expect(place).toBeLessThanOrEqual(Number(engines[1]))
    }),
    { seed: SEED, numRuns: RUNS },
  )
  expect(told).toBeGreaterThan(RUNS / 10)
})

function placeOf(text: string): number {
  const [, line, column] = /line (\d+), column (\d+): /.exec(jsonFault(text)) ?? []
  const before = text.split('\n').slice(0, Number(line) - 1)
  return before.reduce((sum, { length }) => sum + length + 1, Number(column) - 1)
}

function complaintOf(text: string): string | undefined {
  try {
    JSON.parse(text)
    return undefined
  } catch (error) {
    return String(error).replace('SyntaxError: ', '')
  }
}
