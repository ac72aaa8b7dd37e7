import type { Port } from '../../schema/port.ts'
import type { Fault } from '../outcome.ts'
import { endsOf, neighbourEnd, roundEnd, slotEnd } from './end-correction.ts'

/** Share of the air in a box that its tubes may hold before it is no box with a port any more. Common practice, no source. */
export const MOST_TUBE_SHARE = 0.5

/** A port as the circuit sees it, all millimetres; areas of one port in cm². */
export interface PortGeometry {
  count: number
  shape: 'round' | 'slot'
  areaCm2: number
  /** Radius of the circle of equal area. */
  radiusMm: number
  /** Smallest inner dimension, what a wall behind the tube must stay clear by. */
  diameterMm: number
  outerEndMm: number
  innerEndMm: number
  neighboursOuterMm: number
  neighboursInnerMm: number
}

type PortShape = Pick<
  Port,
  'count' | 'shape' | 'innerDiameterMm' | 'outerDiameterMm' | 'slot' | 'spacingMm' | 'ends' | 'elbows'
>

interface ShapeRule {
  field: string
  broken: (port: PortShape) => boolean
  message: (port: PortShape) => string
}

const isSlot = (port: PortShape): boolean =>
  port.shape === undefined ? port.slot !== undefined : port.shape === 'slot'

/** Smallest distance at which two ports of this kind lie side by side, mm. */
const acrossMm = ({ innerDiameterMm = 0, outerDiameterMm = 0, slot }: PortShape): number =>
  Math.max(innerDiameterMm, outerDiameterMm, slot === undefined ? 0 : Math.min(slot.widthMm, slot.heightMm))

const SHAPE_RULES: readonly ShapeRule[] = [
  {
    field: 'innerDiameterMm',
    broken: (port) => !isSlot(port) && port.innerDiameterMm === undefined,
    message: () => 'a round port needs innerDiameterMm; or give slot {widthMm, heightMm}',
  },
  {
    field: 'slot',
    broken: (port) => isSlot(port) && port.slot === undefined,
    message: () => 'a slot needs slot {widthMm, heightMm}',
  },
  {
    field: 'slot',
    broken: (port) => port.innerDiameterMm !== undefined && port.slot !== undefined,
    message: () => 'give innerDiameterMm or slot, not both',
  },
  {
    field: 'outerDiameterMm',
    broken: (port) => (port.outerDiameterMm ?? Number.POSITIVE_INFINITY) < (port.innerDiameterMm ?? 0),
    message: (port) => `must be at least innerDiameterMm, ${port.innerDiameterMm} mm`,
  },
  {
    field: 'elbows/radiusMm',
    broken: (port) => (port.elbows?.radiusMm ?? Number.POSITIVE_INFINITY) <= acrossMm(port) / 2,
    message: (port) =>
      `the middle of a bend must be more than half the tube away from its centre, ${acrossMm(port) / 2} mm`,
  },
  {
    field: 'spacingMm',
    broken: (port) => (port.spacingMm ?? Number.POSITIVE_INFINITY) < acrossMm(port),
    message: (port) => `ports this close overlap; at least ${acrossMm(port)} mm between centres`,
  },
]

/** What is missing or contradictory in the shape of a port, as faults below `at`. */
export const portShapeFaults = (port: PortShape, at: string): Fault[] =>
  SHAPE_RULES.filter((rule) => rule.broken(port)).map((rule) => ({
    at: `${at}/${rule.field}`,
    message: rule.message(port),
  }))

/**
 * Area and end corrections of a port whose shape has no faults.
 * Sources: at each correction in end-correction.ts.
 */
export function portGeometry(port: PortShape): PortGeometry {
  const count = port.count ?? 1
  const ends = endsOf(port.ends)
  const slot = port.slot
  const width = port.innerDiameterMm ?? 0
  const areaMm2 = slot === undefined ? (Math.PI * width * width) / 4 : slot.widthMm * slot.heightMm
  const radiusMm = Math.sqrt(areaMm2 / Math.PI)
  const spacing = port.spacingMm ?? 4 * radiusMm
  return {
    count,
    shape: slot === undefined ? 'round' : 'slot',
    areaCm2: areaMm2 / 100,
    radiusMm,
    diameterMm: slot === undefined ? width : Math.min(slot.widthMm, slot.heightMm),
    outerEndMm: slot === undefined ? roundEnd(radiusMm, ends.outer) : slotEnd(slot, ends.outer),
    innerEndMm: slot === undefined ? roundEnd(radiusMm, ends.inner) : slotEnd(slot, ends.inner),
    neighboursOuterMm: neighbourEnd(count, radiusMm, spacing, ends.outer),
    neighboursInnerMm: neighbourEnd(count, radiusMm, spacing, ends.inner),
  }
}

/** Sum of everything that the ends add to the length of one tube, mm. */
export const endsTotalMm = (g: PortGeometry): number =>
  g.outerEndMm + g.innerEndMm + g.neighboursOuterMm + g.neighboursInnerMm

/**
 * Effective length that tunes a box, mm: port of `totalAreaCm2` on `netVolumeL` at `tuningHz`, all > 0.
 * Source: Helmholtz resonance; R. H. Small, J. Audio Eng. Soc. 21 (June 1973).
 */
export function effectiveLengthMm(
  netVolumeL: number,
  tuningHz: number,
  totalAreaCm2: number,
  speedMPerS: number,
): number {
  const w = 2 * Math.PI * tuningHz
  return (1000 * speedMPerS ** 2 * totalAreaCm2 * 1e-4) / (w * w * netVolumeL * 1e-3)
}

/**
 * Tuning of a box, Hz, by the effective length of its port, mm (> 0).
 * Source: as for the effective length, solved for frequency.
 */
export function helmholtzHz(
  netVolumeL: number,
  lengthMm: number,
  totalAreaCm2: number,
  speedMPerS: number,
): number {
  return (
    (speedMPerS / (2 * Math.PI)) * Math.sqrt((totalAreaCm2 * 1e-4) / (netVolumeL * 1e-3 * lengthMm * 1e-3))
  )
}
