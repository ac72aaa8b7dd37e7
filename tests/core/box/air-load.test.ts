import { expect, it } from 'vitest'
import { boxedRearMassKg, extraMassKg } from '../../../src/core/box/air-load.ts'
import { checks } from '../../outside/checks.ts'

const DENSITY = 1.2
const sdM2 = 52e-4

// A wall far wider than the cone is a baffle: the row for one baffled face (Beranek 1954, from memory).
it.each(checks('radiation-checks.json', 'radiation-impedance').filter((check) => check.id === 'piston-mass'))(
  'in a very wide wall the rear is a baffled face: $id',
  ({ inputs, expected }) => {
    const cone = { sdM2: inputs['sdCm2'] * 1e-4, depthM: 0.1, wallM2: 1e4 }
    const rearG = 1000 * boxedRearMassKg(cone, inputs['airDensityKgPerM3'])
    expect(rearG).toBeCloseTo(expected['oneSideBaffledG'], 5)
    const extraG = 1000 * extraMassKg(cone, inputs['airDensityKgPerM3'])
    expect(extraG).toBeCloseTo(expected['bothSidesBaffledG'] - expected['bothSidesUnbaffledG'], 5)
  },
)

// A closed tube moves in proportion to the distance from its end: the air counts for ∫(x/d)² = a third. Derived.
it('in a tube as wide as the cone a third of the air moves along', () => {
  expect(boxedRearMassKg({ sdM2, depthM: 0.09, wallM2: sdM2 }, DENSITY)).toBeCloseTo(
    (DENSITY * sdM2 * 0.09) / 3,
    12,
  )
})

// By hand: a = 4.06843 cm, Sd/Sb = 0.325; B = 0.737385 * 0.105625 + 0.848826 * 0.675 = 0.650844;
// Sd² B ρ/(π a) = 2.704e-5 * 0.650844 * 1.2/0.127813 kg = 0.165230 g; front and free-air load cancel.
it('a small box worked by hand', () => {
  const cone = { sdM2, depthM: 0.09, wallM2: 160e-4 }
  expect(1000 * extraMassKg(cone, DENSITY)).toBeCloseTo(0.16523, 6)
})

it('a deeper box of the same wall loads the cone more', () => {
  const at = (depthM: number) => extraMassKg({ sdM2, depthM, wallM2: 160e-4 }, DENSITY)
  expect(at(0.2)).toBeGreaterThan(at(0.1))
})
