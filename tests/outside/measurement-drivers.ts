import { C, RHO } from './loudspeaker-netlist.ts'
import { normal } from './normal.ts'
import { runAc } from './simulator.ts'

/** An invented driver as plain figures. */
export interface BenchDriver {
  fsHz: number
  qms: number
  qes: number
  vasL: number
  sdCm2: number
  reOhm: number
  leMh: number
  /** n of a lossy coil, whose reactance at 1 kHz is that of `leMh`; a plain inductance when left out. */
  exponent?: number
}

/** What was done to it: nothing, a mass on its cone, a tight closed box behind it. */
export type Bench = { massG?: number; volumeL?: number; extraAirG?: number }

/** Impedance as an ideal instrument reads it. */
export interface BenchSweep {
  frequencyHz: number[]
  ohm: number[]
  phaseDeg: number[]
}

export const SMALL: BenchDriver = {
  fsHz: 124,
  qms: 3.2,
  qes: 0.55,
  vasL: 0.92,
  sdCm2: 28,
  reOhm: 3.4,
  leMh: 0.06,
}
export const MIDDLE: BenchDriver = {
  fsHz: 62,
  qms: 3,
  qes: 0.38,
  vasL: 7.5,
  sdCm2: 86,
  reOhm: 5.6,
  leMh: 0.4,
}
export const SHARP: BenchDriver = {
  fsHz: 38,
  qms: 7.5,
  qes: 0.9,
  vasL: 60,
  sdCm2: 210,
  reOhm: 6.2,
  leMh: 1.1,
}

const n = (value: number): string => value.toExponential(12)

/** Mechanical figures of a driver by their definitions, SI. R. H. Small 1972, from memory. */
export function mechanics(driver: BenchDriver) {
  const w = 2 * Math.PI * driver.fsHz
  const sdM2 = driver.sdCm2 * 1e-4
  const cms = (driver.vasL * 1e-3) / (RHO * C * C * sdM2 * sdM2)
  const mms = 1 / (w * w * cms)
  return { sdM2, cms, mms, rms: (w * mms) / driver.qms, bl: Math.sqrt((w * mms * driver.reOhm) / driver.qes) }
}

const SECTIONS_A_DECADE = 6

/**
 * A coil K(jω)^n as a chain of resistors, each across an inductor, corners evenly over the decades; what lies above the
 * highest corner is one more inductor. The sum is that of ∫ (jω/w)/(1 + jω/w) w^(n−1) dw = (jω)^n π/sin(nπ), textbook.
 */
function coilLines({ leMh, exponent }: BenchDriver): string[] {
  if (exponent === undefined) return [`Le e1 e2 ${n(leMh * 1e-3)}`]
  const w1k = 2 * Math.PI * 1000
  const k = (w1k ** (1 - exponent) * leMh * 1e-3) / Math.sin((exponent * Math.PI) / 2)
  const spacing = Math.log(10) / SECTIONS_A_DECADE
  const a = (k * Math.sin(exponent * Math.PI) * spacing) / Math.PI
  const corners = Array.from({ length: 9 * SECTIONS_A_DECADE }, (_, i) => 0.01 * Math.exp(i * spacing))
  const top = corners.at(-1)! * Math.exp(spacing)
  const rest = (a * top ** (exponent - 1)) / (1 - Math.exp((exponent - 1) * spacing))
  return [
    ...corners.flatMap((w, i) => [
      `Rk${i} k${i} k${i + 1} ${n(a * w ** exponent)}`,
      `Lk${i} k${i} k${i + 1} ${n(a * w ** (exponent - 1))}`,
    ]),
    'Vk e1 k0 0',
    `Lrest k${corners.length} e2 ${n(rest)}`,
  ]
}

/** The driver on the bench by the circuit simulator; the sweep as SPICE has it, 'dec 20 20 2000'. */
export async function benchSweep(driver: BenchDriver, bench: Bench, sweep: string): Promise<BenchSweep> {
  const { sdM2, cms, mms, rms, bl } = mechanics(driver)
  const mass = mms + ((bench.massG ?? 0) + (bench.extraAirG ?? 0)) * 1e-3
  const box = bench.volumeL === undefined ? null : (bench.volumeL * 1e-3) / (RHO * C * C * sdM2 * sdM2)
  const lines = [
    'Iin 0 t DC 0 AC 1',
    `Re t e1 ${n(driver.reOhm)}`,
    ...coilLines(driver),
    `Hback e2 e3 Vcone ${n(bl)}`,
    'Vcoil e3 0 0',
    `Hforce m1 0 Vcoil ${n(bl)}`,
    'Vcone m1 m2 0',
    `Rms m2 m3 ${n(rms)}`,
    `Lmms m3 m4 ${n(mass)}`,
    `Cms m4 m5 ${n(cms)}`,
    box === null ? 'Vbox m5 0 0' : `Cbox m5 0 ${n(box)}`,
    'Rg4 m4 0 1e12',
    'Rg5 m5 0 1e12',
  ]
  const { frequencyHz, trace } = await runAc(lines, ['v(t)'], sweep)
  const z = trace('v(t)')
  return {
    frequencyHz,
    ohm: z.map(({ real, img }) => Math.hypot(real, img)),
    phaseDeg: z.map(({ real, img }) => (Math.atan2(img, real) * 180) / Math.PI),
  }
}

/** The same sweep with normal errors: a share of the modulus, and as many radians of phase where it is kept. */
export function noisySweep(
  { frequencyHz, ohm, phaseDeg }: BenchSweep,
  share: number,
  random: () => number,
  withPhase: boolean,
): { frequencyHz: number[]; impedanceOhm: number[]; phaseDeg?: number[] } {
  const impedanceOhm = ohm.map((value) => value * (1 + share * normal(random)))
  const phases = phaseDeg.map((value) => value + (share * normal(random) * 180) / Math.PI)
  return { frequencyHz, impedanceOhm, ...(withPhase && { phaseDeg: phases }) }
}
