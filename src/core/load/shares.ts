import type { ComplexCurve } from '../complex-curve.ts'
import type { Network } from './network.ts'

/** What one driver of the wiring gets at one frequency. */
export interface DriverShare {
  driver: string
  place: number
  atHz: number
  voltageShare: number
  powerShare: number
  /** Power in the driver with one volt at the load, W: what levels are compared by, at whatever frequency. */
  powerAtVoltW: number
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

/** Index of the last resonance of a driver or box; 0 without one. */
function lastResonanceIndex({ re, im }: ComplexCurve, frequencyHz: Float64Array): number {
  const square = (i: number) => re[i]! * re[i]! + im[i]! * im[i]!
  let peak = 0
  for (let i = 1; i < re.length - 1 && frequencyHz[i]! < HIGHEST_RESONANCE_HZ; i++) {
    if (square(i) > square(i - 1) && square(i) >= square(i + 1)) peak = i
  }
  return peak
}

/**
 * Index of the lowest modulus above the last resonance: the middle of the range, where the rated impedance is read
 * and shares are compared. Without a resonance it is the lowest of all.
 */
export const midRangeIndex = (total: ComplexCurve, frequencyHz: Float64Array): number =>
  lowestIndex(total, lastResonanceIndex(total, frequencyHz))

type Taken = Omit<DriverShare, 'levelDb'>

/** What one driver gets at one point of the grid; the level follows when all drivers are known. */
function shareAt(
  network: Network,
  place: number,
  impedance: ComplexCurve,
  frequencyHz: Float64Array,
  index: number,
): Taken {
  const { driver, re, im } = network.places[place]!
  const voltageShare = Math.hypot(re[index]!, im[index]!)
  const powerAtVoltW = voltageShare ** 2 * conductance(impedance, index)
  const powerShare = powerAtVoltW / conductance(network, index)
  return { driver, place, atHz: frequencyHz[index]!, voltageShare, powerShare, powerAtVoltW }
}

/**
 * Voltage and power of each driver over those of the amplifier, at one point of the grid.
 * A driver of impedance Z takes |V|² Re(1/Z); so in parallel the lower impedance takes more, in series the higher.
 * Level re the driver that takes most, for equal sensitivity: 10 log of the power ratio.
 * Source: Kirchhoff's laws.
 * @param impedances  of every driver in the network, ohm on the grid
 */
export const driverShares = (
  network: Network,
  impedances: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
  index: number,
): DriverShare[] =>
  withLevels(
    network.places.flatMap(({ driver }, place) => {
      const impedance = impedances.get(driver)
      return impedance === undefined ? [] : [shareAt(network, place, impedance, frequencyHz, index)]
    }),
  )

/** Shares this near the highest count as equal: over a whole band a driver takes practically all the power. */
const AS_GOOD_AS_HIGHEST = 0.99

/**
 * The same behind a crossover, each driver in its own band: where its share of the power is highest above its
 * resonance, and of all points as good as that the one where it takes most power. Source: Kirchhoff's laws.
 */
export const ownBandShares = (
  network: Network,
  impedances: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
): DriverShare[] =>
  withLevels(
    network.places.flatMap(({ driver }, place) => {
      const impedance = impedances.get(driver)
      if (impedance === undefined) return []
      const from = lastResonanceIndex(impedance, frequencyHz)
      const points = Array.from(frequencyHz.subarray(from), (_, i) =>
        shareAt(network, place, impedance, frequencyHz, from + i),
      )
      const highest = Math.max(...points.map(({ powerShare }) => powerShare))
      const [own] = points
        .filter(({ powerShare }) => powerShare >= AS_GOOD_AS_HIGHEST * highest)
        .sort((a, b) => b.powerAtVoltW - a.powerAtVoltW)
      return own === undefined ? [] : [own]
    }),
  )

function withLevels(taken: readonly Taken[]): DriverShare[] {
  const most = Math.max(...taken.map(({ powerAtVoltW }) => powerAtVoltW))
  return taken.map((row) => ({
    ...row,
    levelDb: row.powerAtVoltW > 0 ? 10 * Math.log10(row.powerAtVoltW / most) : null,
  }))
}

function conductance({ re, im }: ComplexCurve, index: number): number {
  return re[index]! / (re[index]! ** 2 + im[index]! ** 2)
}
