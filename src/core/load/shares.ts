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

/** Index of the lowest impedance modulus on the grid. */
export function lowestIndex({ re, im }: ComplexCurve): number {
  let index = 0
  let lowest = Number.POSITIVE_INFINITY
  for (let i = 0; i < re.length; i++) {
    const square = re[i]! * re[i]! + im[i]! * im[i]!
    if (square < lowest) {
      lowest = square
      index = i
    }
  }
  return index
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
