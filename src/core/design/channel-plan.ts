import type { Design } from '../../schema/design.ts'
import type { Driver } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { wiringOf } from '../load/given-wiring.ts'
import { repeatedIds } from '../load/wiring-faults.ts'
import type { Fault } from '../outcome.ts'

/** Who plays in a box: the kind of driver that shares its air, and how a channel reaches it. */
export interface ChannelPlan {
  /** The kind that shares the air of the box, and its place among the drivers of the request. */
  main: Driver
  mainIndex: number
  wiring: Wiring
  channels: number
  channelsPerBox: number
  assumptions: Assumption[]
}

const sharing = (drivers: readonly Driver[]): number[] =>
  drivers.flatMap((driver, index) => (driver.sharesBox === false ? [] : [index]))

/** Faults of drivers that go in one box: none shares its air, or two kinds do. */
export function sharingFaults(drivers: readonly Driver[]): Fault[] {
  const indices = sharing(drivers)
  if (indices.length === 0)
    return [
      {
        at: '/drivers/0/sharesBox',
        message: 'no driver shares the air of the box; leave sharesBox out for the one that does',
      },
    ]
  return indices.slice(1).map((index) => ({
    at: `/drivers/${index}/sharesBox`,
    message:
      'two kinds of driver in one air are not calculated; one with its own closed back, a tweeter say, does not share it',
  }))
}

function channelFaults(channels: number, boxes: number): Fault[] {
  return Number.isInteger(channels / boxes)
    ? []
    : [{ at: '/boxes', message: `${channels} amplifier channels cannot be shared equally by ${boxes} boxes` }]
}

/**
 * Sorts out drivers, channels and wiring of a design, with every contradiction as a fault.
 * A box holds `amplifier.channels / boxes` channels; without `channels` it is one a box.
 */
export function channelPlan(design: Design): ChannelPlan | { faults: Fault[] } {
  const { drivers, amplifier } = design
  const boxes = design.boxes ?? 1
  const channels = amplifier.channels ?? boxes
  const mainIndex = sharing(drivers)[0] ?? 0
  const main = drivers[mainIndex]
  const early = [...repeatedIds(drivers), ...sharingFaults(drivers), ...channelFaults(channels, boxes)]
  if (main === undefined || early.length > 0) return { faults: early }
  const channelsPerBox = channels / boxes
  const wired = wiringOf(
    { drivers, ...(design.wiring !== undefined && { wiring: design.wiring }) },
    channelsPerBox,
  )
  if ('faults' in wired) return wired
  const assumptions = amplifier.channels === undefined ? [oneABox(channels)] : []
  return {
    main,
    mainIndex,
    ...wired,
    channels,
    channelsPerBox,
    assumptions: [...assumptions, ...wired.assumptions],
  }
}

const oneABox = (channels: number): Assumption => ({
  at: '/amplifier/channels',
  value: channels,
  unit: '',
  why: 'one channel a box',
})
