import type { Anchor, Circle, LineRole, Point, Polygon, Rectangle, Segments, Text } from './drawing.ts'

export const at = (xMm: number, yMm: number): Point => ({ xMm, yMm })

export const line = (role: LineRole, from: Point, to: Point): Segments => ({
  kind: 'segments',
  role,
  segments: [[from, to]],
})

export const circle = (role: LineRole, centre: Point, radiusMm: number): Circle => ({
  kind: 'circle',
  role,
  at: centre,
  radiusMm,
})

export const polygon = (role: LineRole, points: readonly Point[]): Polygon => ({
  kind: 'polygon',
  role,
  points,
})

export const rectangle = (role: LineRole, { xMm, yMm, lengthMm, widthMm }: Rectangle): Polygon =>
  polygon(role, [
    at(xMm, yMm),
    at(xMm + lengthMm, yMm),
    at(xMm + lengthMm, yMm + widthMm),
    at(xMm, yMm + widthMm),
  ])

/** An upright cross, its arms as long as told to each side: the level ones, and the upright ones where they differ. */
export const cross = (role: LineRole, { xMm, yMm }: Point, armMm: number, uprightMm = armMm): Segments => ({
  kind: 'segments',
  role,
  segments: [
    [at(xMm - armMm, yMm), at(xMm + armMm, yMm)],
    [at(xMm, yMm - uprightMm), at(xMm, yMm + uprightMm)],
  ],
})

interface Type {
  sizeMm?: number
  anchor?: Anchor
  angleDeg?: Text['angleDeg']
  role?: Text['role']
}

/** Size of the type of notes and dimensions: the least that reads well at arm's length. */
export const TYPE_MM = 2.8

/** Text on its base line; in one line, whatever breaks a name was given with. */
export const text = (
  place: Point,
  words: string,
  { sizeMm = TYPE_MM, anchor = 'start', angleDeg = 0, role = 'text' }: Type = {},
): Text => ({ kind: 'text', role, at: place, text: words.replace(/\s+/g, ' '), sizeMm, anchor, angleDeg })

/** Half the height of capitals and figures over the size of the type, so that text stands around a middle. */
const HALF_CAPITAL = 0.36

/** Text whose capitals stand around a point. */
export function textAround(middle: Point, words: string, type: Type = {}): Text {
  const down = HALF_CAPITAL * (type.sizeMm ?? TYPE_MM)
  const place = type.angleDeg === 90 ? at(middle.xMm + down, middle.yMm) : at(middle.xMm, middle.yMm - down)
  return text(place, words, { anchor: 'middle', ...type })
}
