import { add, complex, divide, multiply } from 'mathjs'
import { bench, describe } from 'vitest'
import { type Circuit, logSpaced, responseOf, solveCircuit } from '../../../src/core/box/circuit.ts'

const POINTS = 1000
const grid = logSpaced(10, 20_000, POINTS)
const out = responseOf(POINTS)
const circuit: Circuit = {
  count: 2,
  reOhm: 3.4,
  leH: 6e-5,
  leExponent: 1,
  sourceOhm: 0.3,
  blTm: 3.1,
  mmsKg: 2e-3,
  cmsMPerN: 8.3e-4,
  rmsKgPerS: 0.48,
  sdM2: 28e-4,
  boxM3PerPa: 1.9e-8,
  absorptionOhm: 1600,
  leakOhm: 8e5,
  vent: { kind: 'lumped', massKgPerM4: 121, resistanceOhm: 1000, complianceM3PerPa: null, areaM2: 5.3e-4 },
  air: { speedMPerS: 343.994, densityKgPerM3: 1.19931 },
  solidAngle: 2 * Math.PI,
}

/** The same circuit in complex-number objects, as one would write it for the reader alone. */
function withObjects(): number {
  let sum = 0
  const c = circuit
  for (const hz of grid) {
    const w = 2 * Math.PI * hz
    const box = add(complex(0, 0), divide(1, add(complex(1600, 0), divide(1, complex(0, w * 1.9e-8)))))
    const vent = divide(1, complex(1000, w * 121))
    const zab = divide(1, add(add(box, 1 / 8e5), vent))
    const zm = add(
      complex(c.rmsKgPerS, w * c.mmsKg - 1 / (w * c.cmsMPerN)),
      multiply(c.sdM2 * c.sdM2 * c.count, zab),
    )
    const ze = complex(c.reOhm + c.sourceOhm, w * c.leH)
    const u = divide(c.blTm, add(multiply(ze, zm), c.blTm * c.blTm))
    const kept = multiply(multiply(u, c.sdM2 * c.count), multiply(zab, box))
    const z = add(complex(c.reOhm, w * c.leH), divide(c.blTm * c.blTm, zm))
    sum += Number(complex(String(kept)).re) + Number(complex(String(z)).re)
  }
  return sum
}

const pipe: Circuit = {
  ...circuit,
  vent: {
    kind: 'tube',
    lengthM: 0.033,
    outerEndM: 0.011,
    innerEndM: 0.008,
    areaM2: 5.3e-4,
    radiusM: 0.013,
    resistanceOhm: 0,
    viscosityM2PerS: 1.5e-5,
  },
}

// 1000 points a run, so a mean of 0.250 ms is 250 ns a point. The ratio to the last row holds on any machine.
describe('all curves over 1000 frequency points: 0.001 ms is 1 ns a point', () => {
  bench('kernel, port as a plug of air', () => solveCircuit(circuit, grid, 1, out))
  bench('kernel, port as a pipe', () => solveCircuit(pipe, grid, 1, out))
  bench('the same circuit in mathjs complex numbers', () => {
    withObjects()
  })
})
