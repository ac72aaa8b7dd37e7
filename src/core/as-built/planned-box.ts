import type { Design } from '../../schema/design.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { assemble } from '../box/assemble.ts'
import type { Enclosure } from '../box/enclosure.ts'
import type { Loudspeaker } from '../box/loudspeaker.ts'
import { boxInput } from '../design/box-input.ts'
import { channelPlan } from '../design/channel-plan.ts'
import { meterReadingOhm } from '../load/direct-current.ts'
import { driverResistanceOhm } from '../load/driver-resistance.ts'
import { driverCountsOf } from '../load/wiring-parts.ts'
import { type Fault, isRefusal } from '../outcome.ts'

/** The box as planned, and what a measurement at the terminals of one of its channels is held against. */
export interface PlannedBox {
  speaker: Loudspeaker
  enclosure: Enclosure
  mainIndex: number
  /** Drivers of the main kind on the measured channel, and those of other channels in the same box. */
  driven: number
  idle: number
  /** How they are joined when nothing else is in the wiring; null for one driver, mixed trees and crossovers. */
  joint: 'parallel' | 'series' | null
  /** What a meter reads at the terminals; null where a capacitor blocks. */
  meterOhm: number | null
  /** That reading, or the resistance of one driver in its place: what series resistance is counted in. */
  referenceOhm: number
  assumptions: Assumption[]
}

function jointOf(wiring: Wiring): PlannedBox['joint'] {
  if (typeof wiring === 'string') return null
  const [joint, branches] =
    'series' in wiring
      ? (['series', wiring.series] as const)
      : 'parallel' in wiring
        ? (['parallel', wiring.parallel] as const)
        : [null, []]
  const plain = branches.every((branch) => typeof branch === 'string' && branch === branches[0])
  return plain && branches.length > 1 ? joint : null
}

const below = <Row extends { at: string }>(rows: readonly Row[]): Row[] =>
  rows.map((row) => ({ ...row, at: `/design${row.at}` }))

const idleAssumption = (idle: number): Assumption[] =>
  idle === 0
    ? []
    : [
        {
          at: '/measured',
          value: idle,
          unit: '',
          why: 'drivers of the other channel in this box: taken as not connected while one channel is measured',
        },
      ]

/**
 * The box of a design, ready to be compared with a measurement. Pointers of faults and assumptions lie below `/design`.
 * Refuses, with every fault at once, designs that cannot be put together. Sources: in the files it calls.
 */
export function plannedBox(design: Design): PlannedBox | { faults: Fault[] } {
  const plan = channelPlan(design)
  if (isRefusal(plan)) return { faults: below(plan.faults) }
  const { main, mainIndex, wiring } = plan
  const others = design.drivers.filter((driver) => driver !== main)
  const count = main.count ?? 1
  const assembled = assemble(boxInput(design, plan))
  if ('faults' in assembled) return { faults: below(assembled.faults) }
  const { speaker, enclosure } = assembled
  const resistances = new Map(
    design.drivers.flatMap((driver) => {
      const ohm = driver === main ? speaker.driver.reOhm : driverResistanceOhm(driver)
      return ohm === undefined ? [] : [[driver.id, ohm] as const]
    }),
  )
  const unknown = others.flatMap((driver) =>
    resistances.has(driver.id) ? [] : [design.drivers.indexOf(driver)],
  )
  if (unknown.length > 0)
    return {
      faults: unknown.map((index) => ({
        at: `/design/drivers/${index}/parameters/reOhm`,
        message: 'Give reOhm, or ratedImpedanceOhm as printed on the driver.',
      })),
    }
  const meterOhm = meterReadingOhm(wiring, resistances)
  const driven = driverCountsOf(wiring).get(main.id) ?? count
  const idle = Math.max(0, count - driven)
  return {
    speaker,
    enclosure,
    mainIndex,
    driven,
    idle,
    joint: jointOf(wiring),
    meterOhm,
    referenceOhm: meterOhm ?? speaker.driver.reOhm,
    assumptions: [...below([...plan.assumptions, ...assembled.assumptions]), ...idleAssumption(idle)],
  }
}
