import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Driver, DriverFrame } from '../../schema/driver.ts'
import type { Port } from '../../schema/port.ts'
import { USUAL_WALL_MM } from '../box/bodies.ts'
import { USUAL_DIAMETER_MM } from '../power/indicator.ts'
import type { BoxPlan } from './box-plan.ts'

/** A driver on the front: its name, where its data stand, its frame, and its hole as the saws on hand make it. */
export interface FrontDriver {
  id: string
  /** Pointer to the driver in the request. */
  at: string
  frame: DriverFrame
  holeMm: number
}

/** A port on the front. */
export interface FrontPort {
  id: string
  outerDiameterMm: number | null
  slot: { widthMm: number; heightMm: number; onWall: boolean } | null
  /** Hole as the saws on hand make it, mm; 0 for a slot. */
  holeMm: number
  /** Distance wanted between neighbours, centre to centre, mm. */
  spacingMm: number
  /** Room wanted to a wall, mm: nearer, the tuning falls. */
  clearMm: number
}

/** Everything that goes on the front. */
export interface FrontItems {
  drivers: readonly FrontDriver[]
  ports: readonly FrontPort[]
  small: readonly SmallHole[]
  /** true when the ports are slots on the floor of the box. */
  floor: boolean
}

/** A small hole: a control or an indicator. */
export interface SmallHole {
  kind: 'control' | 'indicator'
  diameterMm: number
  /** Its body behind the front, mm; null when the request does not say. */
  bodyMm: number | null
}

/** Hole for a control when the request does not say, mm. Common practice, no source. */
export const USUAL_SHAFT_MM = 7

/** Where the request names no spacing of ports, in inner diameters: what the tuning reckons with too. */
const USUAL_SPACING_DIAMETERS = 2
/** Room to a wall below which a tube is tuned lower, in inner diameters. Common practice, no source. */
export const CLEAR_DIAMETERS = 0.5

const numbered = (id: string, count: number, index: number): string => (count > 1 ? `${id} ${index + 1}` : id)

/** Drivers with a frame, the smallest cut-out first: it goes to the top. */
export function frontDrivers(
  drivers: readonly Driver[],
  sawn: (frame: DriverFrame) => number,
): FrontDriver[] {
  return drivers
    .flatMap(({ id, count = 1, frame }, index) =>
      frame === undefined
        ? []
        : Array.from({ length: count }, (_, copy) => ({
            id: numbered(id, count, copy),
            at: `/drivers/${index}`,
            frame,
            holeMm: sawn(frame),
          })),
    )
    .sort((a, b) => a.frame.cutoutDiameterMm - b.frame.cutoutDiameterMm)
}

/** Ports of one box; a round one needs a diameter, or it is not drawn. */
export function frontPorts(port: Port | undefined, sawn: (diameterMm: number) => number): FrontPort[] {
  if (port === undefined) return []
  const { count = 1, innerDiameterMm, slot } = port
  const outerDiameterMm =
    port.outerDiameterMm ?? (innerDiameterMm === undefined ? null : innerDiameterMm + 2 * USUAL_WALL_MM)
  if (slot === undefined && outerDiameterMm === null) return []
  return Array.from({ length: count }, (_, copy) => ({
    id: numbered('port', count, copy),
    outerDiameterMm: slot === undefined ? outerDiameterMm : null,
    slot: slot === undefined ? null : { ...slot, onWall: slot.onWall ?? false },
    holeMm: slot === undefined && outerDiameterMm !== null ? sawn(outerDiameterMm) : 0,
    spacingMm: port.spacingMm ?? USUAL_SPACING_DIAMETERS * (innerDiameterMm ?? 0),
    // The hole may be wider than the tube; its clearance then holds all the more.
    clearMm: CLEAR_DIAMETERS * (innerDiameterMm ?? 0),
  }))
}

/** Control and indicator that the request names. */
export function smallHoles(request: Pick<CutListRequest, 'signal' | 'supply'>): SmallHole[] {
  const control = request.signal?.volumeControl
  const indicator = request.supply?.indicator
  return [
    ...(control === undefined
      ? []
      : [
          {
            kind: 'control' as const,
            diameterMm: control.shaftDiameterMm ?? USUAL_SHAFT_MM,
            bodyMm: control.bodyDiameterMm ?? null,
          },
        ]),
    ...(indicator === undefined
      ? []
      : [
          {
            kind: 'indicator' as const,
            diameterMm: indicator.diameterMm ?? USUAL_DIAMETER_MM,
            bodyMm: null,
          },
        ]),
  ]
}

/** Drivers without a frame: nobody can place their holes. */
export const unmeasuredDrivers = (plan: BoxPlan): string[] =>
  plan.drivers.filter((driver) => driver.frame === undefined).map((driver) => driver.id)
