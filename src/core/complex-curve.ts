import { numbers } from './numbers.ts'

/** A complex value at every frequency: real and imaginary parts, equally long. */
export interface ComplexCurve {
  re: Float64Array
  im: Float64Array
}

/** Moduli, in the unit of the curve. */
export const moduli = ({ re, im }: ComplexCurve): number[] =>
  numbers(re.length, (i) => Math.sqrt(re[i]! * re[i]! + im[i]! * im[i]!))

/** Phases, degrees within ±180. */
export const phasesDeg = ({ re, im }: ComplexCurve): number[] =>
  numbers(re.length, (i) => (Math.atan2(im[i]!, re[i]!) * 180) / Math.PI)

/** One point of a curve, as a curve of its own that shares its numbers. */
export const pointOf = ({ re, im }: ComplexCurve, index: number): ComplexCurve => ({
  re: re.subarray(index, index + 1),
  im: im.subarray(index, index + 1),
})
