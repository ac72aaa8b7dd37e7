import type { Driver } from '../../schema/driver.ts'
import type { CrossoverWish, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { Wiring } from '../../schema/wiring.ts'

type Parts = LoadImpedanceSections['crossover'][number]

/**
 * Which of two kinds of driver plays the treble: the one with its own closed back, else the one that resonates higher.
 * @returns its index; undefined when it cannot be told, or when there are not two kinds
 */
export function trebleIndex(drivers: readonly Driver[]): number | undefined {
  const [first, second] = drivers
  if (first === undefined || second === undefined || drivers.length > 2) return undefined
  const backs = [first, second].map(({ sharesBox }) => sharesBox === false)
  if (backs[0] !== backs[1]) return backs[0] ? 0 : 1
  const [firstHz, secondHz] = [first.parameters.fsHz, second.parameters.fsHz]
  if (firstHz === undefined || secondHz === undefined || firstHz === secondHz) return undefined
  return firstHz > secondHz ? 0 : 1
}

/**
 * The wiring of two drivers through the crossover that is wished: both branches in parallel, each driver with its
 * Zobel, the pad before the treble. First order: one part a branch; second order: a coil or capacitor across too.
 * Textbook.
 * @param parts  one row a driver, in their order
 * @returns undefined when there are not two kinds of driver, one of each on a channel
 */
export function crossoverWiring(
  drivers: readonly Driver[],
  wish: CrossoverWish,
  parts: readonly Parts[],
): Wiring | undefined {
  const treble = trebleIndex(drivers)
  if (treble === undefined || parts.length !== 2) return undefined
  const [high, low] = [parts[treble], parts[1 - treble]]
  if (high === undefined || low === undefined) return undefined
  const isSecondOrder = wish.order === 2
  return { parallel: [lowPass(low, wish, isSecondOrder), highPass(high, wish, isSecondOrder)] }
}

/** Left out, the coil is ideal; it is said as 0 here so that nothing of the wiring has to be filled in. */
const coilOf = ({ inductorMh }: Parts, { coilResistanceOhm = 0 }: CrossoverWish): Wiring => ({
  inductorMh,
  resistanceOhm: coilResistanceOhm,
})

function lowPass(parts: Parts, wish: CrossoverWish, isSecondOrder: boolean): Wiring {
  const coil = coilOf(parts, wish)
  const load = flattened(parts)
  const across = { capacitorUf: parts.capacitorE12Uf }
  return { series: [coil, isSecondOrder ? { parallel: [across, load] } : load] }
}

function highPass(parts: Parts, wish: CrossoverWish, isSecondOrder: boolean): Wiring {
  const load = quieted(parts)
  const across = coilOf(parts, wish)
  return {
    series: [{ capacitorUf: parts.capacitorE12Uf }, isSecondOrder ? { parallel: [across, load] } : load],
  }
}

function flattened({ driver, zobelOhm, zobelUf }: Parts): Wiring {
  if (zobelOhm === null || zobelUf === null) return driver
  return { parallel: [driver, { series: [{ resistorOhm: zobelOhm }, { capacitorUf: zobelUf }] }] }
}

function quieted(parts: Parts): Wiring {
  const load = flattened(parts)
  if (parts.padSeriesOhm === null || parts.padShuntOhm === null) return load
  return {
    series: [{ resistorOhm: parts.padSeriesOhm }, { parallel: [{ resistorOhm: parts.padShuntOhm }, load] }],
  }
}
