import type { Hole, Panel } from '../../schema/panel.ts'
import type { Material } from './screws.ts'

/**
 * Density of boards, kg/m3. Plywood, MDF, particleboard and HDF: middle of the range of Wood Handbook, FPL-GTR-282,
 * Table 12-1, from memory. Solid wood: common practice, no source.
 */
const DENSITY_KG_PER_M3 = {
  plywood: 650,
  mdf: 740,
  particleboard: 680,
  hdf: 850,
  softwood: 450,
  hardwood: 700,
} satisfies Record<Material, number>

export const densityKgPerM3 = (material: Material): number => DENSITY_KG_PER_M3[material]

/** Mass of a board, kg, from its area in m2, thickness in mm and density in kg/m3. Geometry. */
export const boardMassKg = (areaM2: number, thicknessMm: number, density: number): number =>
  areaM2 * (thicknessMm / 1000) * density

/** Wood that a hole takes off, mm3: its area times its depth, and what its pocket is wider. Geometry. */
function holeMm3({ diameterMm, slotWidthMm, slotHeightMm, depthMm, recess }: Hole): number {
  const round = (mm: number) => (Math.PI / 4) * mm ** 2
  const area = diameterMm === null ? (slotWidthMm ?? 0) * (slotHeightMm ?? 0) : round(diameterMm)
  const pocket = recess === undefined ? 0 : Math.max(0, round(recess.diameterMm) - area) * recess.depthMm
  return area * depthMm + pocket
}

/**
 * Mass of a finished panel, kg: a block of its length, width and thickness, bands counted as board, less its holes and
 * what its joints take off. Holes that run into each other count each for itself, so such a panel weighs a little more;
 * never below 0. Geometry.
 * @param density     kg/m3
 * @param jointsMm3   wood that mitres and rebates take off
 */
export function finishedMassKg(
  { lengthMm, widthMm, holes }: Pick<Panel, 'lengthMm' | 'widthMm' | 'holes'>,
  thicknessMm: number,
  density: number,
  jointsMm3 = 0,
): number {
  const holesMm3 = holes.reduce((sum, hole) => sum + holeMm3(hole), 0)
  return Math.max(0, lengthMm * widthMm * thicknessMm - holesMm3 - jointsMm3) * 1e-9 * density
}

/** Spread of white wood glue, g/m2, least and most. Common practice, no source. */
const GLUE_SPREAD_G_PER_M2 = [150, 200] as const

/** White glue for joints of a length and width in mm: least and most, grams. */
export function glueG(lengthMm: number, widthMm: number): [number, number] {
  const areaM2 = lengthMm * widthMm * 1e-6
  return [areaM2 * GLUE_SPREAD_G_PER_M2[0], areaM2 * GLUE_SPREAD_G_PER_M2[1]]
}
