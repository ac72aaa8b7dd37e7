import { type TNumberOptions, type TUnsafe, Type } from 'typebox'

/** Units a dimensional field can carry; the suffix of the field's name says the same. */
export type Unit =
  | 'mm'
  | 'm'
  | 'cm2'
  | 'mm2'
  | 'L'
  | 'Hz'
  | 'ohm'
  | 'kohm'
  | 'mH'
  | 'uF'
  | 'g'
  | 'kg'
  | 'W'
  | 'V'
  | 'A'
  | 'mA'
  | 'mAh'
  | 'dB'
  | 'degC'
  | 'kPa'
  | 'percent'
  | 's'
  | 'ms'
  | 'h'
  | 'mC'
  | 'mW'
  | 'm/s'
  | 'kg/m3'
  | 'kg/s'
  | 'mm/N'
  | 'T.m'
  | 'deg'
  | 'AWG'

/** A number in the unit that its name ends in; on the way in, text with a unit of its own is read too. */
export const quantity = (unit: Unit, description: string, options: TNumberOptions = {}) =>
  Type.Number({ description, 'x-unit': unit, ...options })

/** A loss: a number, or `null` for none. Left out, a usual value is assumed and said. */
export const lossQ = (description: string): TUnsafe<number | null> =>
  Type.Unsafe<number | null>({
    type: ['number', 'null'],
    minimum: 0.1,
    maximum: 1e6,
    description: `${description}; null for none (null and absent differ here on purpose); left out, a usual value is assumed and said in assumptions`,
    examples: [10],
  })

/** An output number without bounds. */
export const outputOf = (unit: Unit | '', description: string) =>
  Type.Number(unit === '' ? { description } : { description, 'x-unit': unit })

/** An output number that may not exist, `null` then, with the reason in its description. */
export const maybeOf = (unit: Unit | '', description: string): TUnsafe<number | null> =>
  Type.Unsafe<number | null>({
    type: ['number', 'null'],
    description,
    ...(unit === '' ? {} : { 'x-unit': unit }),
  })

/** An output that is true, false or, for the reason in its description, neither. */
export const maybeTrue = (description: string): TUnsafe<boolean | null> =>
  Type.Unsafe<boolean | null>({ type: ['boolean', 'null'], description })

/** A curve: numbers of one unit, one a frequency. */
export const curveOf = (unit: Unit, description: string) =>
  Type.Array(Type.Number(), { description, 'x-unit-items': unit })
