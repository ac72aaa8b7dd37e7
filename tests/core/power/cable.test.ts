import { expect, test } from 'vitest'
import {
  boardVoltageV,
  CLASS_5_OHM_PER_KM,
  copperOhmPerKm,
  gaugeAreaMm2,
  gaugeDiameterMm,
  largestDeliverableW,
  leastAreaMm2,
  loopResistanceOhm,
  speakerLead,
} from '../../../src/core/power/cable.ts'
import { holdRows } from './hold-rows.ts'

const drop = (inputs: {
  lengthM: number
  gaugeAwg: number
  contacts?: number
  contactResistanceOhm?: number
  copperCladAluminium?: boolean
  temperatureC?: number
  currentA?: number
}) => {
  const { lengthM, gaugeAwg, contacts = 0, contactResistanceOhm = 0 } = inputs
  const loopOhm = loopResistanceOhm(
    { lengthM, gaugeAwg, contacts, contactResistanceOhm, copperClad: inputs.copperCladAluminium === true },
    inputs.temperatureC,
  )
  return { loopResistanceOhm: loopOhm, dropV: loopOhm * (inputs.currentA ?? 0) }
}

holdRows('cable', {
  'awg-': ({ gaugeAwg, temperatureC }) => ({
    diameterMm: gaugeDiameterMm(gaugeAwg),
    areaMm2: gaugeAreaMm2(gaugeAwg),
    resistanceOhmPerKm: copperOhmPerKm(gaugeAreaMm2(gaugeAwg), temperatureC),
  }),
  'iec60228-': ({ areaMm2 }) => ({ largestResistanceOhmPerKm: CLASS_5_OHM_PER_KM.get(areaMm2) }),
  'cable-': drop,
  'copper-clad': drop,
  'voltage-at-board-': ({ supplyVoltageV, loopResistanceOhm: loop, powerDrawnW }) => ({
    boardVoltageV: boardVoltageV(supplyVoltageV, loop, powerDrawnW),
    largestDeliverableW: largestDeliverableW(supplyVoltageV, loop),
  }),
})

holdRows('speaker-lead', {
  'lead-': ({ lengthM, resistanceOhmPerKm, loadOhm, reOhm }) => {
    const loopOhm = (2 * lengthM * resistanceOhmPerKm) / 1000
    return { loopOhm, ...speakerLead(loopOhm, loadOhm, reOhm) }
  },
})

test('a printed cross-section is read by the standard, any other by its copper', () => {
  const lead = { lengthM: 10, contacts: 0 }
  expect(loopResistanceOhm({ ...lead, areaMm2: 0.75 })).toBeCloseTo(0.52, 9)
  // 17.241 ohm mm²/km over 0.7 mm², out and back over 10 m.
  expect(loopResistanceOhm({ ...lead, areaMm2: 0.7 })).toBeCloseTo((17.241 / 0.7) * 0.02, 9)
})

test('the least cross-section loses just the share it is laid out for', () => {
  const area = leastAreaMm2(2, 0.04, 5, 1.5, 0.05) ?? 0
  const loopOhm = loopResistanceOhm({ lengthM: 2, areaMm2: area, contacts: 4, contactResistanceOhm: 0.01 })
  expect((loopOhm * 1.5) / 5).toBeCloseTo(0.05, 9)
  // The plugs alone: 0.2 ohm at 1.5 A are 6 % of 5 V.
  expect(leastAreaMm2(2, 0.2, 5, 1.5, 0.05)).toBeNull()
})
