import type { ComplexCurve } from '../complex-curve.ts'
import { responseOf, solveCircuit } from './circuit.ts'
import type { Loudspeaker } from './loudspeaker.ts'

/** Impedance of one driver in its box over a grid (> 0, Hz), ohm; the other drivers of the box move along. */
export function impedanceInBox(speaker: Loudspeaker, frequencyHz: Float64Array): ComplexCurve {
  const out = responseOf(frequencyHz.length)
  solveCircuit({ ...speaker.circuit, sourceOhm: 0 }, frequencyHz, 1, out)
  return { re: out.impedanceRe, im: out.impedanceIm }
}
