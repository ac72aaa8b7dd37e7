import { shortened as shortenedFor, textWidth, wrapped as wrappedFor } from '../chart/text-width.ts'
import type { TextRole } from './drawing.ts'

/** How much wider the faces of the drawings run than the usual ones. Measured on words and figures of the drawings. */
const WIDER = { text: 1.1, heading: 1.22 } satisfies Record<TextRole, number>

/** About how much room a text takes, mm. */
export const typeWidthMm = (words: string, sizeMm: number): number => textWidth(words, WIDER.text * sizeMm)

/** The text, or its beginning with an ellipsis, so that it fits a width. */
export const shortened = (words: string, widthMm: number, sizeMm: number, role: TextRole = 'text'): string =>
  shortenedFor(words, widthMm, WIDER[role] * sizeMm)

/** The text in lines of a width. */
export const wrapped = (words: string, widthMm: number, sizeMm: number, role: TextRole = 'text'): string[] =>
  wrappedFor(words, widthMm, WIDER[role] * sizeMm)
