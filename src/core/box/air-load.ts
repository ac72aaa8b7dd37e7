import { baffledFaceMassKg, unbaffledMassKg } from './radiation.ts'

/** One cone and the box behind it, SI; with several drivers on the wall each has its share of the wall. */
export interface MountedCone {
  sdM2: number
  /** Inner depth behind the cone. */
  depthM: number
  /** Area of the wall that carries the driver, seen from inside; at least `sdM2`. */
  wallM2: number
}

/**
 * Mass of air, kg, that moves with the rear of a cone in a box: in a wide wall the 8ρa³/3 of a baffle, in a tube
 * as wide as the cone a third of the air in it. Density in kg/m³. For boxes small against the wavelength.
 * Source: Sd² B ρ/(πa), B = (d/3)(Sd/Sb)² √(π/Sd) + (8/(3π))(1 − Sd/Sb); W. M. Leach's form, seen in an open textbook.
 */
export function boxedRearMassKg(cone: MountedCone, densityKgPerM3: number): number {
  const { sdM2, depthM, wallM2 } = cone
  const radiusM = Math.sqrt(sdM2 / Math.PI)
  const filled = sdM2 / wallM2
  const b = (depthM / (3 * radiusM)) * filled ** 2 + (8 / (3 * Math.PI)) * (1 - filled)
  return (sdM2 ** 2 * b * densityKgPerM3) / (Math.PI * radiusM)
}

/**
 * Mass, kg, to add to an Mms measured in free air once the driver sits in its box: front in a baffle and rear in
 * the box, less the unbaffled load of both faces that Mms already holds. Positive; density in kg/m³.
 * Source: L. L. Beranek, Acoustics (1954), ch. 5, from memory, and `boxedRearMassKg`.
 */
export function extraMassKg(cone: MountedCone, densityKgPerM3: number): number {
  const radiusM = Math.sqrt(cone.sdM2 / Math.PI)
  const mounted = baffledFaceMassKg(radiusM, densityKgPerM3) + boxedRearMassKg(cone, densityKgPerM3)
  return mounted - unbaffledMassKg(radiusM, densityKgPerM3)
}
