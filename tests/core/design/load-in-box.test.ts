import { describe, expect, test } from 'vitest'
import { logSpaced } from '../../../src/core/box/circuit.ts'
import { loadInBox } from '../../../src/core/design/load-in-box.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Driver } from '../../../src/schema/driver.ts'
import type { LoadImpedanceRequest } from '../../../src/schema/load-impedance.ts'

/** A four-inch driver of common practice; qms and leMh are left out. */
const main: Driver = {
  id: 'm',
  parameters: { fsHz: 110, qes: 0.8, vasL: 3, sdCm2: 50, reOhm: 3.4, ratedImpedanceOhm: 4 },
}

function run(request: LoadImpedanceRequest) {
  const outcome = loadInBox(request)
  if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
  return outcome
}

describe('the part of the curve that is asked for', () => {
  const four: LoadImpedanceRequest = {
    drivers: [main],
    wiring: { parallel: ['m', 'm', 'm', 'm'] },
    amplifier: { minimumLoadOhm: 4 },
  }
  const narrow = run({ ...four, curve: { fromHz: 115, toHz: 130, points: 2 } })

  test('never decides whether the amplifier may drive the load', () => {
    // Four times 3.4 ohm in parallel are 0.85 ohm away from the resonance; the board stands 3.2 ohm.
    expect(narrow.sections.load.mayDrive).toBe(false)
    expect(narrow.sections.load.minimumOhm).toBeLessThan(1)
    const whole = run(four)
    expect(narrow.sections.load).toEqual(whole.sections.load)
    expect(narrow.sections.shares).toEqual(whole.sections.shares)
    expect(narrow.sections.alternatives).toEqual(whole.sections.alternatives)
    expect(narrow.findings).toEqual(whole.findings)
  })

  test('is the curve that is returned', () => {
    expect(narrow.sections.loadCurve.frequencyHz).toHaveLength(2)
    expect(narrow.sections.loadCurve.frequencyHz[0]).toBeCloseTo(115, 9)
    expect(narrow.sections.loadCurve.frequencyHz[1]).toBeCloseTo(130, 9)
    const grid = run(four).sections.loadCurve.frequencyHz
    expect(grid).toEqual([...logSpaced(10, 20_000, 240)])
  })

  test('the bass that reaches a tweeter is judged although the curve begins above it', () => {
    const tweeter: Driver = { id: 't', parameters: { reOhm: 6 }, sharesBox: false }
    const { findings } = run({
      drivers: [main, tweeter],
      wiring: { parallel: ['m', 't'] },
      curve: { fromHz: 5000, toHz: 20_000 },
    })
    expect(findings.map(({ code }) => code)).toContain('tweeter-without-capacitor')
  })
})

describe('a count left out', () => {
  const boxed: LoadImpedanceRequest = {
    drivers: [main],
    wiring: { series: ['m', 'm'] },
    box: { kind: 'closed', netVolumeL: 4 },
  }
  const peakHz = ({ sections }: ReturnType<typeof run>) => {
    const { impedanceOhm, frequencyHz } = sections.loadCurve
    return frequencyHz[impedanceOhm.indexOf(Math.max(...impedanceOhm))]
  }

  test('follows from the wiring, in the box as in the load', () => {
    const told = run({ ...boxed, drivers: [{ ...main, count: 2 }] })
    const untold = run(boxed)
    expect(untold.sections).toEqual(told.sections)
    // Small 1972: fc = fs √(1 + 2 Vas/V) = 110 √2.5 = 174 Hz, less the little that lining and losses do.
    expect(peakHz(untold)).toBeGreaterThan(174 * 0.94)
    expect(peakHz(untold)).toBeLessThan(174 * 1.06)
    expect(untold.assumptions).toContainEqual(expect.objectContaining({ at: '/drivers/0/count', value: 2 }))
    expect(told.assumptions.map(({ at }) => at)).not.toContain('/drivers/0/count')
  })

  test('what completes the driver is told, in a box and without one, each once', () => {
    for (const request of [boxed, { drivers: [main] }]) {
      const places = run(request).assumptions.map(({ at }) => at)
      expect(places).toEqual(
        expect.arrayContaining(['/drivers/0/parameters/qms', '/drivers/0/parameters/leMh']),
      )
      expect(new Set(places).size).toBe(places.length)
    }
  })
})

test('a range that runs backwards is refused at its end', () => {
  const outcome = loadInBox({ drivers: [main], curve: { fromHz: 200, toHz: 100 } })
  expect(isRefusal(outcome) && outcome.faults.map(({ at }) => at)).toEqual(['/curve/toHz'])
})

test('parts of a crossover are reckoned from the impedance at the corner itself, not near it', () => {
  const tweeter: Driver = {
    id: 't',
    sharesBox: false,
    parameters: { fsHz: 1000, qms: 2, qes: 1, reOhm: 6 },
  }
  const { crossover } = run({ drivers: [main, tweeter], crossover: { cornerHz: 2500, order: 1 } }).sections
  // Small 1972: Z = Re + Re (Qms/Qes) / (1 + j Qms (f/fs - fs/f)), here 6 + 12 / (1 + 4.2 j).
  const motion = 12 / (1 + 4.2 ** 2)
  const loadOhm = Math.hypot(6 + motion, motion * 4.2)
  const parts = crossover.find(({ driver }) => driver === 't')
  expect(parts?.loadOhm).toBeCloseTo(loadOhm, 9)
  expect(parts?.capacitorUf).toBeCloseTo(1e6 / (2 * Math.PI * 2500 * loadOhm), 9)
})

describe('data of a driver that say more, or less, than they seem to', () => {
  const faultsOf = (request: LoadImpedanceRequest) => {
    const outcome = loadInBox(request)
    return isRefusal(outcome) ? outcome.faults.map(({ at }) => at) : []
  }

  test('a resistance that follows from the others goes before the print, and the contradiction is told', () => {
    const parameters = { fsHz: 60, qes: 0.5, mmsG: 10, blTm: 5, ratedImpedanceOhm: 8 }
    const { sections, findings, assumptions } = run({ drivers: [{ id: 'm', parameters }] })
    // Small 1972: Qes = 2π fs Mms Re / (Bl)².
    const reOhm = (0.5 * 5 ** 2) / (2 * Math.PI * 60 * 0.01)
    expect(sections.load.meterOhm).toBeCloseTo(reOhm, 9)
    expect(sections.load.minimumOhm).toBeGreaterThan(reOhm * 0.999)
    expect(findings.map(({ code }) => code)).toContain('rated-impedance-contradicts-resistance')
    expect(assumptions.find(({ at }) => at === '/drivers/0/parameters/reOhm')?.why).toContain('other data')
  })

  test.each([
    [{ fsHz: 60, qts: 0.5, qes: 0.4, reOhm: 6 }, 'qts'],
    [{ fsHz: 60, qts: 3.5, reOhm: 6 }, 'qes'],
    [{ fsHz: 60, qes: 0.5, reOhm: 6, leExponent: 0.7 }, 'leExponent'],
  ])('Q that contradict are refused beside the box as in it: %j', (parameters, name) => {
    const tweeter: Driver = { id: 't', sharesBox: false, parameters }
    const at = `/drivers/1/parameters/${name}`
    expect(faultsOf({ drivers: [main, tweeter], wiring: { parallel: ['m', 't'] } })).toEqual([at])
  })

  test('two kinds in the air of one box are refused, and so is a box that no driver shares', () => {
    const box = { kind: 'closed', netVolumeL: 4 } as const
    const other: Driver = { id: 't', parameters: { reOhm: 6 } }
    const wiring = { parallel: ['m', 't'] }
    expect(faultsOf({ drivers: [main, other], wiring, box })).toEqual(['/drivers/1/sharesBox'])
    expect(faultsOf({ drivers: [{ ...main, sharesBox: false }], box })).toEqual(['/drivers/0/sharesBox'])
    expect(faultsOf({ drivers: [main, { ...other, sharesBox: false }], wiring, box })).toEqual([])
  })
})
