import type { ComplexCurve, Network } from './network.ts'

/** What one driver of the wiring gets at one frequency. */
export interface DriverShare {
  driver: string
  place: number
  atHz: number
  voltageShare: number
  powerShare: number
  levelDb: number | null
}

/** Resonances of drivers and boxes lie below this, Hz; maxima above it are those of coils and crossovers. */
const HIGHEST_RESONANCE_HZ = 2000

/** Index of the lowest impedance modulus on the grid, from a point of it upwards. */
export function lowestIndex({ re, im }: ComplexCurve, from = 0): number {
  let index = from
  let lowest = Number.POSITIVE_INFINITY
  for (let i = from; i < re.length; i++) {
    const square = re[i]! * re[i]! + im[i]! * im[i]!
    if (square < lowest) {
      lowest = square
      index = i
    }
  }
  return index
}

/**
 * Index of the lowest modulus above the last resonance: the middle of the range, where the rated impedance is read
 * and shares are compared. Without a resonance it is the lowest of all.
 */
export function midRangeIndex({ re, im }: ComplexCurve, frequencyHz: Float64Array): number {
  const square = (i: number) => re[i]! * re[i]! + im[i]! * im[i]!
  let peak = 0
  for (let i = 1; i < re.length - 1 && frequencyHz[i]! < HIGHEST_RESONANCE_HZ; i++) {
    if (square(i) > square(i - 1) && square(i) >= square(i + 1)) peak = i
  }
  return lowestIndex({ re, im }, peak)
}

/**
 * Voltage and power of each driver over those of the amplifier, at one point of the grid.
 * A driver of impedance Z takes |V|² Re(1/Z); so in parallel the lower impedance takes more, in series the higher.
 * Level re the driver that takes most, for equal sensitivity: 10 log of the power ratio.
 * Source: Kirchhoff's laws.
 */
export function driverShares(
  network: Network,
  impedances: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
  index: number,
): DriverShare[] {
  const totalConductance = conductance(network, index)
  const rows = network.places.map(({ driver, re, im }, place) => {
    const voltageShare = Math.hypot(re[index]!, im[index]!)
    const impedance = impedances.get(driver)
    const taken = impedance === undefined ? 0 : voltageShare ** 2 * conductance(impedance, index)
    return { driver, place, atHz: frequencyHz[index]!, voltageShare, powerShare: taken / totalConductance }
  })
  const most = Math.max(...rows.map(({ powerShare }) => powerShare))
  return rows.map((row) => ({
    ...row,
    levelDb: row.powerShare > 0 ? 10 * Math.log10(row.powerShare / most) : null,
  }))
}

function conductance({ re, im }: ComplexCurve, index: number): number {
  return re[index]! / (re[index]! ** 2 + im[index]! ** 2)
}
