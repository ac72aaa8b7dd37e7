/** A number as it is read out loud or typed: so many significant digits, without zeros behind. */
export const digits = (value: number, count: number): number => Number(value.toPrecision(count))
