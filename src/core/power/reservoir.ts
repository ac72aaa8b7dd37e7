/** Least charge the port standard counts as inrush, C, and the current above which it counts, A. USB 2.0, seen. */
export const ATTACH_CHARGE_C = 50e-6
export const ATTACH_CURRENT_A = 0.1
/** Least and largest capacitor that may hang across a port at attach, uF. USB 2.0 7.2.4.1, seen as quoted. */
export const ATTACH_LEAST_UF = 1
export const ATTACH_LARGEST_UF = 10
/** Capacitor a port must have of its own, uF. USB 2.0, from memory. */
const PORT_OWN_UF = 120
/** Voltages that electrolytic capacitors are marked with, V. Common practice, no source. */
const RATINGS_V = [6.3, 10, 16, 25, 35, 50, 63, 80, 100, 160, 200, 250]
/** A source may be this much above its voltage: 5.25 V on 5 V. USB 2.0, seen in summaries. */
const SOURCE_TOLERANCE = 1.05
/** Marked over working voltage, at least. Common practice, no source. */
export const RATING_MARGIN = 1.25

/** Fall of a capacitor that feeds a current by itself, V: I t/C. At or above the supply it is empty before. */
export const droopV = (reservoirUf: number, currentA: number, timeMs: number): number =>
  (currentA * timeMs * 1e-3) / (reservoirUf * 1e-6)

/** Time a capacitor carries a constant power from one voltage down to another, ms: C(V1² − V2²)/2P. */
export const holdUpMs = (reservoirUf: number, fromV: number, toV: number, powerW: number): number =>
  (1e3 * (reservoirUf * 1e-6 * (fromV ** 2 - toV ** 2))) / (2 * powerW)

/**
 * Voltage at the board a while after a step of current, V: the step falls over the source resistance in parallel
 * with the capacitor's own, then the capacitor empties into the source resistance.
 * Source: first-order circuit, derived.
 */
export function afterStepV(
  supplyV: number,
  sourceOhm: number,
  reservoirUf: number,
  esrOhm: number,
  stepA: number,
  timeMs: number,
): number {
  const timeConstant = (sourceOhm + esrOhm) * reservoirUf * 1e-6
  const left = Math.exp((-timeMs * 1e-3) / timeConstant)
  const capacitorShare = sourceOhm / (sourceOhm + esrOhm)
  return supplyV - stepA * sourceOhm * (1 - capacitorShare * left)
}

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

/** Capacitor that halves the ripple power of a tone at the source, uF. First-order filter; derived. */
export const halvingReservoirUf = (sourceOhm: number, toneHz: number): number =>
  1e6 / (2 * Math.PI * sourceOhm * 2 * toneHz)

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

/** Least marked voltage of a reservoir capacitor, V: the next usual one from 1.25 times the highest supply. */
export function leastRatingV(highestSupplyV: number, ratingsV: readonly number[] = RATINGS_V): number {
  const needed = RATING_MARGIN * highestSupplyV
  return ratingsV.find((rating) => rating >= needed) ?? needed
}

/** The same for a capacitor that may stand on all of a source, its tolerance or its full pack included, V. */
export const leastRatingOnV = (source: { voltageV: number; highestVoltageV: number }): number =>
  leastRatingV(Math.max(source.highestVoltageV, SOURCE_TOLERANCE * source.voltageV))
