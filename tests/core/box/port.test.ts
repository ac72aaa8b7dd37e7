import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { REFERENCE_AIR } from '../../../src/core/air.ts'
import { wallFrictionQ } from '../../../src/core/box/losses.ts'
import { firstPipeResonanceHz } from '../../../src/core/box/pipe-resonance.ts'
import { port } from '../../../src/core/box/port.ts'
import { helmholtzHz } from '../../../src/core/box/port-geometry.ts'
import { tunePort } from '../../../src/core/box/tuned-port.ts'
import type { PortRequest } from '../../../src/schema/port-calculation.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const SEED = 20261125

const solved = (request: PortRequest) => {
  const outcome = port(request)
  if ('faults' in outcome) throw new Error(JSON.stringify(outcome.faults))
  return outcome
}

// R. H. Small 1973, Helmholtz resonator: named in each row.
describe('published tunings', () => {
  it.each(checks('acoustics-checks.json', 'port-tuning'))('$id', (check) => {
    const { inputs } = check
    const spacingMm = inputs['centreSpacingMm']
    const air = { speedMPerS: inputs['speedOfSoundMPerS'], densityKgPerM3: 1.2 }
    const { sections } = solved({
      netVolumeL: inputs['volumeL'],
      count: inputs['count'],
      innerDiameterMm: inputs['innerDiameterMm'],
      ...(spacingMm !== undefined && { spacingMm }),
      // Far apart, neighbours do not touch each other's air: the row that leaves them out.
      ...(inputs['mutual'] === 'ignored' && { spacingMm: 1e9 }),
      ...(inputs['lengthMm'] === undefined
        ? { tuningHz: inputs['tuningHz'] }
        : { lengthMm: inputs['lengthMm'] }),
      air,
    })
    const extra = sections.endCorrections.slice(2).reduce((sum, end) => sum + end.lengthMm, 0)
    const actual = { ...sections.port, extraLengthMm: extra }
    for (const key of Object.keys(check.expected)) expectWithin(check, key, Reflect.get(actual, key))
  })
})

// L. L. Beranek & T. Mellow 2012, plane-wave line with end masses.
it.each(checks('acoustics-checks.json', 'port-transmission-line'))('$id', (check) => {
  const { lengthMm, innerDiameterMm, netVolumeL } = check.inputs
  const { sections } = solved({ netVolumeL, innerDiameterMm, lengthMm })
  expectWithin(check, 'lumpedTuningHz', sections.port.tuningHz)
  expectWithin(check, 'firstPipeResonanceHz', sections.port.pipeResonanceHz)
})

// A. D. Pierce, Acoustics, ch. 10 (from memory).
it.each(checks('acoustics-checks.json', 'port-loss'))('$id', (check) => {
  const { radiusMm, tuningHz, kinematicViscosityM2PerS } = check.inputs
  expectWithin(check, 'portQ', wallFrictionQ(radiusMm / 1000, tuningHz, kinematicViscosityM2PerS))
})

it('tuning and length undo each other', () => {
  fc.assert(
    fc.property(
      fc.record({
        v: fc.double({ min: 0.3, max: 50, noNaN: true }),
        d: fc.double({ min: 10, max: 100, noNaN: true }),
        l: fc.double({ min: 5, max: 500, noNaN: true }),
        n: fc.integer({ min: 1, max: 4 }),
      }),
      ({ v, d, l, n }) => {
        const there = tunePort({ innerDiameterMm: d, count: n, lengthMm: l }, v, REFERENCE_AIR)
        const back = tunePort({ innerDiameterMm: d, count: n, tuningHz: there.tuningHz }, v, REFERENCE_AIR)
        expect(back.lengthMm).toBeCloseTo(l, 6)
      },
    ),
    { seed: SEED },
  )
})

it('a longer tube tunes lower', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 400, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      (length, more) => {
        const at = (lengthMm: number) =>
          tunePort({ innerDiameterMm: 26, lengthMm }, 3, REFERENCE_AIR).tuningHz
        expect(at(length + more)).toBeLessThan(at(length))
      },
    ),
    { seed: SEED },
  )
})

it('a tuning above that of the bare hole is blocked, with the highest one named', () => {
  const { sections, findings } = solved({ netVolumeL: 3, innerDiameterMm: 26, tuningHz: 400 })
  expect(sections.port.lengthMm).toBeNull()
  // The bare hole: 1.4621 radii of 13 mm of moving air, by Rayleigh and Levine & Schwinger.
  const bare = helmholtzHz(
    3,
    (8 / (3 * Math.PI) + 0.6133) * 13,
    (Math.PI * 2.6 ** 2) / 4,
    REFERENCE_AIR.speedMPerS,
  )
  expect(sections.port.highestTuningHz).toBeCloseTo(bare, 6)
  expect(findings[0]).toMatchObject({ code: 'port-cannot-reach-tuning', severity: 'blocker' })
})

it('several equal ports are one port of their area in the flow, but not in the ends', () => {
  const three = solved({ netVolumeL: 5, innerDiameterMm: 26, count: 3, lengthMm: 45 })
  const one = solved({ netVolumeL: 5, innerDiameterMm: 26 * Math.sqrt(3), lengthMm: 45 })
  expect(three.sections.port.areaCm2).toBeCloseTo(one.sections.port.areaCm2, 9)
  expect(three.sections.port.tuningHz).toBeGreaterThan(one.sections.port.tuningHz)
})

describe('refusals name every fault', () => {
  const faultsOf = (request: PortRequest) => {
    const outcome = port(request)
    return 'faults' in outcome ? outcome.faults.map((fault) => fault.at) : []
  }
  it('neither size nor length', () => {
    expect(faultsOf({ netVolumeL: 3 })).toEqual(['/innerDiameterMm', '/tuningHz'])
  })
  it('both tuning and length', () => {
    expect(faultsOf({ netVolumeL: 3, innerDiameterMm: 26, tuningHz: 90, lengthMm: 40 })).toEqual([
      '/lengthMm',
    ])
  })
  it('a tube thinner outside than inside', () => {
    expect(faultsOf({ netVolumeL: 3, innerDiameterMm: 26, outerDiameterMm: 20, lengthMm: 40 })).toEqual([
      '/outerDiameterMm',
    ])
  })
  it('overlapping ports', () => {
    expect(faultsOf({ netVolumeL: 3, innerDiameterMm: 26, count: 2, spacingMm: 20, lengthMm: 40 })).toEqual([
      '/spacingMm',
    ])
  })
})

it('tubes on hand are compared at the same tuning', () => {
  const { sections } = solved({
    netVolumeL: 3,
    innerDiameterMm: 26,
    tuningHz: 95,
    tubes: [
      { innerDiameterMm: 26, lengthMm: 50 },
      { innerDiameterMm: 34, lengthMm: 50 },
    ],
  })
  expect(sections.alternatives[0]).toMatchObject({ lengthMm: sections.port.lengthMm, longEnough: true })
  expect(sections.alternatives[1]?.longEnough).toBe(false)
})

it('a pipe resonance lies near half a wavelength of the moving air', () => {
  const hz = firstPipeResonanceHz(
    { lengthMm: 300, outerEndMm: 10, innerEndMm: 10, totalAreaCm2: 5, netVolumeL: 20 },
    REFERENCE_AIR,
  )
  // c/(2L'), textbook.
  expect(Math.abs(hz / (343.994 / 0.64) - 1)).toBeLessThan(0.03)
})

it('counts the tubes when it compares what is on hand', () => {
  const two = solved({
    netVolumeL: 3,
    innerDiameterMm: 26,
    count: 2,
    tuningHz: 95,
    tubes: [{ innerDiameterMm: 26, lengthMm: 130 }],
  })
  // Two tubes of about 85 mm do not come out of 130.
  expect(two.sections.alternatives[0]?.lengthMm).toBeCloseTo(two.sections.port.lengthMm!, 6)
  expect(two.sections.alternatives[0]?.longEnough).toBe(2 * two.sections.port.lengthMm! <= 130)
  expect(two.sections.alternatives[0]?.longEnough).toBe(false)
})

it('neighbours stand two diameters apart when nothing is said, and that is said', () => {
  const assumed = solved({ netVolumeL: 5, innerDiameterMm: 26, count: 3, lengthMm: 45 })
  const given = solved({ netVolumeL: 5, innerDiameterMm: 26, count: 3, lengthMm: 45, spacingMm: 52 })
  expect(assumed.sections.port.tuningHz).toBeCloseTo(given.sections.port.tuningHz, 9)
  expect(assumed.assumptions).toContainEqual(expect.objectContaining({ at: '/spacingMm', value: 52 }))
})
