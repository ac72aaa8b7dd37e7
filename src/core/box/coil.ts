/** Impedance of a voice coil without its motion, beside Re, ohm, one a frequency. */
export interface CoilImpedance {
  re: Float64Array
  im: Float64Array
}

const DATA_SHEET_OMEGA = 2 * Math.PI * 1000

/**
 * A voice coil as K(jω)^n: n = 1 is a plain inductance, n = 1/2 the eddy-current limit.
 * @param leH       equivalent inductance at 1 kHz, H (≥ 0); at every frequency when n = 1
 * @param exponent  n, 0.3 to 1
 * Source: W. M. Leach, J. Audio Eng. Soc. 50(6), 442 (2002); n = 1/2: J. Vanderkooy, J. Audio Eng. Soc. 37, 119 (1989).
 */
export function coilImpedance(leH: number, exponent: number, frequencyHz: Float64Array): CoilImpedance {
  const quarter = (exponent * Math.PI) / 2
  // leH states the reactance at 1 kHz: K ω^n sin(nπ/2) = ω Le there.
  const k = (leH * DATA_SHEET_OMEGA ** (1 - exponent)) / Math.sin(quarter)
  const [resistive, reactive] = [k * Math.cos(quarter), k * Math.sin(quarter)]
  const re = new Float64Array(frequencyHz.length)
  const im = new Float64Array(frequencyHz.length)
  if (exponent === 1) {
    for (let i = 0; i < frequencyHz.length; i++) im[i] = 2 * Math.PI * frequencyHz[i]! * leH
    return { re, im }
  }
  for (let i = 0; i < frequencyHz.length; i++) {
    const power = (2 * Math.PI * frequencyHz[i]!) ** exponent
    re[i] = resistive * power
    im[i] = reactive * power
  }
  return { re, im }
}
