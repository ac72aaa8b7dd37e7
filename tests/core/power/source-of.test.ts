import { expect, test } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cellsInSeriesOf } from '../../../src/core/power/battery.ts'
import { sourceOf } from '../../../src/core/power/source-of.ts'
import type { Amplifier, Supply } from '../../../src/schema/power.ts'

function sourceFrom(supply: Supply, amplifier: Amplifier = {}) {
  const resolved = sourceOf(supply, amplifier)
  if (isRefusal(resolved)) throw new Error('refused')
  return resolved
}

// A lithium cell has 3.0 V empty, 3.7 V nominal, 4.2 V full: common practice, no source.
test('a pack of three cells has a lowest, a nominal and a highest voltage', () => {
  const { source } = sourceFrom({ kind: 'cells', cellsInSeries: 3 })
  expect(source.lowestVoltageV).toBeCloseTo(9, 9)
  expect(source.voltageV).toBeCloseTo(11.1, 9)
  expect(source.highestVoltageV).toBeCloseTo(12.6, 9)
})

test('a pack of which only the voltage is given has the cells that fit it, and it is said', () => {
  const { source, assumptions } = sourceFrom({ kind: 'cells', voltageV: 14.8 })
  expect(source.lowestVoltageV).toBeCloseTo(12, 9)
  expect(source.highestVoltageV).toBeCloseTo(16.8, 9)
  expect(assumptions).toContainEqual(expect.objectContaining({ at: '/supply/cellsInSeries', value: 4 }))
})

test('other sources have one voltage', () => {
  const { source, assumptions } = sourceFrom({ kind: 'adapter', voltageV: 12 })
  expect(source).toMatchObject({ lowestVoltageV: 12, highestVoltageV: 12, cellsInSeries: null })
  expect(assumptions.map(({ at }) => at)).toEqual(['/supply/currentLimitA'])
})

test('a source of which neither socket nor label is known is said not to be judged by its current', () => {
  const unknown = expect.objectContaining({ at: '/supply/currentLimitA', value: 'unknown' })
  expect(sourceFrom({ kind: 'charger', voltageV: 5 }).assumptions).toContainEqual(unknown)
  expect(sourceFrom({ kind: 'charger', voltageV: 5, currentLimitA: 2 }).assumptions).toEqual([])
})

test.each([
  [3.7, 1],
  [7.4, 2],
  [9, 3],
  [11.1, 3],
  [12, 3],
  [22.2, 6],
  // Between the full single cell and the empty pair there is nothing: a converter stands behind the cells.
  [5, null],
  [1.5, null],
])('%d V is a pack of %s cells', (voltageV, cells) => {
  expect(cellsInSeriesOf(voltageV)).toBe(cells)
})

// Type-C currents by what the sink asks for: USB Type-C, seen in summaries; 5 A wants a marked lead.
test.each([
  ['type-c-3a', false, false, 0.5],
  ['type-c-3a', true, false, 3],
  ['type-c-1.5a', false, false, 0.5],
  ['power-delivery', false, true, 0.5],
  ['power-delivery', true, false, 3],
  ['power-delivery', true, true, 5],
  ['charging-port', false, false, 1.5],
] as const)('%s, board asks %s, marked lead %s: %d A', (port, asksForPower, marked5A, limitA) => {
  const supply: Supply = { kind: 'charger', port, cable: { lengthM: 1, marked5A } }
  const { source } = sourceFrom(supply, { supplyVoltageV: 20, asksForPower })
  expect(source.currentLimitA).toBe(limitA)
})

test.each([
  // The label of a charger tells what it gives to a board that asks, through a lead that may carry it.
  ['type-c-3a', 3, false, false, 0.5],
  ['power-delivery', 5, true, false, 3],
  ['power-delivery', 2.25, true, false, 2.25],
  ['charging-port', 2.4, false, false, 2.4],
] as const)(
  '%s labelled %d A, board asks %s, marked lead %s: %d A',
  (port, given, asksForPower, marked5A, limitA) => {
    const supply: Supply = { kind: 'charger', port, currentLimitA: given, cable: { lengthM: 1, marked5A } }
    const { source, assumptions } = sourceFrom(supply, { supplyVoltageV: 20, asksForPower })
    expect(source.currentLimitA).toBe(limitA)
    expect(assumptions.some(({ at }) => at === '/supply/currentLimitA')).toBe(limitA < given)
  },
)
