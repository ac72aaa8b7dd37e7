import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import type { Tube } from '../../schema/port.ts'
import { PORT_SPEED_LIMIT_M_PER_S } from './limits.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { MOST_TUBE_SHARE } from './port-geometry.ts'
import { type TunedPort, tubeAirL, tunePort } from './tuned-port.ts'

type Row = BoxTuningSections['tubes'][number]

/** What a tube has to go into: mm; null where it is not known. */
export interface TubeRoom {
  insideDepthMm: number | null
  panelThicknessMm: number | null
}

const MOST_TUBES = 3

// Straight in, with a diameter free behind it: common practice, no source.
const fitsIn = (lengthMm: number, diameterMm: number, room: TubeRoom): boolean | null =>
  room.insideDepthMm === null
    ? null
    : lengthMm - (room.panelThicknessMm ?? 0) + diameterMm <= room.insideDepthMm

/**
 * The tuning of a solved port from other tubes, one to three of each.
 * At one tuning the port moves the same air, so its speed goes with the inverse of the area; source: the circuit.
 * @param airSpeedMPerS  peak speed in the solved port
 */
export function compareTubes(
  tubes: readonly Tube[],
  speaker: Loudspeaker,
  solved: TunedPort,
  airSpeedMPerS: number,
  room: TubeRoom,
): Row[] {
  return tubes.flatMap((tube) =>
    Array.from({ length: MOST_TUBES }, (_, i): Row => {
      const count = i + 1
      const { innerDiameterMm } = tube
      const same = tunePort(
        { count, innerDiameterMm, tuningHz: solved.tuningHz },
        speaker.acousticVolumeL,
        speaker.air,
      )
      const speed = (airSpeedMPerS * solved.totalAreaCm2) / same.totalAreaCm2
      const { lengthMm } = same
      const fits = lengthMm === null ? null : fitsIn(lengthMm, innerDiameterMm, room)
      const reaches = lengthMm !== null && lengthMm >= (room.panelThicknessMm ?? 0)
      const longEnough = tube.lengthMm === undefined || count * (lengthMm ?? 0) <= tube.lengthMm
      const roomy = tubeAirL(same) <= MOST_TUBE_SHARE * speaker.netVolumeL
      const acceptable = reaches && roomy && longEnough && fits !== false && speed <= PORT_SPEED_LIMIT_M_PER_S
      return { innerDiameterMm, count, lengthMm, airSpeedMPerS: speed, fits, acceptable }
    }),
  )
}
