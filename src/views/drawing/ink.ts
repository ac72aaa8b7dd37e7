import type { LineRole } from './drawing.ts'

/** How a role looks on paper. Black, white and grey alone, so that a copier keeps everything. */
export interface Ink {
  /** Width of the line; null for none. */
  strokeMm: number | null
  /** Length of dash and gap; null for a whole line. */
  dashMm: readonly [number, number] | null
  stroke: string
  fill: string | null
}

export const BLACK = '#000000'
const WHITE = '#ffffff'
const GREY = '#6b6b6b'

const solid = (strokeMm: number, fill: string | null = null): Ink => ({
  strokeMm,
  dashMm: null,
  stroke: BLACK,
  fill,
})
const dashed = (strokeMm: number, dashMm: readonly [number, number], stroke: string): Ink => ({
  strokeMm,
  dashMm,
  stroke,
  fill: null,
})
const filled = (fill: string): Ink => ({ strokeMm: null, dashMm: null, stroke: BLACK, fill })

/** Wide for what is sawn, narrow for what only explains: about the two to one of ISO 128 (from memory). */
export const INKS: Readonly<Record<LineRole, Ink>> = {
  outline: solid(0.5),
  hole: solid(0.35),
  centre: dashed(0.15, [4, 0.8], BLACK),
  dimension: solid(0.18),
  hatch: { ...solid(0.12), stroke: GREY },
  face: solid(0.35, WHITE),
  kerf: filled(BLACK),
  band: solid(1.2),
  paper: filled(WHITE),
  shade: solid(0.18, '#b0b0b0'),
  guide: dashed(0.2, [1.5, 1.5], GREY),
  mark: solid(0.2),
}
