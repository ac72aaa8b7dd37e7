import type { Design } from '../../schema/design.ts'
import type { Driver } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { repeatedIds, wiringFaults } from '../load/wiring-faults.ts'
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

function sharingFaults(indices: readonly number[]): Fault[] {
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
      'two kinds of driver in one air are not calculated; set false for one with its own closed back, a tweeter say',
  }))
}

function channelFaults(channels: number, boxes: number): Fault[] {
  return Number.isInteger(channels / boxes)
    ? []
    : [{ at: '/boxes', message: `${channels} amplifier channels cannot be shared equally by ${boxes} boxes` }]
}

interface Wired {
  wiring: Wiring
  assumptions: Assumption[]
}

const unsaid = (message: string): { faults: Fault[] } => ({ faults: [{ at: '/wiring', message }] })

/** The wiring as given, or the plain one of a single kind of driver. */
function wiringOf(design: Design, main: Driver, channelsPerBox: number): Wired | { faults: Fault[] } {
  if (design.wiring !== undefined) return { wiring: design.wiring, assumptions: [] }
  if (design.drivers.length > 1) return unsaid('there are different drivers; say how they are wired')
  const each = (main.count ?? 1) / channelsPerBox
  if (!Number.isInteger(each))
    return unsaid(
      `${main.count ?? 1} drivers cannot be shared equally by ${channelsPerBox} channels; say how they are wired`,
    )
  if (each === 1) return { wiring: main.id, assumptions: [] }
  return {
    wiring: { parallel: Array.from({ length: each }, () => main.id) },
    assumptions: [
      {
        at: '/wiring',
        value: 'parallel',
        unit: '',
        why: 'no wiring was given; all drivers of a channel in parallel',
      },
    ],
  }
}

/**
 * Sorts out drivers, channels and wiring of a design, with every contradiction as a fault.
 * A box holds `amplifier.channels / boxes` channels; without `channels` it is one a box.
 */
export function channelPlan(design: Design): ChannelPlan | { faults: Fault[] } {
  const { drivers, amplifier } = design
  const boxes = design.boxes ?? 1
  const channels = amplifier.channels ?? boxes
  const indices = sharing(drivers)
  const mainIndex = indices[0] ?? 0
  const main = drivers[mainIndex]
  const early = [...repeatedIds(drivers), ...sharingFaults(indices), ...channelFaults(channels, boxes)]
  if (main === undefined || early.length > 0) return { faults: early }
  const channelsPerBox = channels / boxes
  const wired = wiringOf(design, main, channelsPerBox)
  if ('faults' in wired) return wired
  const faults = wiringFaults(wired.wiring, drivers, channelsPerBox)
  if (faults.length > 0) return { faults }
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
