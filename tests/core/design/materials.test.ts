import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { designCheck } from '../../../src/core/design/design-check.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Design } from '../../../src/schema/design.ts'

const pair: Design = JSON.parse(
  readFileSync(new URL('../../designs/shelf-pair.json', import.meta.url), 'utf8'),
)

function materialsOf(given: Design) {
  const outcome = designCheck(given)
  if (isRefusal(outcome)) throw new Error('refused')
  return outcome.sections.materials
}
const rowOf = (given: Design, word: string) => materialsOf(given).find(({ item }) => item.includes(word))

test('the resistor of a strong lamp is bought for its heat', () => {
  const hot: Design = { ...pair, supply: { ...pair.supply, indicator: { forwardV: 2, currentMa: 20 } } }
  // (12 - 2) V through the next E12 value of 500 ohm, 560 ohm: 179 mW, so half a watt at half its load.
  expect(rowOf(hot, 'resistor 560 ohm')?.note).toMatch(/^0.5 W/)
})

test('an output capacitor is bought only for a single-ended board without one', () => {
  const board = (amplifier: Design['amplifier']): Design => ({
    ...pair,
    amplifier: { ...pair.amplifier, ...amplifier },
  })
  expect(rowOf(pair, 'output capacitor')).toBeUndefined()
  expect(rowOf(board({ output: 'single-ended' }), 'output capacitor')?.count).toBe(2)
  expect(
    rowOf(board({ output: 'single-ended', outputCapacitorFitted: true }), 'output capacitor'),
  ).toBeUndefined()
})

test('a switch is listed when the design has one, for the current of a full sine', () => {
  expect(rowOf(pair, 'switch')).toBeUndefined()
  // Two channels below 9 W each from 12 V at 0.88: between 1 and 2 A; 2 A is the next usual rating.
  expect(rowOf({ ...pair, supply: { ...pair.supply, switchRatedA: 3 } }, 'switch')?.note).toMatch(/^2 A/)
})
