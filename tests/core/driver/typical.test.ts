import { describe, expect, it } from 'vitest'
import { validatorOf } from '../../../src/api/validator.ts'
import { completeDriver } from '../../../src/core/driver/complete.ts'
import { type DriverGuess, typicalDriver } from '../../../src/core/driver/typical.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { DriverParameters } from '../../../src/schema/driver.ts'
import { checks } from '../../outside/checks.ts'
import { C, RHO } from '../../outside/loudspeaker-netlist.ts'
import { MIDDLE, SHARP, SMALL } from '../../outside/measurement-drivers.ts'

const fits = validatorOf(DriverParameters)

function guessed(known: Parameters<typeof typicalDriver>[0]): DriverGuess {
  const guess = typicalDriver(known)
  if (guess === null) throw new Error('no guess')
  return guess
}

const range = ({ ranges }: DriverGuess, name: string) => {
  const row = ranges.find(({ figure }) => figure === name)
  if (row === undefined) throw new Error(`no ${name}`)
  return row
}

/** Invented drivers that the published and simulated checks of this project use; no data sheets. */
const EXAMPLES = [
  SMALL,
  MIDDLE,
  SHARP,
  ...checks('acoustics-checks.json', 'system-figures').map(({ inputs }) => inputs['driver']),
]

describe('a guess from the size', () => {
  it.each(EXAMPLES)('has the example of $sdCm2 cm2 and $fsHz Hz within its ranges', (driver) => {
    const guess = guessed({ sdCm2: driver.sdCm2, ratedImpedanceOhm: driver.reOhm / 0.85 })
    const qts = (driver.qes * driver.qms) / (driver.qes + driver.qms)
    const told = { fsHz: driver.fsHz, vasL: driver.vasL, qes: driver.qes, qts, reOhm: driver.reOhm }
    for (const [figure, value] of Object.entries(told)) {
      const { from, to } = range(guess, figure)
      expect(value, figure).toBeGreaterThanOrEqual(from)
      expect(value, figure).toBeLessThanOrEqual(to)
    }
  })

  it('takes the area of the circle, π d²/4 (geometry)', () => {
    expect(guessed({ surroundDiameterMm: 60 }).parameters.sdCm2).toBeCloseTo(9 * Math.PI, 9)
    expect(guessed({ sdCm2: 28 }).parameters.sdCm2).toBe(28)
  })

  it('believes a meter, and takes 0.85 of a rated impedance without one (common practice, no source)', () => {
    expect(guessed({ sdCm2: 28, meterOhm: 3.4, ratedImpedanceOhm: 8 }).parameters.reOhm).toBe(3.4)
    expect(guessed({ sdCm2: 28, ratedImpedanceOhm: 8 }).parameters.reOhm).toBeCloseTo(6.8, 9)
  })

  it.each([20, 40, 60, 100, 165, 250, 400])('of %d mm is a driver that can be', (surroundDiameterMm) => {
    const { parameters, ranges } = guessed({ surroundDiameterMm, meterOhm: 6 })
    const { fsHz = 0, vasL = 0, sdCm2 = 0 } = parameters
    expect(fits(parameters)).toBe(true)
    expect(isRefusal(completeDriver(parameters, ''))).toBe(false)
    // Vas = ρ c² Sd² Cms and fs = 1/(2π √(Mms Cms)), R. H. Small 1972, from memory.
    const cms = (vasL * 1e-3) / (RHO * C * C * (sdCm2 * 1e-4) ** 2)
    const mmsG = 1000 / ((2 * Math.PI * fsHz) ** 2 * cms)
    // Paper cones with their coils weigh 0.04 to 0.2 g a square centimetre: common practice, no source.
    expect(mmsG / sdCm2).toBeGreaterThan(0.04)
    expect(mmsG / sdCm2).toBeLessThan(0.2)
    for (const { from, value, to, figure } of ranges) {
      expect(from, figure).toBeLessThanOrEqual(value)
      expect(to, figure).toBeGreaterThanOrEqual(value)
    }
  })

  it('total Q, electrical and mechanical Q are of one driver (1/Qts = 1/Qes + 1/Qms)', () => {
    const guess = guessed({ sdCm2: 28 })
    const [qts, qes, qms] = ['qts', 'qes', 'qms'].map((name) => range(guess, name).value)
    expect(1 / (qts ?? 0)).toBeCloseTo(1 / (qes ?? 0) + 1 / (qms ?? 0), 9)
  })

  it('is none without a size, or beyond 20 to 400 mm', () => {
    expect(typicalDriver({ meterOhm: 3.4 })).toBeNull()
    expect(typicalDriver({ surroundDiameterMm: 19.9 })).toBeNull()
    expect(typicalDriver({ surroundDiameterMm: 401 })).toBeNull()
  })
})
