import { describe, expect, test } from 'vitest'
import { crossoverRules } from '../../../src/core/findings/crossover.ts'
import { driverInLoadRules, loadRules } from '../../../src/core/findings/load.ts'
import { loadImpedance } from '../../../src/core/load/load-impedance.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Driver } from '../../../src/schema/driver.ts'
import type { LoadImpedanceRequest } from '../../../src/schema/load-impedance.ts'

const GRID = Float64Array.from({ length: 40 }, (_, i) => 10 * 2000 ** (i / 39))

const ofResistance = (reOhm: number, id = 'main'): Driver => ({ id, parameters: { reOhm } })

function findingsOf(request: LoadImpedanceRequest) {
  const result = loadImpedance(request, new Map(), GRID)
  if (isRefusal(result)) throw new Error('refused')
  return result.findings
}

const codesOf = (request: LoadImpedanceRequest) => findingsOf(request).map(({ code }) => code)

const tweeter = (capacitorUf: number | undefined): LoadImpedanceRequest => ({
  drivers: [ofResistance(6), { ...ofResistance(6, 'tweeter'), sharesBox: false }],
  wiring: {
    parallel: ['main', capacitorUf === undefined ? 'tweeter' : { series: [{ capacitorUf }, 'tweeter'] }],
  },
})

const twoWay = (
  fsHz: number,
  crossover: LoadImpedanceRequest['crossover'],
  amplifier: LoadImpedanceRequest['amplifier'] = {},
): LoadImpedanceRequest => ({
  drivers: [ofResistance(8), { id: 'treble', sharesBox: false, parameters: { reOhm: 8, fsHz } }],
  wiring: { parallel: ['main', { series: [{ capacitorUf: 4.7 }, 'treble'] }] },
  ...(crossover && { crossover }),
  amplifier,
})

/** A driver behind a resistor: at 1 V it takes R/(R + Rs)² against 1/R of the one beside it. */
const behind = (resistorOhm: number): LoadImpedanceRequest => ({
  drivers: [ofResistance(8), ofResistance(8, 'b')],
  wiring: { parallel: [{ series: [{ inductorMh: 0.001 }, 'main'] }, { series: [{ resistorOhm }, 'b'] }] },
})

/** Just inside the limit says nothing, just outside does. */
const rows: [code: string, inside: LoadImpedanceRequest, outside: LoadImpedanceRequest][] = [
  [
    // 4 ohm rated minimum, 80 % of it is 3.2 (IEC 60268-5, from memory).
    'load-below-amplifier-minimum',
    { drivers: [ofResistance(3.21)], amplifier: { minimumLoadOhm: 4 } },
    { drivers: [ofResistance(3.19)], amplifier: { minimumLoadOhm: 4 } },
  ],
  ['load-shorts-amplifier', { drivers: [ofResistance(0.51)] }, { drivers: [ofResistance(0.49)] }],
  [
    // What a meter reads: 8 ohm beside the wire of a coil, 0.54 and 0.52 ohm in parallel with 8 ohm are 0.506 and 0.488.
    'load-shorts-direct-current',
    { drivers: [ofResistance(8)], wiring: { parallel: ['main', { inductorMh: 1000, resistanceOhm: 0.54 }] } },
    { drivers: [ofResistance(8)], wiring: { parallel: ['main', { inductorMh: 1000, resistanceOhm: 0.52 }] } },
  ],
  ['load-open', { drivers: [ofResistance(499)] }, { drivers: [ofResistance(501)] }],
  ['tweeter-without-capacitor', tweeter(4.7), tweeter(undefined)],
  [
    // Twice the power is 3.01 dB, so a ratio of 1.99 stays below.
    'drivers-share-unequally',
    { drivers: [ofResistance(4), ofResistance(7.9, 'b')], wiring: { parallel: ['main', 'b'] } },
    { drivers: [ofResistance(4), ofResistance(8.1, 'b')], wiring: { parallel: ['main', 'b'] } },
  ],
  [
    // 20 log(1 + r) = 0.5 dB at r = 0.0593.
    'speaker-lead-loss',
    { drivers: [ofResistance(10)], leadOhm: 0.58 },
    { drivers: [ofResistance(10)], leadOhm: 0.6 },
  ],
  [
    // In parallel 3.3 ohm may be driven, 3.1 may not.
    'louder-wiring-possible',
    { drivers: [ofResistance(6.2)], wiring: { series: ['main', 'main'] }, amplifier: {} },
    { drivers: [ofResistance(6.6)], wiring: { series: ['main', 'main'] }, amplifier: {} },
  ],
  [
    // 60 % of 8 ohm.
    'rated-impedance-contradicts-resistance',
    { drivers: [{ id: 'main', parameters: { ratedImpedanceOhm: 8, reOhm: 4.81 } }] },
    { drivers: [{ id: 'main', parameters: { ratedImpedanceOhm: 8, reOhm: 4.79 } }] },
  ],
  [
    // 20 log(8/(8 + Rs)) = -20 dB at Rs = 72 ohm.
    'driver-gets-practically-nothing',
    behind(71),
    behind(73),
  ],
  [
    // A hundredth of the power is 20 dB: 4 of 400 ohm in series.
    'parts-take-the-power',
    { drivers: [ofResistance(4)], wiring: { series: ['main', { resistorOhm: 395 }] } },
    { drivers: [ofResistance(4)], wiring: { series: ['main', { resistorOhm: 397 }] } },
  ],
  [
    // An octave below 3 kHz is 1.5 kHz.
    'treble-resonance-near-corner',
    twoWay(1490, { cornerHz: 3000 }),
    twoWay(1510, { cornerHz: 3000 }),
  ],
  [
    'crossover-reverse-one-driver',
    twoWay(500, { cornerHz: 3000 }),
    twoWay(500, { cornerHz: 3000, order: 2 }),
  ],
  [
    // 6 dB: half the voltage, so the series part takes half of V²/2R: 0.25 W at 2.83 V of swing on 8 ohm.
    'pad-runs-hot',
    twoWay(500, { cornerHz: 3000, attenuationDb: 6.02 }, { supplyVoltageV: 2.82, outputResistanceOhm: 0 }),
    twoWay(500, { cornerHz: 3000, attenuationDb: 6.02 }, { supplyVoltageV: 2.84, outputResistanceOhm: 0 }),
  ],
  [
    'meter-reads-open',
    { drivers: [ofResistance(6)] },
    { drivers: [ofResistance(6)], wiring: { series: ['main', { capacitorUf: 100 }] } },
  ],
]

const rated = (ratedImpedanceOhm: number, reOhm: number, id = 'main'): Driver => ({
  id,
  parameters: { ratedImpedanceOhm, reOhm },
})

describe('a print that the resistance contradicts', () => {
  const CODE = 'rated-impedance-contradicts-resistance'

  test.each([
    // A voice coil reads 0.70 to 0.92 of its rated impedance (common practice); 0.6 to 1 are let pass.
    [16, 3.4, 9.6],
    [4, 20, 4],
  ])('%d ohm printed on a coil of %d ohm', (printed, reOhm, limit) => {
    const [finding] = findingsOf({ drivers: [rated(printed, reOhm)] }).filter(({ code }) => code === CODE)
    expect(finding).toMatchObject({ severity: 'warning', value: reOhm, limit })
    expect(finding?.at).toBe('/drivers/0/parameters/ratedImpedanceOhm')
  })

  test('an 8 ohm driver of 7.99 ohm passes, and so does one of which only the print is known', () => {
    expect(codesOf({ drivers: [rated(8, 7.99)] })).not.toContain(CODE)
    expect(codesOf({ drivers: [{ id: 'main', parameters: { ratedImpedanceOhm: 8 } }] })).not.toContain(CODE)
  })

  test('each driver is told for itself', () => {
    const found = findingsOf({
      drivers: [rated(4, 3.4, 'a'), rated(16, 3.4, 'b'), rated(4, 20, 'c')],
      wiring: { series: ['a', 'b', 'c'] },
    }).filter(({ code }) => code === CODE)
    expect(found.map(({ at }) => at)).toEqual([
      '/drivers/1/parameters/ratedImpedanceOhm',
      '/drivers/2/parameters/ratedImpedanceOhm',
    ])
  })
})

describe('rules about the load', () => {
  test.each(rows)('%s', (code, inside, outside) => {
    expect(codesOf(inside)).not.toContain(code)
    const [finding] = findingsOf(outside).filter((row) => row.code === code)
    expect(finding?.remedies.length).toBeGreaterThan(0)
    expect(finding?.at).toMatch(/^\//)
  })

  test('every rule of the table has its two rows', () => {
    const codes = [...loadRules, ...crossoverRules, ...driverInLoadRules].map(({ code }) => code)
    expect(new Set(rows.map(([code]) => code))).toEqual(new Set(codes))
  })

  test('only wirings that are plainly louder and allowed are offered as louder', () => {
    const [note] = findingsOf({
      drivers: [ofResistance(6)],
      wiring: { series: ['main', 'main', 'main'] },
      amplifier: { minimumLoadOhm: 4 },
    }).filter(({ code }) => code === 'louder-wiring-possible')
    // Two in parallel and one in series with them: 9 ohm, drive 2/3 + 1/3 + 1/3, 20 log(4/3) = 2.5 dB.
    // Two in series beside one: 4 ohm, drive 1/2 + 1/2 + 1, 6.0 dB. All in parallel: 2 ohm, forbidden.
    expect(note?.value).toBeCloseTo(20 * Math.log10(2), 9)
    expect(note?.remedies).toHaveLength(1)
    // 4 ohm over 0.8.
    expect(note?.remedies[0]).toMatch(/\(main and main in series\) and main in parallel: 5.00 ohm/)
  })

  test('a coil across the amplifier is a short circuit, behind a capacitor it is not (Kirchhoff)', () => {
    const bridged = { parallel: ['main', { inductorMh: 100 }] }
    const [found] = findingsOf({ drivers: [ofResistance(8)], wiring: bridged, amplifier: {} })
    expect(found).toMatchObject({ code: 'load-shorts-direct-current', severity: 'blocker', value: 0 })
    expect(
      codesOf({ drivers: [ofResistance(8)], wiring: { series: [{ capacitorUf: 10 }, bridged] } }),
    ).not.toContain('load-shorts-direct-current')
  })

  test('a driver that a wire bridges behind a resistor of 8 ohm is told (Ohm)', () => {
    const [found] = findingsOf({
      drivers: [ofResistance(8)],
      wiring: { series: [{ resistorOhm: 8 }, { parallel: ['main', { resistorOhm: 0.001 }] }] },
      amplifier: {},
    })
    expect(found).toMatchObject({ code: 'parts-take-the-power', severity: 'warning', at: '/wiring' })
    // 0.001 of 8.001 ohm, and of that again 0.001 of 8.001 in the driver.
    expect(found?.value).toBeCloseTo(20 * Math.log10(0.001 / 8), 2)
  })

  test('a closed-back driver is warned of from 30 % of the voltage in the bass on (common practice)', () => {
    const behind = (resistorOhm: number): LoadImpedanceRequest => ({
      drivers: [{ ...ofResistance(6, 'tweeter'), sharesBox: false }],
      wiring: { series: [{ resistorOhm }, 'tweeter'] },
    })
    // 6/(6 + 6) is half the voltage; 6/(6 + 18) a quarter.
    expect(codesOf(behind(6))).toContain('tweeter-without-capacitor')
    expect(codesOf(behind(18))).not.toContain('tweeter-without-capacitor')
  })

  test('the blocker offers the wirings that the amplifier may drive, with their power', () => {
    const [blocker] = findingsOf({
      drivers: [{ id: 'main', parameters: { ratedImpedanceOhm: 4 } }],
      wiring: { parallel: ['main', 'main'] },
      amplifier: { supplyVoltageV: 12, minimumLoadOhm: 4 },
    })
    expect(blocker).toMatchObject({
      code: 'load-below-amplifier-minimum',
      severity: 'blocker',
      at: '/wiring',
    })
    expect(blocker?.remedies[0]).toMatch(/main and main in series: 8.00 ohm, 8.16 W/)
  })
})
