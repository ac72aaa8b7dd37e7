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

/** Spread of white wood glue, g/m2, least and most. Common practice, no source. */
const GLUE_SPREAD_G_PER_M2 = [150, 200] as const

/** White glue for joints of a length and width in mm: least and most, grams. */
export function glueG(lengthMm: number, widthMm: number): [number, number] {
  const areaM2 = lengthMm * widthMm * 1e-6
  return [areaM2 * GLUE_SPREAD_G_PER_M2[0], areaM2 * GLUE_SPREAD_G_PER_M2[1]]
}
