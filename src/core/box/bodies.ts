import type { Box } from '../../schema/box.ts'
import type { DriverFrame } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Port } from '../../schema/port.ts'

/** Drivers whose bodies stand in the air of the box. */
export interface BodyInBox {
  /** Pointer to the driver in the request. */
  at: string
  count: number
  frame: DriverFrame | undefined
}

// A basket and magnet fill about a third of the cylinder of cut-out and depth: common practice, no source.
const BODY_SHARE = 1 / 3
// Wall of waste pipe and of thick cardboard tube: common practice, no source.
const USUAL_WALL_MM = 3

/** Air one driver takes up inside, litres: as given, else estimated from its frame, else unknown and 0. */
export function driverBodyL(frame: DriverFrame | undefined): { volumeL: number; why: string | null } {
  if (frame?.displacementL !== undefined) return { volumeL: frame.displacementL, why: null }
  if (frame === undefined)
    return { volumeL: 0, why: 'no frame given, so the body of the driver is not taken off' }
  const cylinder = (Math.PI / 4) * frame.cutoutDiameterMm ** 2 * frame.depthMm * 1e-6
  return {
    volumeL: BODY_SHARE * cylinder,
    why: 'a third of cut-out area times depth; common practice, no source',
  }
}

/** Air one port takes up inside the box, litres: its outside times the length behind the panel. */
export function portBodyL(port: Port, lengthMm: number, panelThicknessMm: number): number {
  const inside = Math.max(0, lengthMm - panelThicknessMm)
  if (port.slot !== undefined)
    return port.slot.widthMm * (port.slot.heightMm + panelThicknessMm) * inside * 1e-6
  const outer = port.outerDiameterMm ?? (port.innerDiameterMm ?? 0) + 2 * USUAL_WALL_MM
  return (Math.PI / 4) * outer * outer * inside * 1e-6
}

/** The wall of a tube whose outside was not given. */
export function tubeWallAssumption(port: Port | undefined): Assumption[] {
  if (port?.innerDiameterMm === undefined || port.outerDiameterMm !== undefined) return []
  const value = port.innerDiameterMm + 2 * USUAL_WALL_MM
  return [
    { at: '/port/outerDiameterMm', value, unit: 'mm', why: 'a wall of 3 mm; common practice, no source' },
  ]
}

/** Air that drivers, amplifier and braces take up, litres, and what had to be assumed for it. */
export function fittingsL(
  box: Box,
  bodies: readonly BodyInBox[],
): { takenL: number; assumptions: Assumption[] } {
  const known = bodies.map((body) => ({ ...body, ...driverBodyL(body.frame) }))
  const drivers = known.reduce((sum, body) => sum + body.count * body.volumeL, 0)
  return {
    takenL: drivers + (box.electronicsL ?? 0) + (box.braceL ?? 0),
    assumptions: known.flatMap((body) =>
      body.why === null
        ? []
        : [{ at: `${body.at}/frame/displacementL`, value: body.volumeL, unit: 'L', why: body.why }],
    ),
  }
}
