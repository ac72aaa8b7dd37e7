import type { Aside } from './heavy-work.ts'
import type { ViewOptions } from './view-options.ts'

/** The forms an answer can come in; the first that a client accepts is taken. */
export const MEDIA_TYPES = {
  json: 'application/json',
  text: 'text/plain',
  csv: 'text/csv',
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
  dxf: 'image/vnd.dxf',
  html: 'text/html',
} as const

export type Form = keyof typeof MEDIA_TYPES

/** What a drawing or a sheet is made from. */
export interface Shown<Answer, Body> {
  answer: Answer
  /** The request as it was read. */
  body: Body
  options: ViewOptions
  aside: Aside
  /** Scheme and host by which the service was called, for a link back to it. */
  origin: string
}

/** null: this answer has nothing to draw. */
type Made = string | Uint8Array | null
export type View<Answer, Body> = (shown: Shown<Answer, Body>) => Made | Promise<Made>

/** The views a calculation has besides its JSON, its sentence and its tables. */
export interface Views<Answer, Body> {
  /** Pictures by name; the first is drawn when none is named. */
  svg?: Readonly<Record<string, View<Answer, Body>>>
  pdf?: View<Answer, Body>
  dxf?: View<Answer, Body>
  html?: View<Answer, Body>
}

/** The forms a calculation offers, in order of preference. */
export function formsOf(views: Views<never, never>): Form[] {
  const drawn = (['svg', 'pdf', 'dxf', 'html'] as const).filter((form) => views[form] !== undefined)
  return ['json', 'text', 'csv', ...drawn]
}
