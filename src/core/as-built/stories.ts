import type { Cones } from './cones.ts'
import type { Deviation } from './deviations.ts'
import type { PlannedBox } from './planned-box.ts'

/** What may have happened to a box beyond some deviation: nothing, or one fault that changes the circuit itself. */
export interface Story {
  fault: 'none' | 'port-blocked' | 'driver-reversed' | 'driver-open' | 'driver-shorted' | 'other-joint'
  cones: Cones
  joint: PlannedBox['joint']
  blocked: boolean
  /** What is sought; everything else stays as planned. */
  free: readonly Deviation[]
}

const CLOSED = ['series', 'motor', 'coil', 'air', 'leak', 'absorption'] as const
/**
 * With an opening the driver itself shows as well. Its friction, leak, absorption and friction in the port are four
 * losses behind three coefficients of the curve: that of the port stays as planned.
 */
const OPEN = [...CLOSED, 'suspension', 'friction', 'tuning'] as const
/** Two in antiphase feel nothing of the box: only the driver in free air can be sought. */
const FREE_AIR = ['series', 'motor', 'coil', 'suspension', 'friction'] as const

/** Every story that the plan allows, the plain one first. Faults of single drivers are told of plain groups only. */
export function storiesOf(planned: PlannedBox): [Story, ...Story[]] {
  const { driven, idle, joint, speaker } = planned
  const plain: Story = {
    fault: 'none',
    cones: { driven, reversed: 0, idle, braked: 0 },
    joint,
    blocked: false,
    free: speaker.opening === null ? CLOSED : OPEN,
  }
  const blocked: Story[] =
    speaker.opening === null ? [] : [{ ...plain, fault: 'port-blocked', blocked: true, free: CLOSED }]
  if (joint === null) return [plain, ...blocked]
  const reversed: Story = {
    ...plain,
    fault: 'driver-reversed',
    cones: { ...plain.cones, reversed: 1 },
    free: driven === 2 ? FREE_AIR : plain.free,
  }
  const dead: Story =
    joint === 'parallel'
      ? { ...plain, fault: 'driver-open', cones: { ...plain.cones, driven: driven - 1, idle: idle + 1 } }
      : { ...plain, fault: 'driver-shorted', cones: { ...plain.cones, driven: driven - 1, braked: 1 } }
  const other: Story = {
    ...plain,
    fault: 'other-joint',
    joint: joint === 'parallel' ? 'series' : 'parallel',
  }
  return [plain, ...blocked, reversed, dead, other]
}
