import type { Driver } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { LoadImpedanceRequest } from '../../schema/load-impedance.ts'
import type { Wiring } from '../../schema/wiring.ts'
import type { Refusal } from '../outcome.ts'
import { channelsThatFit, repeatedIds, wiringFaults } from './wiring-faults.ts'
import { partsOf } from './wiring-parts.ts'

/**
 * The wiring of a request: as given and found free of contradictions, or taken when there is only one kind of driver.
 * @param channelsPerBox  channels that end in one box; found from the counts when left out
 */
export function wiringOf(
  { drivers, wiring, amplifier }: LoadImpedanceRequest,
  channelsPerBox: number | undefined,
): { wiring: Wiring; assumptions: Assumption[] } | Refusal {
  if (wiring === undefined) return assumedWiring(drivers, channelsPerBox ?? 1)
  const channels = channelsPerBox ?? channelsOf(wiring, drivers, amplifier)
  // Without boxes there is nothing that a count left out could contradict: it follows from the wiring.
  const counted = channelsPerBox === undefined ? countedDrivers({ drivers, wiring, amplifier }) : drivers
  const faults = wiringFaults(wiring, counted, channels)
  return faults.length > 0 ? { faults } : { wiring, assumptions: [] }
}

const channelsOf = (
  wiring: Wiring,
  drivers: readonly Driver[],
  amplifier: LoadImpedanceRequest['amplifier'],
): number => channelsThatFit(wiring, drivers, amplifier?.channels ?? 2)

/** The drivers with every count that was left out as it follows from the wiring; unchanged without a wiring. */
export function countedDrivers({
  drivers,
  wiring,
  amplifier,
}: Pick<LoadImpedanceRequest, 'drivers' | 'wiring'> & {
  amplifier?: LoadImpedanceRequest['amplifier'] | undefined
}): Driver[] {
  if (wiring === undefined) return drivers
  const channels = channelsOf(wiring, drivers, amplifier)
  return drivers.map((driver) => withCount(driver, wiring, channels))
}

function withCount(driver: Driver, wiring: Wiring, channels: number): Driver {
  const named = partsOf(wiring).filter(({ part }) => part === driver.id).length
  return driver.count === undefined ? { ...driver, count: Math.max(1, named * channels) } : driver
}

function assumedWiring(
  drivers: readonly Driver[],
  channelsPerBox: number,
): { wiring: Wiring; assumptions: Assumption[] } | Refusal {
  const [only, ...others] = drivers
  const count = (only?.count ?? 1) / channelsPerBox
  if (only === undefined || others.length > 0)
    return {
      faults: [
        {
          at: '/wiring',
          message:
            'There are different drivers; say how they are wired. A wished crossover wires two of them when it can be told which plays the treble: give fsHz of both, or sharesBox false for the tweeter.',
        },
        ...repeatedIds(drivers),
      ],
    }
  if (!Number.isInteger(count))
    return {
      faults: [{ at: '/drivers/0/count', message: `It cannot be divided over ${channelsPerBox} channels.` }],
    }
  if (count === 1) return { wiring: only.id, assumptions: [] }
  return {
    wiring: { parallel: Array.from({ length: count }, () => only.id) },
    assumptions: [
      { at: '/wiring', value: 'parallel', unit: '', why: 'no wiring was given; all drivers in parallel' },
    ],
  }
}

/** Coils of which no resistance was given. */
export function coilAssumptions(wiring: Wiring | undefined): Assumption[] {
  if (wiring === undefined) return []
  return partsOf(wiring).flatMap(({ pointer, part }) =>
    typeof part !== 'string' && 'inductorMh' in part && part.resistanceOhm === undefined
      ? [{ at: `/wiring${pointer}/resistanceOhm`, value: 0, unit: 'ohm', why: 'the coil is taken as ideal' }]
      : [],
  )
}
