import { describe, expect, it } from 'vitest'
import { spread } from '../../../src/core/driver/relations.ts'
import { driverMeasurement } from '../../../src/core/measurement/driver-measurement.ts'
import { handQ } from '../../../src/core/measurement/fit-start.ts'
import { peakBand } from '../../../src/core/measurement/peak-band.ts'
import { massFromShift, volumeFromBox } from '../../../src/core/measurement/second-opinion.ts'
import { studentPoint } from '../../../src/core/measurement/student.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { type Check, checks, expectWithin } from '../../outside/checks.ts'
import { benchSweep, MIDDLE, noisySweep, SHARP, SMALL } from '../../outside/measurement-drivers.ts'

const rows = new Map(checks('measurement-checks.json', 'measurement').map((row) => [row.id, row]))
function check(id: string): Check {
  const row = rows.get(id)
  if (row === undefined) throw new Error(`no check ${id}`)
  return row
}

describe('published formulas', () => {
  it('f1, f2 and Zmax give the Q (Small 1972)', () => {
    const row = check('fm-method')
    const { reOhm, zMaxOhm, f1Hz, f2Hz } = row.inputs
    const fHz = Math.sqrt(f1Hz * f2Hz)
    const { qms, qes } = handQ(
      { fHz, maximumOhm: zMaxOhm, lowerHz: f1Hz, upperHz: f2Hz, height: 2, readings: 9 },
      reOhm,
    )
    expectWithin(row, 'fsHz', fHz)
    expectWithin(row, 'qms', qms)
    expectWithin(row, 'qes', qes)
    expectWithin(row, 'qts', (qms * qes) / (qms + qes))
  })

  it('the same three give f1 and f2 back', () => {
    const { inputs, expected } = check('fm-method')
    const { f1Hz, f2Hz } = inputs
    const { fsHz, qms, qes } = expected
    const { lowerHz, upperHz } = peakBand({ fHz: fsHz, qms, qes })
    expect(lowerHz).toBeCloseTo(f1Hz, 2)
    expect(upperHz).toBeCloseTo(f2Hz, 2)
  })

  it('added mass gives the moving mass and the compliance (Small 1972)', () => {
    const row = check('added-mass')
    const { fsHz, fLoadedHz, addedMassG, sdCm2 } = row.inputs
    const mmsG = massFromShift(addedMassG, fsHz, fLoadedHz)
    const all = spread({ fsHz, mmsG, sdCm2 })
    expectWithin(row, 'mmsG', mmsG)
    expectWithin(row, 'cmsMmPerN', all.cmsMmPerN)
    expectWithin(row, 'vasL', all.vasL)
  })

  it('a known volume gives the compliance (Small 1972; Beranek and Mellow 2012)', () => {
    const row = check('known-volume')
    const { fsHz, qes, testVolumeL, fctHz, qect } = row.inputs
    expectWithin(row, 'vasL', volumeFromBox(testVolumeL, { fsHz, qes }, { fctHz, qect }))
  })

  it('a sweep of the circuit by its definition is fitted', () => {
    const row = check('lsq-free-air')
    const { frequencyHz, impedanceOhm, impedancePhaseDeg } = row.inputs
    const freeAir = { frequencyHz, impedanceOhm, phaseDeg: impedancePhaseDeg }
    const outcome = driverMeasurement({ drivers: [{ id: 'it', freeAir, sdCm2: 52 }] })
    if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
    for (const name of ['reOhm', 'leMh', 'fsHz', 'qms', 'qes'] as const)
      expectWithin(row, name, outcome.sections.measured[0]?.parameters[name])
  })

  // Percentage points of t, 97.5 %, printed tables of any statistics textbook.
  it.each([
    [2, 4.303],
    [3, 3.182],
    [5, 2.571],
    [10, 2.228],
    [20, 2.086],
    [60, 2.0],
    [1000, 1.962],
  ])('Student at %i degrees of freedom is %f', (freedom, printed) => {
    expect(Math.abs(studentPoint(freedom) / printed - 1)).toBeLessThan(0.01)
  })
})

describe('the hand formulas on the same sweep as the fit', () => {
  it.each([
    ['a small driver', SMALL, 2],
    ['a middle one', MIDDLE, 8],
    ['a sharp one', SHARP, 20],
  ])('agree for %s, on fine steps, within 4 %', async (_, truth, massG) => {
    const exact = async (bench: Parameters<typeof benchSweep>[1]) =>
      noisySweep(await benchSweep(truth, bench, 'dec 100 15 2000'), 0, Math.random, false)
    const outcome = driverMeasurement({
      drivers: [
        {
          id: 'it',
          freeAir: await exact({}),
          withMass: { massG, sweep: await exact({ massG }) },
          sdCm2: truth.sdCm2,
          meterOhm: truth.reOhm,
        },
      ],
    })
    if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
    const opinion = outcome.sections.measured[0]?.secondOpinion
    const near = (value: number | null | undefined, is: number, share: number) =>
      expect(Math.abs((value ?? Number.NaN) / is - 1), `${value} against ${is}`).toBeLessThan(share)
    near(opinion?.fsHz, truth.fsHz, 0.01)
    near(opinion?.qts, (truth.qms * truth.qes) / (truth.qms + truth.qes), 0.04)
    near(opinion?.vasL, truth.vasL, 0.04)
    expect(outcome.findings.map(({ code }) => code)).not.toContain('measurement-opinions-differ')
  })
})
