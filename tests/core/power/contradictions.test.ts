import { expect, test } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { amplifierFaults, supplyFaults } from '../../../src/core/power/contradictions.ts'
import { powerBudget } from '../../../src/core/power/power-budget.ts'
import type { Supply } from '../../../src/schema/power.ts'

const VOLTAGE = '/supply/voltageV'
const PORT = '/supply/port'

/** Bounds of a USB source: 4.75 V by USB 2.0, 5.5 V by Type-C, seen in summaries; of a lithium cell 3.0 and 4.2 V. */
const ROWS: [why: string, supply: Supply, places: string[]][] = [
  ['a computer port of 12 V', { kind: 'computer-port', port: 'usb2', voltageV: 12 }, [VOLTAGE]],
  ['a nameless computer port of 12 V', { kind: 'computer-port', voltageV: 12 }, [VOLTAGE]],
  ['a USB 3 port of 4.74 V', { kind: 'computer-port', port: 'usb3', voltageV: 4.74 }, [VOLTAGE]],
  ['a USB 3 port of 4.75 V', { kind: 'computer-port', port: 'usb3', voltageV: 4.75 }, []],
  ['a Type-C port of 5.5 V', { kind: 'computer-port', port: 'type-c-3a', voltageV: 5.5 }, []],
  ['a Type-C charger of 5.51 V', { kind: 'charger', port: 'type-c-3a', voltageV: 5.51 }, [VOLTAGE]],
  ['a charging port of 9 V', { kind: 'power-bank', port: 'charging-port', voltageV: 9 }, [VOLTAGE]],
  ['negotiated 20 V', { kind: 'computer-port', port: 'power-delivery', voltageV: 20 }, []],
  ['a charger without a named socket', { kind: 'charger', voltageV: 19 }, []],
  ['an adapter with a USB socket', { kind: 'adapter', port: 'usb2', voltageV: 12 }, [PORT]],
  ['cells with a USB socket', { kind: 'cells', port: 'type-c-3a', cellsInSeries: 1 }, [PORT]],
  ['three cells of 24 V', { kind: 'cells', cellsInSeries: 3, voltageV: 24 }, [VOLTAGE]],
  ['three cells of 8.9 V', { kind: 'cells', cellsInSeries: 3, voltageV: 8.9 }, [VOLTAGE]],
  ['three empty cells', { kind: 'cells', cellsInSeries: 3, voltageV: 9 }, []],
  ['three full cells', { kind: 'cells', cellsInSeries: 3, voltageV: 12.6 }, []],
  ['an adapter does not count cells', { kind: 'adapter', cellsInSeries: 3, voltageV: 24 }, []],
  [
    'gauge and cross-section',
    { kind: 'adapter', cable: { lengthM: 1, gaugeAwg: 22, areaMm2: 0.34 } },
    ['/supply/cable/areaMm2'],
  ],
  ['a gauge alone', { kind: 'adapter', cable: { lengthM: 1, gaugeAwg: 22 } }, []],
]

test.each(ROWS)('%s', (_, supply, places) => {
  expect(supplyFaults(supply).map(({ at }) => at)).toEqual(places)
})

test('the lowest supply of a board may be its highest, not more', () => {
  expect(amplifierFaults({ minimumSupplyV: 9, maximumSupplyV: 9 })).toEqual([])
  expect(amplifierFaults({ minimumSupplyV: 9.1, maximumSupplyV: 9 })).toEqual([
    { at: '/amplifier/minimumSupplyV', message: 'It must not be above maximumSupplyV, 9.00 V.' },
  ])
})

test('a power budget is refused with every contradiction at once', () => {
  const result = powerBudget({
    amplifier: { minimumSupplyV: 12, maximumSupplyV: 9 },
    supply: { kind: 'adapter', port: 'usb2-unconfigured', cable: { lengthM: 1, gaugeAwg: 22, areaMm2: 1 } },
  })
  expect(isRefusal(result) && result.faults.map(({ at }) => at)).toEqual([
    '/amplifier/minimumSupplyV',
    PORT,
    '/supply/cable/areaMm2',
  ])
})
