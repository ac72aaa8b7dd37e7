/** A complex number; the sums of a miswired group are few, so plain objects do. */
export interface Complex {
  re: number
  im: number
}

export const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im })
export const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im })
export const times = (a: Complex, factor: number): Complex => ({ re: a.re * factor, im: a.im * factor })

/** 1/a; `a` must not be 0. */
export function inverse({ re, im }: Complex): Complex {
  const square = re * re + im * im
  return { re: re / square, im: -im / square }
}
