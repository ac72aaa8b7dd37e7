import type { Cable } from '../../schema/cable.ts'

/** Resistivity of annealed copper at 20 °C, ohm mm²/km, and its change per kelvin. IEC 60028, from memory. */
const COPPER_OHM_MM2_PER_KM = 17.241
const COPPER_PER_KELVIN = 0.00393
/** Copper-clad aluminium over copper. ASTM B566, from memory. */
const COPPER_CLAD_FACTOR = 1.63

/** Contacts of a plug at both ends, and one contact through its life, ohm. Resistance study citing makers, seen. */
export const USUAL_CONTACTS = 4
export const USUAL_CONTACT_OHM = 0.03

/**
 * Highest resistance of a fine-stranded conductor, ohm/km at 20 °C, by its cross-section in mm².
 * IEC 60228 class 5, seen.
 */
export const CLASS_5_OHM_PER_KM: ReadonlyMap<number, number> = new Map([
  [0.5, 39],
  [0.75, 26],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
])

/** Diameter of a wire gauge, mm. ASTM B258, from memory. */
export const gaugeDiameterMm = (gaugeAwg: number): number => 0.127 * 92 ** ((36 - gaugeAwg) / 39)

/** Cross-section of a solid wire of that gauge, mm². */
export const gaugeAreaMm2 = (gaugeAwg: number): number => (Math.PI / 4) * gaugeDiameterMm(gaugeAwg) ** 2

/** Resistance of a copper conductor, ohm/km. Stranded of the same gauge is up to 5 % higher. */
export const copperOhmPerKm = (areaMm2: number, temperatureC = 20): number =>
  (COPPER_OHM_MM2_PER_KM / areaMm2) * (1 + COPPER_PER_KELVIN * (temperatureC - 20))

/**
 * Resistance of a two-wire lead out and back with its contacts, ohm.
 * A printed cross-section is read by IEC 60228 where that has it; with neither gauge nor cross-section, 24 AWG.
 */
export function loopResistanceOhm(cable: Cable, temperatureC = 20): number {
  const perKm = cableOhmPerKm(cable, temperatureC)
  return 2 * cable.lengthM * perKm * 1e-3 + contactsOhm(cable)
}

/** All contacts of the loop together, ohm. */
export const contactsOhm = ({
  contacts = USUAL_CONTACTS,
  contactResistanceOhm = USUAL_CONTACT_OHM,
}: Cable): number => contacts * contactResistanceOhm

/** Gauge taken when neither gauge nor cross-section is given: usual for the supply wires of better leads. */
export const USUAL_GAUGE_AWG = 24

/** Resistance of one conductor of a lead, ohm/km; sources as above. */
export function cableOhmPerKm({ gaugeAwg, areaMm2, copperClad = false }: Cable, temperatureC = 20): number {
  const warm = 1 + COPPER_PER_KELVIN * (temperatureC - 20)
  const listed = areaMm2 === undefined ? undefined : CLASS_5_OHM_PER_KM.get(areaMm2)
  const copper =
    listed === undefined
      ? copperOhmPerKm(areaMm2 ?? gaugeAreaMm2(gaugeAwg ?? USUAL_GAUGE_AWG), temperatureC)
      : listed * warm
  return copperClad ? copper * COPPER_CLAD_FACTOR : copper
}

/**
 * Least cross-section of a copper lead that keeps the loss of voltage to a share, mm².
 * @param contactOhm  resistance of all contacts in the loop, ohm
 * @returns null when the contacts alone lose more
 * Source: Ohm's law with the resistivity above.
 */
export function leastAreaMm2(
  lengthM: number,
  contactOhm: number,
  supplyV: number,
  currentA: number,
  lossShare: number,
): number | null {
  const wireOhm = (lossShare * supplyV) / currentA - contactOhm
  return wireOhm < NEGLIGIBLE_OHM ? null : (2 * lengthM * COPPER_OHM_MM2_PER_KM * 1e-3) / wireOhm
}

/** Gauges that leads are sold in, thinnest first: the even numbers. Common practice, no source. */
const SOLD_GAUGES_AWG = [30, 28, 26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 0]

/** Thinnest usual gauge with at least this cross-section, mm²; null when none is that thick. ASTM B258, from memory. */
export const gaugeOfAreaAwg = (areaMm2: number): number | null =>
  SOLD_GAUGES_AWG.find((gaugeAwg) => gaugeAreaMm2(gaugeAwg) >= areaMm2) ?? null

/** Below this a resistance is none: no lead and no contact comes near it. */
export const NEGLIGIBLE_OHM = 1e-6

/** Most power a source can push through a resistance, W: Vs²/4R. Derived. Without resistance there is no limit. */
export const largestDeliverableW = (supplyV: number, resistanceOhm: number): number | null =>
  resistanceOhm < NEGLIGIBLE_OHM ? null : supplyV ** 2 / (4 * resistanceOhm)

/**
 * Voltage left at a board that draws constant power through a resistance, V.
 * @returns null when the resistance cannot deliver it: the board browns out
 * Source: derived, V = (Vs + √(Vs² − 4RP))/2.
 */
export function boardVoltageV(supplyV: number, resistanceOhm: number, powerW: number): number | null {
  const root = supplyV ** 2 - 4 * resistanceOhm * powerW
  return root < 0 ? null : (supplyV + Math.sqrt(root)) / 2
}

/**
 * What a resistance before the drivers costs, a lead or a coil: level, and growth of the electrical Q.
 * Source: voltage divider; Qes grows as (Re + Rw)/Re, R. H. Small 1972, from memory.
 * @param loopOhm  out and back, ohm (≥ 0)
 * @param loadOhm  impedance behind it, ohm (> 0)
 * @param reOhm    direct-current resistance behind it, ohm (> 0)
 */
export const speakerLead = (
  loopOhm: number,
  loadOhm: number,
  reOhm: number,
): { lossDb: number; qesFactor: number } => ({
  lossDb: 20 * Math.log10(loadOhm / (loadOhm + loopOhm)),
  qesFactor: (reOhm + loopOhm) / reOhm,
})
