import type { AirState } from '../air.ts'
import { coilImpedance } from './coil.ts'
import { type Vent, ventAdmittance } from './vent.ts'

/**
 * The loudspeaker in its box as one circuit, SI units, peak figures marked. `count` equal drivers share the box.
 * A member that is absent from the physics is `null` (no leak, no port), never zero.
 */
export interface Circuit {
  count: number
  reOhm: number
  leH: number
  /** n of the coil's (jω)^n, 1 for a plain inductance. */
  leExponent: number
  /** Resistance in series with each driver, source and lead included. */
  sourceOhm: number
  blTm: number
  mmsKg: number
  cmsMPerN: number
  rmsKgPerS: number
  sdM2: number
  /** Compliance of the box, m³/Pa; null in free air. */
  boxM3PerPa: number | null
  absorptionOhm: number
  leakOhm: number | null
  vent: Vent | null
  air: AirState
  /** Solid angle: 2π in half space, 4π in full. */
  solidAngle: number
}

/** What the kernel writes, one value a frequency; all arrays as long as `frequencyHz`. */
export interface Response {
  /** Pressure at 1 m for `driverVoltage`, dB re 20 µPa. */
  splDb: Float64Array
  /** Impedance of one driver at its terminals, real and imaginary part, ohm. */
  impedanceRe: Float64Array
  impedanceIm: Float64Array
  excursionMm: Float64Array
  /** Peak air speed in the port, or of the passive radiator, m/s. */
  ventSpeedMPerS: Float64Array
  /** Phase of the pressure without the delay of the distance, rad, within ±π. */
  phaseRad: Float64Array
}

export function responseOf(points: number): Response {
  const array = () => new Float64Array(points)
  return {
    splDb: array(),
    impedanceRe: array(),
    impedanceIm: array(),
    excursionMm: array(),
    ventSpeedMPerS: array(),
    phaseRad: array(),
  }
}

const DB_PER_POWER_NEPER = 10 / Math.LN10
// A box of Q one thousand million cannot be heard or measured, but it keeps a lossless one finite at its tuning.
const IDEAL_LOSS = 1e-9
const REFERENCE_PA_SQUARED = 4e-10
/**
 * Solves the circuit over a grid of frequencies (> 0, Hz) for `driverVoltage` V RMS at each driver and its source
 * resistance, and writes into `out`. SPL is re 20 µPa at 1 m on axis, excursion and air speed are peak.
 * Source: R. H. Small, J. Audio Eng. Soc. 20 (1972), 21 (1973), 22 (1974), equations from memory; a pipe as a plane-wave
 * line with end masses, L. L. Beranek & T. Mellow, Acoustics (2012), from memory.
 */
export function solveCircuit(
  circuit: Circuit,
  frequencyHz: Float64Array,
  driverVoltage: number,
  out: Response,
): void {
  const { splDb, impedanceRe, impedanceIm, excursionMm, ventSpeedMPerS, phaseRad } = out
  const { count, reOhm, leH, leExponent, sourceOhm, blTm, mmsKg, cmsMPerN, rmsKgPerS, sdM2, absorptionOhm } =
    circuit
  const rho = circuit.air.densityKgPerM3
  const bl2 = blTm * blTm
  const force = sdM2 * sdM2 * count
  const cab = circuit.boxM3PerPa ?? 1
  const boxed = circuit.boxM3PerPa === null ? 0 : 1
  const leakG = circuit.leakOhm === null ? 0 : 1 / circuit.leakOhm
  const ventArea = circuit.vent?.areaM2 ?? 1
  const pressurePerFlow2 = (rho / circuit.solidAngle) ** 2 / REFERENCE_PA_SQUARED
  const { inletRe, inletIm, throughRe, throughIm } = ventAdmittance(circuit.vent, circuit, frequencyHz)
  const coil = coilImpedance(leH, leExponent, frequencyHz)

  for (let i = 0; i < frequencyHz.length; i++) {
    const w = 2 * Math.PI * frequencyHz[i]!
    const gRe = inletRe[i]!
    const gIm = inletIm[i]!
    // box node: compliance with absorption, leak and vent side by side
    const wc = w * cab
    const lossy = absorptionOhm * wc
    const d = wc / (1 + lossy * lossy)
    const yRe = d * (lossy + IDEAL_LOSS) + leakG + gRe
    const yIm = d + gIm
    const y2 = boxed / (yRe * yRe + yIm * yIm)
    const boxRe = yRe * y2
    const boxIm = -yIm * y2
    // share of the cone's flow that enters the vent, leaves it, and leaves by any opening
    const inRe = gRe * boxRe - gIm * boxIm
    const inIm = gRe * boxIm + gIm * boxRe
    const ventRe = inRe * throughRe[i]! - inIm * throughIm[i]!
    const ventIm = inRe * throughIm[i]! + inIm * throughRe[i]!
    const keptRe = 1 - ventRe - leakG * boxRe
    const keptIm = -ventIm - leakG * boxIm
    // driver: mechanical side with the box, seen through the motor
    const zmRe = rmsKgPerS + force * boxRe
    const zmIm = w * mmsKg - 1 / (w * cmsMPerN) + force * boxIm
    const zm2 = 1 / (zmRe * zmRe + zmIm * zmIm)
    const coilRe = coil.re[i]!
    const coilIm = coil.im[i]!
    impedanceRe[i] = reOhm + coilRe + bl2 * zmRe * zm2
    impedanceIm[i] = coilIm - bl2 * zmIm * zm2
    // cone velocity u = Bl E / (Ze Zm + Bl²)
    const eRe = reOhm + sourceOhm + coilRe
    const eIm = coilIm
    const dRe = eRe * zmRe - eIm * zmIm + bl2
    const dIm = eRe * zmIm + eIm * zmRe
    const drive = (blTm * driverVoltage) / (dRe * dRe + dIm * dIm)
    const uRe = drive * dRe
    const uIm = -drive * dIm
    const u2 = uRe * uRe + uIm * uIm
    excursionMm[i] = (Math.SQRT2 * 1000 * Math.sqrt(u2)) / w
    const flow2 = u2 * sdM2 * sdM2 * count * count
    ventSpeedMPerS[i] = (Math.SQRT2 * Math.sqrt(flow2 * (ventRe * ventRe + ventIm * ventIm))) / ventArea
    const kept2 = keptRe * keptRe + keptIm * keptIm
    splDb[i] = DB_PER_POWER_NEPER * Math.log(pressurePerFlow2 * w * w * flow2 * kept2)
    // pressure is jωρU/…: a quarter turn ahead of the flow
    phaseRad[i] = Math.atan2(uRe * keptRe - uIm * keptIm, -(uRe * keptIm + uIm * keptRe))
  }
}

/** Frequencies from `fromHz` to `toHz` (0 < from < to), both included, equal steps of ratio; at least two points. */
export function logSpaced(fromHz: number, toHz: number, points: number): Float64Array {
  const grid = new Float64Array(points)
  const step = Math.log(toHz / fromHz) / (points - 1)
  for (let i = 0; i < points; i++) grid[i] = fromHz * Math.exp(step * i)
  grid[points - 1] = toHz
  return grid
}
