import { describe, expect, test } from 'vitest'
import { loadRules } from '../../../src/core/findings/load.ts'
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

/** Just inside the limit says nothing, just outside does. */
const rows: [code: string, inside: LoadImpedanceRequest, outside: LoadImpedanceRequest][] = [
  [
    // 4 ohm rated minimum, 80 % of it is 3.2 (IEC 60268-5, from memory).
    'load-below-amplifier-minimum',
    { drivers: [ofResistance(3.21)], amplifier: { minimumLoadOhm: 4 } },
    { drivers: [ofResistance(3.19)], amplifier: { minimumLoadOhm: 4 } },
  ],
  ['load-shorts-amplifier', { drivers: [ofResistance(0.51)] }, { drivers: [ofResistance(0.49)] }],
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
    'meter-reads-open',
    { drivers: [ofResistance(6)] },
    { drivers: [ofResistance(6)], wiring: { series: ['main', { capacitorUf: 100 }] } },
  ],
]

describe('rules about the load', () => {
  test.each(rows)('%s', (code, inside, outside) => {
    expect(codesOf(inside)).not.toContain(code)
    const [finding] = findingsOf(outside).filter((row) => row.code === code)
    expect(finding?.remedies.length).toBeGreaterThan(0)
    expect(finding?.at).toMatch(/^\//)
  })

  test('every rule of the table has its two rows', () => {
    expect(new Set(rows.map(([code]) => code))).toEqual(new Set(loadRules.map(({ code }) => code)))
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
