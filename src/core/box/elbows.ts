import type { Port } from '../../schema/port.ts'

type Bent = Pick<Port, 'elbows' | 'innerDiameterMm' | 'outerDiameterMm'>

// The usual plumbing bend: one and a half diameters to its middle. Common practice, no source.
const USUAL_RADIUS_DIAMETERS = 1.5

/** Radius of the middle of a quarter bend, mm. */
export const elbowRadiusMm = (port: Bent): number =>
  port.elbows?.radiusMm ?? USUAL_RADIUS_DIAMETERS * (port.innerDiameterMm ?? 0)

/**
 * Straight tube to cut beside the bends, mm; negative when the bends alone are longer than the port.
 * Source: quarter circles along the middle; that the middle counts is common practice, no source.
 */
export const straightMm = (port: Bent, lengthMm: number): number =>
  lengthMm - (port.elbows?.count ?? 0) * (Math.PI / 2) * elbowRadiusMm(port)

/** How far a port reaches from the front face towards the back, mm: a bent one turns right behind the panel. Geometry. */
export function reachMm(port: Bent, lengthMm: number, panelThicknessMm: number): number {
  if (port.elbows === undefined) return lengthMm
  return panelThicknessMm + elbowRadiusMm(port) + (port.outerDiameterMm ?? port.innerDiameterMm ?? 0) / 2
}

/** The same for an answer: null without a length, and where the bends alone are longer. */
export const straightOrNull = (port: Bent, lengthMm: number | null): number | null =>
  lengthMm === null || straightMm(port, lengthMm) < 0 ? null : straightMm(port, lengthMm)
