import type { Driver } from '../../schema/driver.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { nearestName } from '../nearest-name.ts'
import type { Fault } from '../outcome.ts'
import {
  DEEPEST_WIRING,
  driverCountsOf,
  driverIdsOf,
  isTooDeep,
  MOST_PARTS,
  partsOf,
} from './wiring-parts.ts'

/**
 * What contradicts in a wiring and the drivers of a box: unknown or repeated ids, drivers left over, drivers missing.
 * The drivers named in the wiring, times the channels in a box, must be the drivers in the box.
 * @param channelsPerBox  channels of the amplifier that end in one box (≥ 1)
 * @returns every fault, with pointers into a request that has `/wiring` and `/drivers`; empty when it fits
 */
export function wiringFaults(wiring: Wiring, drivers: readonly Driver[], channelsPerBox: number): Fault[] {
  if (isTooDeep(wiring))
    return [{ at: '/wiring', message: `The wiring is nested more than ${DEEPEST_WIRING} deep.` }]
  const parts = partsOf(wiring).length
  if (parts > MOST_PARTS)
    return [{ at: '/wiring', message: `The wiring has ${parts} parts; ${MOST_PARTS} are the most.` }]
  return [
    ...repeatedIds(drivers),
    ...unknownIds(wiring, drivers),
    ...countFaults(wiring, drivers, channelsPerBox),
  ]
}

/** Two rows of drivers with one id cannot be told apart in a wiring. */
export function repeatedIds(drivers: readonly Driver[]): Fault[] {
  return drivers.flatMap(({ id }, index) =>
    drivers.findIndex((driver) => driver.id === id) < index
      ? [{ at: `/drivers/${index}/id`, message: `The id "${id}" is used twice; give each kind its own.` }]
      : [],
  )
}

function unknownIds(wiring: Wiring, drivers: readonly Driver[]): Fault[] {
  const known = [...new Set(drivers.map(({ id }) => id))]
  return partsOf(wiring).flatMap(({ pointer, part }) => {
    if (typeof part !== 'string' || known.includes(part)) return []
    const nearest = nearestName(part, known)
    const hint = nearest === undefined ? `known are: ${known.join(', ')}` : `did you mean "${nearest}"?`
    return [{ at: `/wiring${pointer}`, message: `There is no driver "${part}"; ${hint}` }]
  })
}

function countFaults(wiring: Wiring, drivers: readonly Driver[], channelsPerBox: number): Fault[] {
  const named = driverCountsOf(wiring)
  return drivers.flatMap(({ id, count = 1 }, index) => {
    const connected = (named.get(id) ?? 0) * channelsPerBox
    if (connected === count) return []
    const channels = channelsPerBox === 1 ? '' : ` on ${channelsPerBox} channels`
    const message =
      connected === 0
        ? `The driver "${id}" is not in the wiring, so nothing drives it.`
        : `The wiring connects ${connected} of "${id}"${channels}, but the box holds ${count}.`
    return [{ at: connected === 0 ? `/drivers/${index}` : `/drivers/${index}/count`, message }]
  })
}

/**
 * Channels in a box that make the counts fit, for a request that does not say how many boxes there are:
 * the whole number by which the first driver's count exceeds its places in the wiring, else 1.
 */
export function channelsThatFit(wiring: Wiring, drivers: readonly Driver[], channels: number): number {
  const [first] = drivers
  const named = first === undefined ? 0 : driverIdsOf(wiring).filter((id) => id === first.id).length
  const ratio = named === 0 ? 1 : (first?.count ?? 1) / named
  return Number.isInteger(ratio) && ratio >= 1 && ratio <= channels ? ratio : 1
}
