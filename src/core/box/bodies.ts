import type { Box, Sides } from '../../schema/box.ts'
import type { DriverFrame } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { PassiveRadiator, Port } from '../../schema/port.ts'
import { boardsL, bracesL } from './braces.ts'

/** Drivers or radiators whose bodies stand in the air of the box. */
export interface BodyInBox {
  /** Pointer to them in the request. */
  at: string
  count: number
  frame: DriverFrame | undefined
}

// A basket and magnet fill about a third of the cylinder of cut-out and depth: common practice, no source.
const BODY_SHARE = 1 / 3
/** Wall of a tube whose outside is not given, mm: waste pipe, thick cardboard tube. Common practice, no source. */
export const USUAL_WALL_MM = 3
/** A slot this much narrower than the box still counts as going from wall to wall, mm. Common practice, no source. */
const WALL_TO_WALL_MM = 1

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

/** Passive radiators as bodies in the box; without a frame nothing is known of theirs. */
export const radiatorBodies = (radiator: PassiveRadiator | undefined): BodyInBox[] =>
  radiator?.frame === undefined
    ? []
    : [{ at: '/passiveRadiator', count: radiator.count ?? 1, frame: radiator.frame }]

/** The boards round one slot, all as long as its duct. */
export interface SlotBoards {
  shelvesEach: number
  cheeksEach: number
  cheekHeightMm: number
  /** Room between slot and side wall, mm; null where the walls themselves are the sides, or the width is unknown. */
  besideMm: number | null
}

/**
 * A shelf above the slot, a second one below it unless it lies on the floor, and cheeks at both sides unless the
 * walls of the box are there. Cheeks are left out where no board goes between slot and wall. Geometry.
 * @param innerWidthMm  width inside the box; null when unknown: then as if the slot went from wall to wall
 */
export function slotBoards(
  slot: NonNullable<Port['slot']>,
  thicknessMm: number,
  innerWidthMm: number | null,
): SlotBoards {
  const roomMm = innerWidthMm === null ? 0 : (innerWidthMm - slot.widthMm) / 2
  const walls = roomMm < WALL_TO_WALL_MM
  const shelvesEach = slot.onWall === true ? 1 : 2
  return {
    shelvesEach,
    cheeksEach: walls || roomMm < thicknessMm ? 0 : 2,
    cheekHeightMm: slot.heightMm + shelvesEach * thicknessMm,
    besideMm: walls ? null : roomMm,
  }
}

/** Air one port takes up inside the box, litres: its outside, boards included, times the length behind the panel. */
export function portBodyL(
  port: Port,
  lengthMm: number,
  panelThicknessMm: number,
  innerWidthMm: number | null,
): number {
  const inside = Math.max(0, lengthMm - panelThicknessMm)
  if (port.slot !== undefined) {
    const { cheeksEach, cheekHeightMm } = slotBoards(port.slot, panelThicknessMm, innerWidthMm)
    return (port.slot.widthMm + cheeksEach * panelThicknessMm) * cheekHeightMm * inside * 1e-6
  }
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

/** Air that drivers, amplifier and braces take up, litres, and what had to be assumed for it; braces need the inner sides. */
export function fittingsL(
  box: Box,
  bodies: readonly BodyInBox[],
  inner: Sides | null,
): { takenL: number; assumptions: Assumption[] } {
  const known = bodies.map((body) => ({ ...body, ...driverBodyL(body.frame) }))
  const drivers = known.reduce((sum, body) => sum + body.count * body.volumeL, 0)
  return {
    takenL:
      drivers +
      (box.electronicsL ?? 0) +
      (box.braceL ?? 0) +
      boardsL(box) +
      (inner === null ? 0 : bracesL(box, inner, box.panelThicknessMm ?? 0)),
    assumptions: known.flatMap((body) =>
      body.why === null
        ? []
        : [{ at: `${body.at}/frame/displacementL`, value: body.volumeL, unit: 'L', why: body.why }],
    ),
  }
}
