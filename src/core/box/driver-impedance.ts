import { REFERENCE_AIR } from '../air.ts'
import type { CompleteDriver } from '../driver/complete.ts'
import { responseOf, solveCircuit } from './circuit.ts'
import type { Loudspeaker } from './loudspeaker.ts'

interface Impedance {
  re: Float64Array
  im: Float64Array
}

/** Impedance of one driver in its box over a grid (> 0, Hz), ohm; the other drivers of the box move along. */
export function impedanceInBox(speaker: Loudspeaker, frequencyHz: Float64Array): Impedance {
  const out = responseOf(frequencyHz.length)
  solveCircuit({ ...speaker.circuit, sourceOhm: 0 }, frequencyHz, 1, out)
  return { re: out.impedanceRe, im: out.impedanceIm }
}

/** Impedance of a driver in free air, or with its own closed back when its data hold with that, ohm. */
export function impedanceInFreeAir(driver: CompleteDriver, frequencyHz: Float64Array): Impedance {
  const out = responseOf(frequencyHz.length)
  const circuit = {
    count: 1,
    reOhm: driver.reOhm,
    leH: driver.leMh * 1e-3,
    leExponent: driver.leExponent,
    sourceOhm: 0,
    blTm: driver.blTm,
    mmsKg: driver.mmsG * 1e-3,
    cmsMPerN: driver.cmsMmPerN * 1e-3,
    rmsKgPerS: driver.rmsKgPerS,
    sdM2: driver.sdCm2 * 1e-4,
    boxM3PerPa: null,
    absorptionOhm: 0,
    leakOhm: null,
    vent: null,
    air: REFERENCE_AIR,
    solidAngle: 2 * Math.PI,
  }
  solveCircuit(circuit, frequencyHz, 1, out)
  return { re: out.impedanceRe, im: out.impedanceIm }
}
