import { describe, expect, it } from 'vitest'
import { threeFrequencies } from '../../../src/core/as-built/classic.ts'
import type { DriverParameters } from '../../../src/schema/driver.ts'
import { measuredBox } from '../../outside/as-built-boxes.ts'
import { CLOSED_BOX, VENTED_PAIR } from '../../outside/as-built-plans.ts'
import { checks, expectWithin } from '../../outside/checks.ts'
import { told } from './told.ts'

const ROWS = checks('as-built-checks.json', 'as-built')

describe('the formulas of three frequencies', () => {
  it.each(ROWS.map((row) => [row.id, row] as const))('%s', (_, row) => {
    const { fLHz, fMHz, fHHz, zMOhm, reOhm, qes, qms } = row.inputs
    const found = threeFrequencies({ lower: fLHz, dip: fMHz, upper: fHHz }, zMOhm, reOhm, { qes, qms })
    expectWithin(row, 'tuningHz', found.tuningHz)
    expectWithin(row, 'driverResonanceInBoxHz', found.driverResonanceHz)
    expectWithin(row, 'alpha', found.alpha)
    expectWithin(row, 'leakageQ', found.leakageQ)
  })

  it('has no QL for a dip that is not above the resistance', () => {
    const { leakageQ } = threeFrequencies({ lower: 50, dip: 80, upper: 130 }, 3.5, 3.6, { qes: 0.5, qms: 3 })
    expect(leakageQ).toBeNull()
  })
})

const drivers = (parameters: DriverParameters) => [{ id: 'main', parameters }]

describe('the second opinion on a simulated sweep', () => {
  it.each(ROWS.map((row) => [row.id, row] as const))(
    '%s: as by hand, and within its known error',
    async (_, row) => {
      const { driver, box } = row.inputs['truth']
      const { kind, netVolumeL, tuningHz, leakageQ } = box
      const reading = await measuredBox(
        {
          id: row.id,
          driver,
          count: 1,
          wiring: 'parallel',
          sourceOhm: 0,
          netVolumeL,
          lossAtHz: tuningHz,
          leakageQ,
          absorptionQ: null,
          vent: { kind: 'plug', tuningHz, areaCm2: 5, portQ: null },
        },
        null,
        [60, 20, 1000],
      )
      const { secondOpinion } = told(
        {
          ...VENTED_PAIR.design,
          drivers: drivers(driver),
          wiring: 'main',
          box: { kind, netVolumeL, leakageQ, absorptionQ: null, portQ: null },
          port: { innerDiameterMm: 25, tuningHz, model: 'lumped' },
        },
        reading,
      ).sections
      const { resonanceHz, alpha, leakageQ: ql } = secondOpinion!
      // Readings off a curve of 60 points a decade, not the exact extremes of the row.
      expect(resonanceHz! / row.expected['tuningHz']).toBeCloseTo(1, 2)
      expect(alpha! / row.expected['alpha']).toBeCloseTo(1, 1.6)
      expect(ql! / row.expected['leakageQ']).toBeCloseTo(1, 1.6)
      // Acoustic reference: dip 0 to 2.5 % off fb, α 3 to 7 % high, QL 3 to 6 % low.
      expect(Math.abs(resonanceHz! / tuningHz - 1)).toBeLessThan(0.026)
      expect(Math.abs(alpha! / ((driver.vasL as number) / netVolumeL) - 1)).toBeLessThan(0.08)
      expect(Math.abs(ql! / leakageQ - 1)).toBeLessThan(0.08)
    },
  )

  it('closed: the peak is fc', async () => {
    const { secondOpinion } = told(CLOSED_BOX.design, await measuredBox(CLOSED_BOX.netlist)).sections
    const fc = 72 * Math.sqrt(1 + 6.5 / 6)
    expect(Math.abs(secondOpinion!.resonanceHz! / fc - 1)).toBeLessThan(0.01)
  })
})
