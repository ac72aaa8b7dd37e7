import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { type ComplexCurve, pointOf } from '../complex-curve.ts'
import { cleanOutput } from '../power/amplifier.ts'
import type { CompleteAmplifier } from '../power/amplifier-defaults.ts'
import { canonical, isDriversOnly, wiringsOf } from './alternatives.ts'
import { type Network, networkImpedance, solveNetwork } from './network.ts'
import { mayDrive, ratedLoadOhm } from './rated-impedance.ts'
import { lowestIndex } from './shares.ts'
import { driverIdsOf, wiringText } from './wiring-parts.ts'

type Alternative = LoadImpedanceSections['alternatives'][number]

/** The wiring of the request, solved, and what is needed to solve another. */
interface Given {
  wiring: Wiring
  network: Network
  /** Index of the grid at which the levels are compared. */
  compared: number
  impedances: ReadonlyMap<string, ComplexCurve>
  rated: ReadonlyMap<string, number>
  frequencyHz: Float64Array
  leadOhm: number
  amplifier: CompleteAmplifier | undefined
}

/**
 * Every other wiring of the same drivers with what the amplifier sees of it, loudest first.
 * The level compares the sums of the cone drive at the same amplifier voltage, drivers of equal sensitivity.
 * Source: Kirchhoff's laws.
 */
export function otherWirings(given: Given): Alternative[] {
  if (!isDriversOnly(given.wiring)) return []
  const same = canonical(given.wiring)
  const onePoint = atOnePoint(given)
  return wiringsOf(driverIdsOf(given.wiring))
    .filter((wiring) => canonical(wiring) !== same)
    .map((wiring) => {
      const level = levelDb(drive(solve(wiring, onePoint), 0), drive(given.network, given.compared))
      return alternativeOf(wiring, given, level)
    })
    .sort((a, b) => (b.levelDb ?? 0) - (a.levelDb ?? 0))
}

/** The drivers at the one frequency where levels are compared: a whole curve of each wiring is not needed. */
const atOnePoint = ({ impedances, frequencyHz, compared, leadOhm }: Given) => ({
  impedances: new Map(Array.from(impedances, ([id, impedance]) => [id, pointOf(impedance, compared)])),
  frequencyHz: frequencyHz.subarray(compared, compared + 1),
  leadOhm,
})

const solve = (wiring: Wiring, { impedances, frequencyHz, leadOhm }: ReturnType<typeof atOnePoint>) =>
  solveNetwork(wiring, impedances, frequencyHz, leadOhm)

function alternativeOf(wiring: Wiring, given: Given, level: number | null): Alternative {
  const { impedances, rated, frequencyHz, leadOhm, amplifier } = given
  const total = networkImpedance(wiring, impedances, frequencyHz, leadOhm)
  const index = lowestIndex(total)
  const minimumOhm = Math.hypot(total.re[index]!, total.im[index]!)
  const ratedOhm = ratedLoadOhm(wiring, rated, minimumOhm)
  const supplyV = amplifier?.supplyVoltageV
  return {
    wiring,
    text: wiringText(wiring),
    ratedOhm,
    minimumOhm,
    mayDrive: amplifier === undefined ? null : mayDrive(minimumOhm, amplifier.minimumLoadOhm),
    powerW:
      amplifier === undefined || supplyV === undefined
        ? null
        : cleanOutput(amplifier, supplyV, ratedOhm).powerW,
    levelDb: level,
  }
}

/** Modulus of the sum of the voltages of all drivers over the voltage of the amplifier. */
function drive({ places }: Network, index: number): number {
  let re = 0
  let im = 0
  for (const place of places) {
    re += place.re[index]!
    im += place.im[index]!
  }
  return Math.hypot(re, im)
}

const levelDb = (other: number, given: number): number | null =>
  other > 0 && given > 0 ? 20 * Math.log10(other / given) : null
