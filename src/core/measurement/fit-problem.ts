import { driverImpedance, type Resonance } from '../driver/impedance.ts'
import type { DriverSweeps } from './fit-start.ts'
import type { LeastSquaresProblem } from './least-squares.ts'
import type { MeasuredSweep } from './sweep.ts'
import {
  BOUNDS,
  coilOf,
  freeAirOf,
  inBoxOf,
  type Sought,
  soughtOf,
  toScale,
  type Unknown,
  withMassOf,
} from './unknowns.ts'

/** The resonance that each sweep shows. */
export const RESONANCES = {
  freeAir: freeAirOf,
  withMass: withMassOf,
  inBox: inBoxOf,
} satisfies Record<keyof DriverSweeps, (sought: Sought) => Resonance>

/** What each sweep adds to the values sought. */
export const UNKNOWNS_OF = {
  freeAir: ['re', 'fs', 'qms', 'qes', 'le'],
  withMass: ['mass', 'massQms'],
  inBox: ['stiffness', 'boxMass', 'boxQms'],
} satisfies Record<keyof DriverSweeps, Unknown[]>

/** One sweep, and which it is. */
export interface Part {
  sweep: keyof DriverSweeps
  measured: MeasuredSweep
}

/** Everything but the numbers of a fit. */
export interface Task {
  parts: readonly Part[]
  leadOhm: number
  meterOhm: number | null
}

/** Logarithms of the moduli of a sweep, then its phases in radians, sweep after sweep, and the meter last. */
export function problemOf(task: Task, names: readonly Unknown[], start: Sought): LeastSquaresProblem {
  const { parts, leadOhm, meterOhm } = task
  const readings = Float64Array.from([
    ...parts.flatMap(({ measured: { ohm, phaseDeg } }) => [
      ...Array.from(ohm, Math.log),
      ...(phaseDeg === null ? [] : Array.from(phaseDeg, (deg) => (deg * Math.PI) / 180)),
    ]),
    ...(meterOhm === null ? [] : [Math.log(meterOhm)]),
  ])
  const model = (values: readonly number[]): Float64Array => {
    const sought = soughtOf(names, values)
    const predicted = new Float64Array(readings.length)
    let at = 0
    for (const { sweep, measured } of parts) {
      const z = driverImpedance(coilOf(sought, leadOhm), RESONANCES[sweep](sought), measured.frequencyHz)
      at = put(predicted, at, z, measured.phaseDeg !== null)
    }
    if (meterOhm !== null) predicted[at] = Math.log(sought.re)
    return predicted
  }
  return {
    model,
    readings,
    kinds: kindsOf(task),
    start: names.map((name) => toScale(name, start[name])),
    lowest: names.map((name) => toScale(name, BOUNDS[name][0])),
    highest: names.map((name) => toScale(name, BOUNDS[name][1])),
  }
}

/** What each reading of the problem is, in its order. */
export function kindsOf({ parts, meterOhm }: Task): ('ohm' | 'phase' | 'meter')[] {
  return [
    ...parts.flatMap(({ measured: { ohm, phaseDeg } }) => [
      ...Array.from(ohm, () => 'ohm' as const),
      ...(phaseDeg === null ? [] : Array.from(phaseDeg, () => 'phase' as const)),
    ]),
    ...(meterOhm === null ? [] : ['meter' as const]),
  ]
}

/** Writes a curve from a place on; returns the place behind it. */
function put(
  predicted: Float64Array,
  at: number,
  { re, im }: { re: Float64Array; im: Float64Array },
  withPhase: boolean,
): number {
  const n = re.length
  for (let i = 0; i < n; i++) predicted[at + i] = 0.5 * Math.log(re[i]! * re[i]! + im[i]! * im[i]!)
  if (!withPhase) return at + n
  for (let i = 0; i < n; i++) predicted[at + n + i] = Math.atan2(im[i]!, re[i]!)
  return at + 2 * n
}
