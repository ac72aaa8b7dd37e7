/** Least charge the port standard counts as inrush, C, and the current above which it counts, A. USB 2.0, seen. */
export const ATTACH_CHARGE_C = 50e-6
export const ATTACH_CURRENT_A = 0.1
/** Largest capacitor that may hang across a port at attach, uF. USB 2.0 7.2.4.1, seen as quoted. */
export const ATTACH_LARGEST_UF = 10
/** Capacitor a port must have of its own, uF. USB 2.0, from memory. */
const PORT_OWN_UF = 120
/** Voltages that electrolytic capacitors are marked with, V. Common practice, no source. */
const RATINGS_V = [6.3, 10, 16, 25, 35, 50, 63, 80, 100, 160, 200, 250]
/** A source may be this much above its voltage: 5.25 V on 5 V. USB 2.0, seen in summaries. */
const SOURCE_TOLERANCE = 1.05
/** Marked over working voltage, at least. Common practice, no source. */
const RATING_MARGIN = 1.25

/** Fall of a capacitor that feeds a current by itself, V: I t/C. At or above the supply it is empty before. */
export const droopV = (reservoirUf: number, currentA: number, timeMs: number): number =>
  (currentA * timeMs * 1e-3) / (reservoirUf * 1e-6)

/** Time a capacitor carries a constant power from one voltage down to another, ms: C(V1² − V2²)/2P. */
export const holdUpMs = (reservoirUf: number, fromV: number, toV: number, powerW: number): number =>
  (1e3 * (reservoirUf * 1e-6 * (fromV ** 2 - toV ** 2))) / (2 * powerW)

/**
 * How source and capacitor share the ripple current of a tone, which runs at twice its frequency.
 * Source: first-order filter, fc = 1/(2π R C); derived.
 */
export function rippleSharing(sourceOhm: number, reservoirUf: number, toneHz: number) {
  const cornerHz = 1 / (2 * Math.PI * sourceOhm * reservoirUf * 1e-6)
  return {
    cornerHz,
    toneCornerHz: cornerHz / 2,
    sourceShareOfRipple: 1 / Math.hypot(1, (2 * toneHz) / cornerHz),
  }
}

/** What an empty capacitor takes at the moment it is plugged in. */
export interface Inrush {
  peakCurrentA: number
  chargeMc: number
  chargeAbove100mAMc: number
  timeAbove100mAMs: number
  energyMj: number
  timeConstantMs: number
  timesOverAttachCharge: number
  withinAttachLimit: boolean
}

/**
 * Charging an empty capacitor through a resistance.
 * Source: derived; only the charge that flows above 100 mA counts in the compliance test, and 50 uC passes (USB 2.0,
 * wording seen as quoted). The same energy again is lost in the resistance whatever its value.
 * @param resistanceOhm  everything between source and capacitor, ohm (> 0)
 */
export function inrush(reservoirUf: number, resistanceOhm: number, voltageV: number): Inrush {
  const capacitance = reservoirUf * 1e-6
  const timeConstant = resistanceOhm * capacitance
  const peakCurrentA = voltageV / resistanceOhm
  const counts = peakCurrentA > ATTACH_CURRENT_A
  const above = counts ? capacitance * (voltageV - ATTACH_CURRENT_A * resistanceOhm) : 0
  const timesOverAttachCharge = above / ATTACH_CHARGE_C
  return {
    peakCurrentA,
    chargeMc: capacitance * voltageV * 1e3,
    chargeAbove100mAMc: above * 1e3,
    timeAbove100mAMs: counts ? 1e3 * timeConstant * Math.log(peakCurrentA / ATTACH_CURRENT_A) : 0,
    energyMj: 0.5 * capacitance * voltageV ** 2 * 1e3,
    timeConstantMs: timeConstant * 1e3,
    timesOverAttachCharge,
    withinAttachLimit: timesOverAttachCharge <= 1,
  }
}

/** Time a soft start at a constant current takes, ms: C V/I. */
export const softStartMs = (reservoirUf: number, voltageV: number, currentA = ATTACH_CURRENT_A): number =>
  (1e3 * reservoirUf * 1e-6 * voltageV) / currentA

/** Dip of a port whose own capacitor shares its charge with an empty one, V. Conservation of charge. */
export const portDipV = (attachedUf: number, voltageV: number, portUf = PORT_OWN_UF): number =>
  (voltageV * attachedUf) / (portUf + attachedUf)

/** Voltage marked on a capacitor for a supply, V: the next usual one from 1.25 times the highest. Common practice. */
export function leastRatingV(highestSupplyV: number, ratingsV: readonly number[] = RATINGS_V): number {
  const needed = RATING_MARGIN * highestSupplyV
  return ratingsV.find((rating) => rating >= needed) ?? needed
}

/** All that may stand on a capacitor at a source, V: its full pack, or its voltage with the tolerance of a supply. */
const highestOnV = (source: { voltageV: number; highestVoltageV: number }): number =>
  Math.max(source.highestVoltageV, SOURCE_TOLERANCE * source.voltageV)

/** Least that a capacitor at a source must be marked with, V, whatever values are sold. Common practice, no source. */
export const neededRatingV = (source: { voltageV: number; highestVoltageV: number }): number =>
  RATING_MARGIN * highestOnV(source)

/** The usual value from there on, V. */
export const leastRatingOnV = (source: { voltageV: number; highestVoltageV: number }): number =>
  leastRatingV(highestOnV(source))
