import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Burst, lowestBurstVoltageV } from '../../../src/core/power/bass-burst.ts'
import { boardVoltageV } from '../../../src/core/power/cable.ts'
import {
  droopV,
  holdUpMs,
  inrush,
  leastRatingV,
  portDipV,
  rippleSharing,
  softStartMs,
} from '../../../src/core/power/reservoir.ts'
import { holdRows } from './hold-rows.ts'

holdRows('reservoir', {
  'droop-': ({ reservoirUf, currentA, timeMs }) => ({ droopV: droopV(reservoirUf, currentA, timeMs) }),
  'hold-up-': ({ reservoirUf, fromV, toV, powerDrawnW }) => ({
    holdUpMs: holdUpMs(reservoirUf, fromV, toV, powerDrawnW),
  }),
  'sharing-': ({ sourceResistanceOhm, reservoirUf, toneHz }) => ({
    ...rippleSharing(sourceResistanceOhm, reservoirUf, toneHz),
  }),
  'burst-': (inputs: Omit<Burst, 'steadyPowerW'>) => {
    const burst = { ...inputs, steadyPowerW: 0 }
    const withIt = lowestBurstVoltageV(burst) ?? Number.NaN
    const without = lowestBurstVoltageV({ ...burst, reservoirUf: 0 }) ?? Number.NaN
    return { lowestVoltageV: withIt, gainOverNoCapacitorV: withIt - without }
  },
  'attach-inrush-': ({ reservoirUf, sourceResistanceOhm, voltageV }) => {
    const attach = inrush(reservoirUf, sourceResistanceOhm, voltageV)
    return { ...attach, resistorEnergyMj: attach.energyMj }
  },
  'soft-start-': ({ reservoirUf, voltageV, chargeCurrentMa }) => ({
    timeMs: softStartMs(reservoirUf, voltageV, chargeCurrentMa / 1000),
  }),
  'charge-share-': ({ portCapacitorUf, attachedUf, voltageV }) => {
    const dipV = portDipV(attachedUf, voltageV, portCapacitorUf)
    return { dipV, portVoltageV: voltageV - dipV }
  },
  'capacitor-rating-': ({ highestSupplyV, ratingsV }) => ({
    ratingV: leastRatingV(highestSupplyV, ratingsV),
  }),
})

describe('attach limit of a computer port', () => {
  test('1000 uF are a hundred times over, and 4.7 ohm in series do not mend that (common practice)', () => {
    expect(inrush(1000, 0.25, 5).timesOverAttachCharge).toBeGreaterThan(95)
    expect(inrush(1000, 4.7, 5).timesOverAttachCharge).toBeGreaterThan(85)
    expect(inrush(1000, 50, 5).withinAttachLimit).toBe(true)
  })
})

describe('bass burst', () => {
  const burst: Burst = {
    supplyVoltageV: 5,
    sourceResistanceOhm: 0.35,
    reservoirUf: 0,
    capacitorEsrOhm: 0.03,
    steadyPowerW: 0,
    averagePowerDrawnW: 4,
    toneHz: 50,
  }

  // The lowest voltages of the reference, section 8, run in a circuit simulator.
  test.each([
    [100, 50, 4.358],
    [1000, 50, 4.37],
    [4700, 50, 4.489],
    [100, 200, 4.36],
    [1000, 200, 4.468],
    [4700, 200, 4.631],
  ])('%i uF at %i Hz leaves %f V', (reservoirUf, toneHz, lowestV) => {
    expect(lowestBurstVoltageV({ ...burst, reservoirUf, toneHz })).toBeCloseTo(lowestV, 2)
  })

  test('without a capacitor it is the constant-power voltage at twice the average power', () => {
    expect(lowestBurstVoltageV(burst)).toBeCloseTo(boardVoltageV(5, 0.35, 8) ?? 0, 6)
  })

  test('the idle draw goes on between the peaks and is not doubled in them', () => {
    const idle = { ...burst, steadyPowerW: 0.5, averagePowerDrawnW: 3.5 }
    // Ohm's law at 0.5 + 2 · 3.5 W: (5 + √(25 − 4 · 0.35 · 7.5))/2.
    expect(lowestBurstVoltageV(idle)).toBeCloseTo((5 + Math.sqrt(25 - 4 * 0.35 * 7.5)) / 2, 6)
  })

  /** Steps a twentieth as long through all six cycles; the board by Newton's method from the highest it can be. */
  function steppedThroughV(given: Burst): number {
    const capacitance = given.reservoirUf * 1e-6
    const step = 1 / (8000 * given.toneHz)
    let capacitorV = given.supplyVoltageV
    let lowestV = given.supplyVoltageV
    for (let i = 1; i <= 48_000; i++) {
      const powerW = given.steadyPowerW + given.averagePowerDrawnW * (1 - Math.cos((2 * Math.PI * i) / 4000))
      const branchOhm = given.capacitorEsrOhm + step / capacitance
      let boardV = given.supplyVoltageV
      for (let round = 0; round < 8; round++) {
        const missingA =
          powerW / boardV -
          (given.supplyVoltageV - boardV) / given.sourceResistanceOhm -
          (capacitorV - boardV) / branchOhm
        boardV -= missingA / (1 / given.sourceResistanceOhm + 1 / branchOhm - powerW / boardV ** 2)
      }
      capacitorV += (((boardV - capacitorV) / branchOhm) * step) / capacitance
      lowestV = Math.min(lowestV, boardV)
    }
    return lowestV
  }

  test('a reservoir of any size is followed until nothing changes any more', () => {
    const between = (least: number, most: number) =>
      fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp)
    const bursts = fc.record({
      supplyVoltageV: between(5, 24),
      sourceResistanceOhm: between(0.05, 0.4),
      reservoirUf: between(10, 300_000),
      capacitorEsrOhm: between(0.005, 0.2),
      steadyPowerW: between(0.1, 1),
      averagePowerDrawnW: between(0.5, 6),
      toneHz: between(30, 100),
    })
    fc.assert(
      fc.property(bursts, (given) => {
        expect(lowestBurstVoltageV(given)).toBeCloseTo(steppedThroughV(given), 3)
      }),
      { seed: 20_260_211, numRuns: 60 },
    )
  })

  test('a draw above Vs²/4R collapses; without resistance nothing ever does', () => {
    expect(lowestBurstVoltageV({ ...burst, averagePowerDrawnW: 9 })).toBeNull()
    expect(lowestBurstVoltageV({ ...burst, averagePowerDrawnW: 9, sourceResistanceOhm: 0 })).toBe(5)
  })
})
