import type { Stock } from '../../schema/shop.ts'

export type Material = NonNullable<Stock['material']>

/** Share of the core that a lead hole takes, and the step bits come in, mm. */
interface LeadHole {
  share: number
  stepMm: number
}

/**
 * Softwood 70%, hardwood 90% of the core: Wood Handbook, FPL-GTR-282, ch. 8, from memory.
 * Fibreboard 85 to 95%, bits to the nearest half millimetre: European MDF industry guidance.
 * Plywood as hardwood and bits by tenths: common practice, no source.
 */
const LEAD_HOLES = {
  softwood: { share: 0.7, stepMm: 0.1 },
  hardwood: { share: 0.9, stepMm: 0.1 },
  plywood: { share: 0.9, stepMm: 0.1 },
  mdf: { share: 0.9, stepMm: 0.5 },
  hdf: { share: 0.9, stepMm: 0.5 },
  particleboard: { share: 0.9, stepMm: 0.5 },
} satisfies Record<Material, LeadHole>

/** true for boards whose edges and corners split: the distances of the fibreboard guidance hold. */
export const isFibreboard = (material: Material): boolean =>
  material === 'mdf' || material === 'hdf' || material === 'particleboard'

/** Core of a particle-board type screw from its outer diameter, mm: 0.60 to 0.67 of it, from memory. */
export const coreMm = (diameterMm: number): number => 0.65 * diameterMm

/** Lead hole for a screw of this core, mm. Sources at LEAD_HOLES. */
export const leadHoleMm = (core: number, material: Material): number => LEAD_HOLES[material].share * core

/** The bit to take for a lead hole, mm, never below half a millimetre. */
export function leadBitMm(core: number, material: Material): number {
  const { stepMm } = LEAD_HOLES[material]
  const steps = Math.max(1, Math.round(leadHoleMm(core, material) / stepMm))
  return Number(Math.max(0.5, steps * stepMm).toFixed(1))
}

/** Wood that stays under a blind hole, mm: 3, or 2 in boards of up to 6. Common practice, no source. */
const blindMarginMm = (thicknessMm: number): number => (thicknessMm <= 6 ? 2 : 3)

/** Deepest pilot that does not come through, mm. Common practice, no source. */
export const deepestPilotMm = (thicknessMm: number): number =>
  Math.max(0, thicknessMm - blindMarginMm(thicknessMm))

/** Longest screw that does not come through: what is under the head, then the pilot less 1 mm. Common practice. */
export const longestScrewMm = (thicknessMm: number, flangeMm: number): number =>
  flangeMm + Math.max(0, deepestPilotMm(thicknessMm) - 1)

/** Depth of a blind pilot: 1 mm more than the screw goes in, and never through. Common practice, no source. */
export const pilotDepthMm = (thicknessMm: number, screwMm: number, flangeMm: number): number =>
  Math.min(deepestPilotMm(thicknessMm), Math.max(0, screwMm - flangeMm + 1))

/** Thickest screw an edge takes, mm: a quarter of the board. Common practice, no source. */
export const thickestEdgeScrewMm = (thicknessMm: number): number => thicknessMm / 4

/** Least distance of an edge screw from the corner, mm. European MDF industry guidance. */
export const EDGE_SCREW_CORNER_MM = 70
/** Largest distance between screws, mm. Common practice, no source. */
const EDGE_SCREW_SPACING_MM = 150

/** Screws in a glued edge: none where two corners are nearer than the guidance allows. */
export function edgeScrews(edgeMm: number): number {
  const free = edgeMm - 2 * EDGE_SCREW_CORNER_MM
  return free < 0 ? 0 : Math.ceil(free / EDGE_SCREW_SPACING_MM) + 1
}

/** Diameters of thread that a screw should have in the second board. Common practice, no source. */
const ENGAGEMENT_DIAMETERS = 6

/** Length of a screw through one board into the edge of the next, mm. Common practice, no source. */
export const jointScrewMm = (thicknessMm: number, diameterMm: number): number =>
  thicknessMm + ENGAGEMENT_DIAMETERS * diameterMm

/** Hole that a screw passes freely, mm: 3.2 for 3, 3.7 for 3.5, 4.2 for 4. Common practice, no source. */
export const clearanceMm = (diameterMm: number): number => diameterMm + 0.2

/** Depth of a 90 degree countersink, mm, from head and shank. Geometry. */
export const countersinkMm = (headMm: number, shankMm: number): number => (headMm - shankMm) / 2
