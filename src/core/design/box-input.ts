import type { Design } from '../../schema/design.ts'
import type { BoxInput } from '../box/assemble.ts'
import { groupOf } from '../box/loudspeaker.ts'
import { withThickness } from './box-thickness.ts'
import { channelGroup } from './channel-group.ts'
import type { ChannelPlan } from './channel-plan.ts'
import { ownImpedances } from './other-drivers.ts'

/** The box of a design as the circuit takes it; without a plan the first driver, all of them in parallel. */
export function boxInput(design: Design, plan: ChannelPlan | null): BoxInput {
  const index = plan?.mainIndex ?? 0
  const main = plan?.main ?? design.drivers[0]
  const count = main?.count ?? 1
  const others = design.drivers.filter((driver) => driver !== main)
  return {
    driver: main?.parameters ?? {},
    driverAt: `/drivers/${index}/parameters`,
    group:
      plan === null || main === undefined
        ? groupOf(count, 'parallel')
        : channelGroup(plan.wiring, main.id, count, (grid) => ownImpedances(others, grid)),
    bodies: design.drivers.map((driver, i) => ({
      at: `/drivers/${i}`,
      count: driver.count ?? 1,
      frame: driver.frame,
    })),
    box: withThickness(design.box, design.stock),
    port: design.port,
    passiveRadiator: design.passiveRadiator,
    sourceResistanceOhm: 0,
    air: design.air,
    space: design.space ?? 'half',
  }
}
