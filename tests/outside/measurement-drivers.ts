import { C, RHO } from './loudspeaker-netlist.ts'
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

/** The driver on the bench by the circuit simulator; the sweep as SPICE has it, 'dec 20 20 2000'. */
export async function benchSweep(driver: BenchDriver, bench: Bench, sweep: string): Promise<BenchSweep> {
  const { sdM2, cms, mms, rms, bl } = mechanics(driver)
  const mass = mms + ((bench.massG ?? 0) + (bench.extraAirG ?? 0)) * 1e-3
  const box = bench.volumeL === undefined ? null : (bench.volumeL * 1e-3) / (RHO * C * C * sdM2 * sdM2)
  const lines = [
    'Iin 0 t DC 0 AC 1',
    `Re t e1 ${n(driver.reOhm)}`,
    `Le e1 e2 ${n(driver.leMh * 1e-3)}`,
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
