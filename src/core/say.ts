/** Rounds to a number of significant digits for text; results themselves are never rounded. */
export function significant(value: number, digits: number): string {
  if (value === 0) return '0'
  const rounded = Number(value.toPrecision(digits))
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(rounded))))
  return rounded.toFixed(Math.min(decimals, 6))
}

/** Text of a quantity, three significant digits unless told, with its unit. */
export const say = (value: number, unit: string, digits = 3): string =>
  `${significant(value, digits)} ${unit}`

export const ohm = (value: number): string => say(value, 'ohm')
export const hertz = (value: number): string => say(value, 'Hz')
export const volt = (value: number): string => say(value, 'V')
export const ampere = (value: number): string => (value < 0.1 ? say(value * 1000, 'mA') : say(value, 'A'))
export const watt = (value: number): string => say(value, 'W')
export const litre = (value: number): string => say(value, 'L')
export const decibel = (value: number): string => `${value.toFixed(1)} dB`
/** Millimetres to a tenth, as a rule reads. */
export const mm = (value: number): string => `${Number(value.toFixed(1))} mm`
