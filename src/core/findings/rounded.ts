/** Floating point must not push a round figure to the next one. */
const DUST = 1e-9

/** The place of the third digit of a positive number. */
const thirdPlace = (value: number): number => 10 ** (Math.floor(Math.log10(value)) - 2)

const clean = (value: number): number => Number(value.toPrecision(12))

/** The next figure of three digits not below (> 0), so that text and patch of a remedy say the same. */
export const upToThree = (value: number): number =>
  clean(Math.ceil(value / thirdPlace(value) - DUST) * thirdPlace(value))

/** The next figure of three digits not above (> 0). */
export const downToThree = (value: number): number =>
  clean(Math.floor(value / thirdPlace(value) + DUST) * thirdPlace(value))

/** Tenths of a millimetre, as a rule reads, not below and not above. */
export const upToTenth = (value: number): number => clean(Math.ceil(10 * value - DUST) / 10)
export const downToTenth = (value: number): number => clean(Math.floor(10 * value + DUST) / 10)
