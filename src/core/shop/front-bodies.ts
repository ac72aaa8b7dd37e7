import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Driver, DriverFrame } from '../../schema/driver.ts'
import type { Port } from '../../schema/port.ts'
import type { BoxPlan } from './box-plan.ts'

/** A driver on the front: its name, where its data stand, and its frame. */
export interface FrontDriver {
  id: string
  /** Pointer to the driver in the request. */
  at: string
  frame: DriverFrame
}

/** A port on the front. */
export interface FrontPort {
  id: string
  outerDiameterMm: number | null
  slot: { widthMm: number; heightMm: number } | null
}

/** A small hole: a control or an indicator. */
export interface SmallHole {
  kind: 'control' | 'indicator'
  diameterMm: number
}

/** Diameters when the request does not say, mm. Common practice, no source. */
export const USUAL_SHAFT_MM = 7
export const USUAL_INDICATOR_MM = 3
/** Wall of a tube whose outside is not given, mm. Common practice, no source. */
const USUAL_WALL_MM = 3

const numbered = (id: string, count: number, index: number): string => (count > 1 ? `${id} ${index + 1}` : id)

/** Drivers with a frame, the smallest cut-out first: it goes to the top. */
export function frontDrivers(drivers: readonly Driver[]): FrontDriver[] {
  return drivers
    .flatMap(({ id, count = 1, frame }, index) =>
      frame === undefined
        ? []
        : Array.from({ length: count }, (_, copy) => ({
            id: numbered(id, count, copy),
            at: `/drivers/${index}`,
            frame,
          })),
    )
    .sort((a, b) => a.frame.cutoutDiameterMm - b.frame.cutoutDiameterMm)
}

/** Ports of one box; a round one needs a diameter, or it is not drawn. */
export function frontPorts(port: Port | undefined): FrontPort[] {
  if (port === undefined) return []
  const { count = 1, innerDiameterMm, slot } = port
  const outerDiameterMm =
    port.outerDiameterMm ?? (innerDiameterMm === undefined ? null : innerDiameterMm + 2 * USUAL_WALL_MM)
  if (slot === undefined && outerDiameterMm === null) return []
  return Array.from({ length: count }, (_, copy) => ({
    id: numbered('port', count, copy),
    outerDiameterMm: slot === undefined ? outerDiameterMm : null,
    slot: slot === undefined ? null : { widthMm: slot.widthMm, heightMm: slot.heightMm },
  }))
}

/** Control and indicator that the request names. */
export function smallHoles(request: Pick<CutListRequest, 'signal' | 'supply'>): SmallHole[] {
  const control = request.signal?.volumeControl
  const indicator = request.supply?.indicator
  return [
    ...(control === undefined
      ? []
      : [{ kind: 'control' as const, diameterMm: control.shaftDiameterMm ?? USUAL_SHAFT_MM }]),
    ...(indicator === undefined
      ? []
      : [{ kind: 'indicator' as const, diameterMm: indicator.diameterMm ?? USUAL_INDICATOR_MM }]),
  ]
}

/** Drivers without a frame: nobody can place their holes. */
export const unmeasuredDrivers = (plan: BoxPlan): string[] =>
  plan.drivers.filter((driver) => driver.frame === undefined).map((driver) => driver.id)
