import { type Circuit, responseOf, solveCircuit } from '../box/circuit.ts'
import { coilImpedance } from '../box/coil.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import { type Complex, inverse, minus, plus, times } from './complex.ts'

/** What the equal cones of a box do when one channel is driven. */
export interface Cones {
  /** Drivers that the channel drives, and how many of them are connected backwards. */
  driven: number
  reversed: number
  /** Cones that only move with the air of the box: open, or of a channel that is not connected. */
  idle: number
  /** Cones whose terminals are shorted: the motor brakes them. */
  braked: number
}

/** Impedances of one driven driver: moving with all others, and against its equals so that the box feels nothing. */
interface Modes {
  together: (i: number) => Complex
  apart: (i: number) => Complex
}

const solved = (circuit: Circuit, frequencyHz: Float64Array): ComplexCurve => {
  const out = responseOf(frequencyHz.length)
  solveCircuit({ ...circuit, sourceOhm: 0 }, frequencyHz, 1, out)
  return { re: out.impedanceRe, im: out.impedanceIm }
}

/**
 * Everything mechanical is divided by (Bl)², so that a motional impedance is 1 over a sum: cone, and box as often as
 * cones push into it. An idle cone is one more opening of the box, a braked one too, with its motor's 1/Ze added.
 */
function modesOf(circuit: Circuit, cones: Cones, frequencyHz: Float64Array): Modes {
  const coil = coilImpedance(circuit.leH, circuit.leExponent, frequencyHz)
  const alone = solved({ ...circuit, count: 1, boxM3PerPa: null, vent: null, leakOhm: null }, frequencyHz)
  const single = solved({ ...circuit, count: 1 }, frequencyHz)
  const at = ({ re, im }: ComplexCurve, i: number): Complex => ({ re: re[i]!, im: im[i]! })
  const blocked = (i: number): Complex => ({ re: circuit.reOhm + coil.re[i]!, im: coil.im[i]! })
  return {
    apart: (i) => at(alone, i),
    together: (i) => {
      const coilOnly = blocked(i)
      const cone = inverse(minus(at(alone, i), coilOnly))
      const box = minus(inverse(minus(at(single, i), coilOnly)), cone)
      const openings = [
        inverse(box),
        times(inverse(cone), cones.idle),
        times(inverse(plus(cone, inverse(coilOnly))), cones.braked),
      ].reduce(plus)
      return plus(coilOnly, inverse(plus(cone, times(inverse(openings), cones.driven))))
    },
  }
}

/** Impedance of one driven driver whose fellows are driven alike, idle cones in the box counted; ohm on the grid. */
export function drivenImpedance(circuit: Circuit, cones: Cones, frequencyHz: Float64Array): ComplexCurve {
  if (cones.idle === 0 && cones.braked === 0) return solved({ ...circuit, count: cones.driven }, frequencyHz)
  const { together } = modesOf(circuit, cones, frequencyHz)
  return curveOf(frequencyHz.length, together)
}

/**
 * Impedance of equal drivers all in parallel or all in series, some of them reversed, ohm on the grid.
 * Of n driven drivers with r reversed, the share ((n − 2r)/n)² moves together and feels the box; the rest moves apart
 * and is as in free air: two in antiphase in one box know nothing of it.
 * Source: superposition on the circuit of box/circuit.ts; derived.
 */
export function groupImpedance(
  circuit: Circuit,
  cones: Cones,
  joint: 'parallel' | 'series',
  frequencyHz: Float64Array,
): ComplexCurve {
  const { driven, reversed } = cones
  const share = ((driven - 2 * reversed) / driven) ** 2
  const { together, apart } = modesOf(circuit, cones, frequencyHz)
  const mixed = (a: Complex, b: Complex) => times(plus(times(a, share), times(b, 1 - share)), driven)
  return curveOf(frequencyHz.length, (i) =>
    joint === 'series'
      ? mixed(together(i), apart(i))
      : inverse(mixed(inverse(together(i)), inverse(apart(i)))),
  )
}

function curveOf(points: number, valueAt: (i: number) => Complex): ComplexCurve {
  const re = new Float64Array(points)
  const im = new Float64Array(points)
  for (let i = 0; i < points; i++) {
    const value = valueAt(i)
    re[i] = value.re
    im[i] = value.im
  }
  return { re, im }
}
