/** A coil and a capacitor of one branch. */
export interface CrossoverParts {
  capacitorUf: number
  inductorMh: number
}

/** First order: C = 1/(2π f R), L = R/(2π f). Textbook. */
export const firstOrder = (cornerHz: number, loadOhm: number): CrossoverParts => ({
  capacitorUf: 1e6 / (2 * Math.PI * cornerHz * loadOhm),
  inductorMh: (1e3 * loadOhm) / (2 * Math.PI * cornerHz),
})

/** Q of a second-order filter: Linkwitz-Riley sums flat with one driver reversed; Butterworth. Linkwitz 1976, from memory. */
const SECOND_ORDER_Q = { 'Linkwitz-Riley': 0.5, Butterworth: Math.SQRT1_2 } as const

/**
 * Second order: C = Q/(2π f R) and L = R/(2π f Q), for the low and the high pass alike.
 * Source: textbook; S. Linkwitz, J. Audio Eng. Soc. 24 (1976), from memory.
 */
export function secondOrder(
  cornerHz: number,
  loadOhm: number,
  kind: keyof typeof SECOND_ORDER_Q,
): CrossoverParts {
  const q = SECOND_ORDER_Q[kind]
  const first = firstOrder(cornerHz, loadOhm)
  return { capacitorUf: first.capacitorUf * q, inductorMh: first.inductorMh / q }
}

/** Zobel across a driver: R = Re, C = Le/Re²; the pair is then a pure resistance at all frequencies. Textbook. */
export const zobel = (reOhm: number, leMh: number): { resistorOhm: number; capacitorUf: number } => ({
  resistorOhm: reOhm,
  capacitorUf: (leMh * 1e-3 * 1e6) / reOhm ** 2,
})

/** A pad that keeps the impedance: series part first, then the part across the driver. */
export interface Pad {
  seriesOhm: number
  shuntOhm: number
}

/**
 * Pad of constant impedance: Rs = R(1 − k), Rp = R k/(1 − k), k = 10^(−dB/20). Textbook.
 * @param attenuationDb  how much quieter, dB (> 0)
 */
export function pad(attenuationDb: number, loadOhm: number): Pad {
  const k = 10 ** (-attenuationDb / 20)
  return { seriesOhm: loadOhm * (1 - k), shuntOhm: (loadOhm * k) / (1 - k) }
}

/** Heat in the two parts of a pad: Rs takes P(1 − k), Rp takes P k(1 − k). Derived from Ohm's law. */
export function padHeatW(attenuationDb: number, powerW: number): { seriesW: number; shuntW: number } {
  const k = 10 ** (-attenuationDb / 20)
  return { seriesW: powerW * (1 - k), shuntW: powerW * k * (1 - k) }
}
