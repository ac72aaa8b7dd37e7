import { Type } from 'typebox'

/** A closed list of words, as one readable `enum`. */
export const oneOf = <const T extends readonly string[]>(words: T, description: string) =>
  Type.Unsafe<T[number]>({ type: 'string', enum: [...words], description })
