import { shortened as shortenedFor, textWidth, wrapped as wrappedFor } from '../chart/text-width.ts'

/** The face of the drawings runs wider than the usual ones by about this. Measured on its figures and small letters. */
const WIDER = 1.1

/** About how much room a text takes, mm. */
export const typeWidthMm = (words: string, sizeMm: number): number => textWidth(words, WIDER * sizeMm)

/** The text, or its beginning with an ellipsis, so that it fits a width. */
export const shortened = (words: string, widthMm: number, sizeMm: number): string =>
  shortenedFor(words, widthMm, WIDER * sizeMm)

/** The text in lines of a width. */
export const wrapped = (words: string, widthMm: number, sizeMm: number): string[] =>
  wrappedFor(words, widthMm, WIDER * sizeMm)
