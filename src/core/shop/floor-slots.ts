import type { Sides } from '../../schema/box.ts'
import type { Point } from './bolt-circle.ts'
import type { FrontPort } from './front-bodies.ts'

/** The part of the front that slots on the floor of the box take up. */
export interface FloorBand {
  /** Height from the inner floor, mm, with the land above the slots that nothing else may use; 0 without slots. */
  heightMm: number
  acrossMm: number
  /** Centres, from the inner lower left corner. */
  centres: Map<string, Point>
}

const NO_BAND: FloorBand = { heightMm: 0, acrossMm: 0, centres: new Map() }

/**
 * Slots on the inner floor: side by side with two boards between them where the box is wide enough, else one on the
 * shelf of the other. Geometry.
 * @param landMm  wood wanted above the slots, mm
 */
export function floorBand(
  ports: readonly FrontPort[],
  inner: Sides,
  thicknessMm: number,
  webMm: number,
  landMm: number,
): FloorBand {
  const slot = ports[0]?.slot
  if (slot === undefined || slot === null || !slot.onWall) return NO_BAND
  const { widthMm, heightMm } = slot
  const pitchMm = widthMm + Math.max(webMm, 2 * thicknessMm)
  const inRowMm = widthMm + (ports.length - 1) * pitchMm
  const abreast = inRowMm <= inner.widthMm
  const shelved = heightMm + thicknessMm
  const layers = abreast ? 1 : ports.length
  return {
    heightMm: heightMm + (layers - 1) * shelved + landMm,
    acrossMm: abreast ? inRowMm : widthMm,
    centres: new Map(
      ports.map(({ id }, index) => [
        id,
        {
          xMm: inner.widthMm / 2 + (abreast ? (index - (ports.length - 1) / 2) * pitchMm : 0),
          yMm: heightMm / 2 + (abreast ? 0 : index * shelved),
        },
      ]),
    ),
  }
}
