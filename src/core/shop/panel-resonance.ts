import type { Material } from './screws.ts'

/**
 * Young's modulus, GPa, of boards that are about as stiff both ways. Wood Handbook, FPL-GTR-282 (2021), Table 12-1,
 * from memory: middle of its ranges. Solid wood is many times stiffer along its grain than across: null.
 */
const YOUNG_GPA = {
  mdf: 3,
  particleboard: 2.6,
  plywood: 8,
  hdf: 4,
  softwood: null,
  hardwood: null,
} satisfies Record<Material, number | null>

const POISSON = 0.3

/** First resonance of a panel, Hz, with edges that are held but may turn, and with edges held stiff. */
export interface PanelResonance {
  supportedHz: number
  clampedHz: number
}

/** The quotient of Rayleigh with the shapes of clamped beams lies this much above the table of Leissa. */
const OVER_TABLE = 1.0028

/**
 * Frequency parameter of a clamped rectangle, λ = ω a² √(ρt/D), by the ratio of its sides a/b.
 * Source: Rayleigh quotient with clamped beam functions, G. B. Warburton 1954, less what it lies above A. W. Leissa,
 * NASA SP-160 (1969) and J. Sound Vib. 31 (1973), both from memory; within 0.3 % of his table.
 */
export const clampedParameter = (ratio: number): number =>
  Math.sqrt(500.6 + 302.7 * ratio ** 2 + 500.6 * ratio ** 4) / OVER_TABLE

/** √(D/ρt), m²/s, of a plate: D = E t³/12(1 − ν²). Textbook. */
const stiffness = (youngPa: number, thicknessM: number, density: number): number =>
  Math.sqrt((youngPa * thicknessM ** 2) / (12 * (1 - POISSON ** 2) * density))

/**
 * First bending resonance of a panel; a glued one lies between the two.
 * Supported: f = (π/2) √(D/ρt) (1/a² + 1/b²); clamped: f = λ/(2π a²) √(D/ρt). Leissa 1969, from memory.
 * @param lengthMm  free length between what holds it, mm (> 0)
 * @returns null for solid wood
 */
export function panelResonance(
  lengthMm: number,
  widthMm: number,
  thicknessMm: number,
  material: Material,
  densityKgPerM3: number,
): PanelResonance | null {
  const youngGpa = YOUNG_GPA[material]
  if (youngGpa === null) return null
  const [a, b] = [lengthMm / 1000, widthMm / 1000]
  const root = stiffness(youngGpa * 1e9, thicknessMm / 1000, densityKgPerM3)
  return {
    supportedHz: (Math.PI / 2) * root * (1 / a ** 2 + 1 / b ** 2),
    clampedHz: (clampedParameter(a / b) * root) / (2 * Math.PI * a ** 2),
  }
}
