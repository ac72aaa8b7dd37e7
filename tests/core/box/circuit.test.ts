import { describe, expect, it } from 'vitest'
import { logSpaced, responseOf, solveCircuit } from '../../../src/core/box/circuit.ts'
import { groupOf, loudspeaker } from '../../../src/core/box/loudspeaker.ts'
import { completeDriver } from '../../../src/core/driver/complete.ts'
import { checks, expectWithin } from '../../outside/checks.ts'
import { loudspeakerOf } from '../../outside/circuit-cases.ts'

const CASES = checks('acoustics-checks.json', 'circuit-closed', 'circuit-vented', 'circuit-passive-radiator')

// Solved outside in two independent forms, closed expressions and nodal analysis: named in each row.
describe('published circuit cases', () => {
  it.each(CASES)('$id', (check) => {
    const speaker = loudspeakerOf(check)
    const grid = Float64Array.from(check.inputs['frequencyHz'])
    const out = responseOf(grid.length)
    solveCircuit(speaker.circuit, grid, check.inputs['drive'].voltageV * speaker.group.voltageShare, out)
    const factor = speaker.group.impedanceFactor
    const speed = Array.from(out.ventSpeedMPerS)
    const actual = {
      splDb: Array.from(out.splDb),
      impedanceOhm: Array.from(out.impedanceRe, (re, i) => factor * Math.hypot(re, out.impedanceIm[i]!)),
      impedancePhaseDeg: Array.from(
        out.impedanceRe,
        (re, i) => (Math.atan2(out.impedanceIm[i]!, re) * 180) / Math.PI,
      ),
      excursionMmPeak: Array.from(out.excursionMm),
      portAirSpeedMPerSPeak: speed,
      radiatorExcursionMmPeak: speed.map((v, i) => (1000 * v) / (2 * Math.PI * grid[i]!)),
    }
    const keys = Object.keys(check.expected).filter((key) => key in actual)
    expect(keys.length).toBeGreaterThanOrEqual(4)
    for (const key of keys) expectWithin(check, key, Reflect.get(actual, key))
  })
  it('compares closed, vented and passive-radiator rows', () => {
    expect(CASES).toHaveLength(8)
  })
})

const DRIVER = { fsHz: 95, qms: 3.4, qes: 0.55, vasL: 2.1, sdCm2: 52, reOhm: 3.6, leMh: 0.12 }

function speakerOf(count: number, wiring: 'parallel' | 'series', netVolumeL: number) {
  const completed = completeDriver(DRIVER, '')
  if ('faults' in completed) throw new Error('driver')
  return loudspeaker({
    driver: completed.driver,
    group: groupOf(count, wiring),
    netVolumeL,
    losses: { leakageQ: 10, absorptionQ: null, portQ: null, liningGain: 1 },
    opening: null,
    air: { speedMPerS: 343.994, densityKgPerM3: 1.19931 },
    sourceResistanceOhm: 0,
    solidAngle: 2 * Math.PI,
    extraMassKg: 0,
  })
}

const grid = logSpaced(10, 5000, 60)
const splOf = (speaker: ReturnType<typeof speakerOf>, voltageV: number) => {
  const out = responseOf(grid.length)
  solveCircuit(speaker.circuit, grid, voltageV * speaker.group.voltageShare, out)
  return out
}

// Superposition: named in the row.
it.each(checks('acoustics-checks.json', 'network'))('$id', (check) => {
  const one = splOf(speakerOf(1, 'parallel', 0.6), 2.83)
  const parallel = splOf(speakerOf(2, 'parallel', 1.2), 2.83)
  const series = splOf(speakerOf(2, 'series', 1.2), 2.83)
  for (let i = 0; i < grid.length; i++) {
    expectWithin(check, 'parallelSplGainDb', parallel.splDb[i]! - one.splDb[i]!)
    expectWithin(check, 'seriesSplGainDb', series.splDb[i]! - one.splDb[i]!)
  }
  expectWithin(check, 'parallelImpedanceRatio', groupOf(2, 'parallel').impedanceFactor)
  expectWithin(check, 'seriesImpedanceRatio', groupOf(2, 'series').impedanceFactor)
})

it('in free air the impedance at fs is Re(1 + Qms/Qes), phase 0', () => {
  // Definition of the Q values; R. H. Small 1972.
  const speaker = speakerOf(1, 'parallel', 1)
  const out = responseOf(1)
  solveCircuit({ ...speaker.circuit, boxM3PerPa: null, leH: 0 }, Float64Array.of(95), 1, out)
  expect(out.impedanceRe[0]).toBeCloseTo(3.6 * (1 + 3.4 / 0.55), 6)
  expect(out.impedanceIm[0]).toBeCloseTo(0, 6)
})

it('a tube of the pipe model tends to the plug of air at low frequency', () => {
  // kL ≪ 1: the line is its mass. Source: small-argument limit of the plane-wave line.
  const base = speakerOf(1, 'parallel', 3).circuit
  const area = 5e-4
  const lengthM = 0.05
  const rho = 1.19931
  const mass = (rho * lengthM) / area
  const tube = {
    kind: 'tube',
    lengthM,
    outerEndM: 0,
    innerEndM: 0,
    areaM2: area,
    radiusM: 0.0126,
    resistanceOhm: 0,
    viscosityM2PerS: 1e-12,
  } as const
  const plug = {
    kind: 'lumped',
    massKgPerM4: mass,
    resistanceOhm: 0,
    complianceM3PerPa: null,
    areaM2: area,
  } as const
  const low = logSpaced(10, 30, 20)
  const [a, b] = [responseOf(20), responseOf(20)]
  solveCircuit({ ...base, vent: tube }, low, 1, a)
  solveCircuit({ ...base, vent: plug }, low, 1, b)
  for (let i = 0; i < 20; i++) expect(Math.abs(a.splDb[i]! - b.splDb[i]!)).toBeLessThan(0.05)
})

it('logSpaced includes both ends and keeps one ratio', () => {
  const f = logSpaced(20, 20_000, 4)
  expect(Array.from(f)).toEqual([20, expect.closeTo(200, 6), expect.closeTo(2000, 6), 20_000])
})
