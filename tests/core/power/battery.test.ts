import { expect, test } from 'vitest'
import { cleanOutput } from '../../../src/core/power/amplifier.ts'
import {
  bankEnergyWh,
  bankHours,
  keepAlive,
  packHours,
  packVoltages,
} from '../../../src/core/power/battery.ts'
import { holdRows } from './hold-rows.ts'

holdRows('battery', {
  'run-time-': ({ capacityMah, outputV, currentA, converterEfficiency }) => ({
    energyWh: bankEnergyWh(capacityMah),
    hours: bankHours(capacityMah, outputV, currentA, converterEfficiency),
  }),
  'bank-idle-cutoff': (inputs) => {
    const idleMa = inputs.quiescentCurrentMa + inputs.indicatorCurrentMa
    const awake = keepAlive(inputs.supplyVoltageV, inputs.cutoffCurrentMa, idleMa)
    return {
      idleMa,
      switchesOff: awake !== null,
      keepAliveOhm: awake?.resistorOhm,
      keepAliveW: awake?.dissipationW,
    }
  },
  'pack-': ({ cellsInSeries }) => {
    const pack = packVoltages(cellsInSeries)
    return { ...pack, above24V: pack.fullV > 24 }
  },
  'pack-3s-power-span': ({ cellsInSeries, loadOhm, outputResistanceOhm }) => {
    const pack = packVoltages(cellsInSeries)
    const stage = { output: 'bridge', outputResistanceOhm, largestDuty: 1 } as const
    const cleanPowerFullW = cleanOutput(stage, pack.fullV, loadOhm).powerW
    const cleanPowerEmptyW = cleanOutput(stage, pack.emptyV, loadOhm).powerW
    return {
      cleanPowerFullW,
      cleanPowerEmptyW,
      differenceDb: 10 * Math.log10(cleanPowerFullW / cleanPowerEmptyW),
    }
  },
  'pack-runtime-': ({ capacityMah, cellsInSeries, averagePowerDrawnW }) => ({
    hours: packHours(capacityMah, cellsInSeries, averagePowerDrawnW),
  }),
})

test('a bank that the idle current keeps awake needs no resistor', () => {
  expect(keepAlive(5, 50, 50)).toBeNull()
  expect(keepAlive(5, 50, 49)).not.toBeNull()
})
