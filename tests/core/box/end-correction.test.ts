import { expect, it } from 'vitest'
import { flangedRectangleEnd, neighbourEnd, roundEnd, slotEnd } from '../../../src/core/box/end-correction.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const rows = new Map(checks('acoustics-checks.json', 'port-end-correction').map((check) => [check.id, check]))
const row = (id: string) => {
  const check = rows.get(id)
  if (check === undefined) throw new Error(`no row ${id}`)
  return check
}

// Rayleigh, uniform velocity: 8/(3π).
it('a flush end adds 0.8488 radii', () => {
  expectWithin(row('port-flanged-piston'), 'endCorrectionOverRadius', roundEnd(13, 'flanged') / 13)
})

// Nomura, Yamamura & Inawashiro 1960 (from memory) find 0.8216 for the exact flow; the trade uses Rayleigh's figure.
it('the flush figure lies within 4% above the exact one', () => {
  const exact = row('port-flanged-exact').expected['endCorrectionOverRadius']
  expect(roundEnd(1, 'flanged') / exact).toBeGreaterThan(1)
  expect(roundEnd(1, 'flanged') / exact).toBeLessThan(1.04)
})

// Levine & Schwinger, Phys. Rev. 73 (1948).
it('a free end adds 0.6133 radii', () => {
  expectWithin(row('port-free'), 'endCorrectionOverRadius', roundEnd(13, 'free') / 13)
})

it.each(['rect-end-square', 'rect-end-slot-5to1', 'rect-end-slot-10to1'])('%s', (id) => {
  const { inputs } = row(id)
  const end = flangedRectangleEnd(inputs['widthMm'], inputs['heightMm'])
  expectWithin(row(id), 'endCorrectionMm', end)
  expectWithin(
    row(id),
    'overEqualAreaRadius',
    end / Math.sqrt((inputs['widthMm'] * inputs['heightMm']) / Math.PI),
  )
})

it('a slot on a wall is half of one twice as high', () => {
  const { inputs } = row('slot-on-wall')
  expectWithin(
    row('slot-on-wall'),
    'endCorrectionMm',
    slotEnd({ widthMm: inputs['widthMm'], heightMm: inputs['heightMm'], onWall: true }, 'flanged'),
  )
})

it('neighbours at the corners of a square count two sides and a diagonal', () => {
  // a²/(2d) for each flush neighbour at distance d: near field of a point source, derived.
  const [a, d] = [13, 40]
  expect(neighbourEnd(4, a, d, 'flanged')).toBeCloseTo(((a * a) / 2) * (2 / d + 1 / (d * Math.SQRT2)), 10)
})

it('a single port has no neighbours', () => {
  expect(neighbourEnd(1, 13, 40, 'flanged')).toBe(0)
})
