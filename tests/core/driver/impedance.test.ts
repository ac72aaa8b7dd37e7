import { expect, test } from 'vitest'
import { REFERENCE_AIR } from '../../../src/core/air.ts'
import { responseOf, solveCircuit } from '../../../src/core/box/circuit.ts'
import { ownImpedance } from '../../../src/core/design/other-drivers.ts'
import { driverImpedance } from '../../../src/core/driver/impedance.ts'

const grid = Float64Array.from({ length: 60 }, (_, i) => 20 * 10 ** (i / 20))
const modulus = (curve: { re: Float64Array; im: Float64Array }, i: number) =>
  Math.hypot(curve.re[i]!, curve.im[i]!)

test('the impedance at the resonance is Re (1 + Qms/Qes), and its root times Re where Qms is read', () => {
  // R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory: r0 = 1 + Qms/Qes,
  // |Z| = Re √r0 at f1 and f2, Qms = fs √r0/(f2 - f1), f1 f2 = fs².
  const coil = { reOhm: 6, leH: 0, exponent: 1, leadOhm: 0 }
  const resonance = { fHz: 100, qms: 4, qes: 0.5 }
  const r0 = 1 + 4 / 0.5
  const width = (100 * Math.sqrt(r0)) / 4
  const f1 = -width / 2 + Math.sqrt((width / 2) ** 2 + 100 ** 2)
  const curve = driverImpedance(coil, resonance, Float64Array.of(f1, 100, f1 + width))
  expect(modulus(curve, 1)).toBeCloseTo(6 * r0, 9)
  expect(modulus(curve, 0)).toBeCloseTo(6 * Math.sqrt(r0), 9)
  expect(modulus(curve, 2)).toBeCloseTo(6 * Math.sqrt(r0), 9)
})

test('it is what the whole circuit gives in free air, by mass, compliance, friction and force', () => {
  // Mechanical data of an invented driver; its Q by definition, same source.
  const [mmsKg, cmsMPerN, rmsKgPerS, blTm, reOhm] = [0.004, 0.0008, 0.6, 4.2, 5.1]
  const omega = 1 / Math.sqrt(mmsKg * cmsMPerN)
  const coil = { reOhm, leH: 0.3e-3, exponent: 0.7, leadOhm: 0 }
  const resonance = {
    fHz: omega / (2 * Math.PI),
    qms: (omega * mmsKg) / rmsKgPerS,
    qes: (omega * mmsKg * reOhm) / blTm ** 2,
  }
  const out = responseOf(grid.length)
  const circuit = {
    count: 1,
    reOhm,
    leH: 0.3e-3,
    leExponent: 0.7,
    sourceOhm: 0,
    blTm,
    mmsKg,
    cmsMPerN,
    rmsKgPerS,
    sdM2: 0.005,
    boxM3PerPa: null,
    absorptionOhm: 0,
    leakOhm: null,
    vent: null,
    air: REFERENCE_AIR,
    solidAngle: 2 * Math.PI,
  }
  solveCircuit(circuit, grid, 1, out)
  const { re, im } = driverImpedance(coil, resonance, grid)
  for (let i = 0; i < grid.length; i++) {
    expect(re[i]).toBeCloseTo(out.impedanceRe[i]!, 9)
    expect(im[i]).toBeCloseTo(out.impedanceIm[i]!, 9)
  }
})

test('a driver shows its resonance as soon as fs, Qes and Re are known, and not before', () => {
  const atFs = Float64Array.of(800)
  const tweeter = (parameters: object) => ownImpedance({ id: 't', parameters }, atFs)
  expect(modulus(tweeter({ fsHz: 800, qms: 2, qes: 1, reOhm: 6 })!, 0)).toBeCloseTo(18, 9)
  expect(modulus(tweeter({ fsHz: 800, qts: 2 / 3, qes: 1, reOhm: 6 })!, 0)).toBeCloseTo(18, 9)
  expect(modulus(tweeter({ fsHz: 800, reOhm: 6 })!, 0)).toBeCloseTo(6, 9)
  // Q that contradict are refused elsewhere; here only the resistance is left.
  expect(modulus(tweeter({ fsHz: 800, qts: 2, qes: 1, reOhm: 6 })!, 0)).toBeCloseTo(6, 9)
})
