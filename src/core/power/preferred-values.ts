/** Preferred numbers of a decade, 10 to 100. IEC 60063, from memory; E24 is a table because eight values are not 10^(n/24). */
export const E12 = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82] as const
export const E24 = [
  10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
] as const
/** Fuse values, in tenths: the R10 row of IEC 60127, from memory. */
export const R10 = [10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80] as const

/** What every series begins with. */
const FIRST = [10]

/** Values of the series around a number, rising: those of its own decade and the first of the next one. */
function around(exact: number, series: readonly number[]): number[] {
  const power = Math.floor(Math.log10(exact)) - 1
  return [...decade(series, power), ...decade(FIRST, power + 1)]
}

/** The values times 10^power; divided where powers of ten below one would leave dust. */
function decade(values: readonly number[], power: number): number[] {
  const scale = 10 ** Math.abs(power)
  return values.map((value) => (power < 0 ? value / scale : value * scale))
}

/** Dust of floating point that must not push a value to the next one. */
const DUST = 1e-9

/** Least preferred value not below the exact one (> 0). */
export const nextNotBelow = (exact: number, series: readonly number[]): number =>
  around(exact, series).find((value) => value >= exact * (1 - DUST)) ?? exact

/** Largest preferred value not above the exact one (> 0). */
export const nextNotAbove = (exact: number, series: readonly number[]): number =>
  around(exact, series).findLast((value) => value <= exact * (1 + DUST)) ?? exact

/** Preferred value nearest by difference (> 0). */
export const nearestPreferred = (exact: number, series: readonly number[]): number =>
  around(exact, series).reduce((best, value) =>
    Math.abs(value - exact) < Math.abs(best - exact) ? value : best,
  )
