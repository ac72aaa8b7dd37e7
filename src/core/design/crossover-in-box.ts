import type { Driver } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { LoadImpedanceRequest } from '../../schema/load-impedance.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import { crossoverSection } from '../load/crossover-section.ts'
import { crossoverWiring } from '../load/crossover-wiring.ts'
import { impedancesOf } from '../load/known-drivers.ts'
import { isRefusal } from '../outcome.ts'

/** Said when the crossover that is wished became the wiring. */
const CROSSOVER_ASSUMED: Assumption = {
  at: '/wiring',
  value: 'crossover',
  unit: '',
  why: 'no wiring was given; the two drivers through the crossover that is wished, its capacitors of the E12 series',
}

/** What was filled in when the crossover became the wiring. */
export const crossoverAssumptions = ({ crossover }: LoadImpedanceRequest): Assumption[] => [
  CROSSOVER_ASSUMED,
  ...(crossover?.coilResistanceOhm === undefined
    ? [{ at: '/crossover/coilResistanceOhm', value: 0, unit: 'ohm', why: 'the coil is taken as ideal' }]
    : []),
]

/**
 * The request with a wiring through the crossover that is wished, when it has two different drivers and no wiring;
 * every other request as it is.
 * @param impedancesOn  impedances of the drivers on a grid, Hz
 */
export function withCrossover(
  request: LoadImpedanceRequest,
  drivers: readonly Driver[],
  impedancesOn: (frequencyHz: Float64Array) => ReadonlyMap<string, ComplexCurve>,
): LoadImpedanceRequest {
  const { wiring, crossover, amplifier } = request
  if (wiring !== undefined || crossover === undefined || !isOneEach(drivers, amplifier?.channels))
    return request
  const atCorner = Float64Array.of(crossover.cornerHz)
  const known = impedancesOf(drivers, impedancesOn(atCorner), atCorner)
  if (isRefusal(known)) return request
  const parts = crossoverSection(crossover, drivers, known, atCorner, undefined)
  const through = crossoverWiring(drivers, crossover, parts)
  return through === undefined ? request : { ...request, wiring: through }
}

const isOneEach = (drivers: readonly Driver[], channels = 1): boolean =>
  drivers.every(({ count = 1 }) => count === 1 || count === channels)
