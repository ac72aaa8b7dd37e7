import type { Axis, AxisOn, CurveValue } from './axis.ts'
import { curvePath, curvePieces, type Point } from './curve-path.ts'
import { type Box, inside } from './free-place.ts'
import { labelsOf } from './panel-labels.ts'
import { place, textAt } from './picture.ts'
import type { Look } from './style.ts'

/** A curve over the frequencies of its plot. */
export interface Curve {
  values: readonly CurveValue[]
  /** What stands beside it; none for a curve that the axis names already. */
  text?: string
  look: Look
}

/** A value that is held against the curves, a line across. */
export interface Level {
  value: number
  text: string
}

/** A point that is named. */
export interface Spot {
  hz: number
  value: number
  text: string
}

/** A field of curves with an axis of its own; all panels of a plot share the frequencies. */
export interface Panel {
  axisTitle: string
  axis: AxisOn
  height: number
  curves: readonly Curve[]
  levels?: readonly Level[]
  spots?: readonly Spot[]
}

/** Where a panel lies, and what it shares with the others. */
export interface PanelPlace {
  clipId: string
  frame: Box
  x: Axis
  frequencyHz: readonly number[]
  /** Places of the marks, whose lines run through every panel. */
  markX: readonly number[]
}

const TICK_TEXT_GAP = 7
const AXIS_TITLE_X = 18
const DOT_RADIUS = 3.5

/** Draws the grid, the levels, the curves and their labels. */
export function drawnPanel(panel: Panel, at: PanelPlace): string {
  const { frame, x } = at
  const y = panel.axis([frame.bottom, frame.top])
  const curves = panel.curves.map((curve) => ({
    ...curve,
    pieces: curvePieces(x, y, at.frequencyHz, curve.values),
  }))
  const levels = (panel.levels ?? [])
    .map((level) => ({ ...level, y: y.at(level.value) }))
    .filter((level) => level.y >= frame.top && level.y <= frame.bottom)
  const spots = (panel.spots ?? [])
    .map((spot) => ({ text: spot.text, x: x.at(spot.hz), y: y.at(spot.value) }))
    .filter((spot) => inside({ left: spot.x, right: spot.x, top: spot.y, bottom: spot.y }, frame))
  return [
    grid(x, y, frame),
    textAt(AXIS_TITLE_X, (frame.top + frame.bottom) / 2, panel.axisTitle, {
      kind: 'quiet',
      anchor: 'middle',
      turned: true,
    }),
    ...y.ticks.map(({ value, text }) =>
      textAt(frame.left - TICK_TEXT_GAP, y.at(value) + 4, text, { kind: 'tick', anchor: 'end' }),
    ),
    ...levels.map((level) => ruled('limit', [frame.left, level.y], [frame.right, level.y])),
    `<clipPath id="${at.clipId}">${rectangle(frame, '')}</clipPath>`,
    ...curves.map(
      ({ pieces, look }) =>
        `<g clip-path="url(#${at.clipId})"><path class="curve ${look}" d="${curvePath(pieces)}"/>${lonePoints(pieces, look)}</g>`,
    ),
    ...spots.map(
      (spot) => `<circle class="spot" cx="${place(spot.x)}" cy="${place(spot.y)}" r="${DOT_RADIUS}"/>`,
    ),
    ...labelsOf({ curves, levels, spots, markX: at.markX, frame }),
  ].join('\n')
}

function grid(x: Axis, y: Axis, { left, right, top, bottom }: Box): string {
  const upright = (kind: string) => (value: number) => ruled(kind, [x.at(value), top], [x.at(value), bottom])
  const across = (kind: string) => (value: number) => ruled(kind, [left, y.at(value)], [right, y.at(value)])
  return [
    ...x.fine.map(upright('fine')),
    ...y.fine.map(across('fine')),
    ...x.ticks.map(({ value }) => upright('grid')(value)),
    ...y.ticks.map(({ value }) => across('grid')(value)),
    rectangle({ left, right, top, bottom }, ' class="frame"'),
  ].join('\n')
}

export const ruled = (kind: string, [x1, y1]: Point, [x2, y2]: Point): string =>
  `<line class="${kind}" x1="${place(x1)}" y1="${place(y1)}" x2="${place(x2)}" y2="${place(y2)}"/>`

const rectangle = ({ left, right, top, bottom }: Box, attributes: string): string =>
  `<rect${attributes} x="${place(left)}" y="${place(top)}" width="${place(right - left)}" height="${place(bottom - top)}"/>`

/** A point between two gaps has no length to draw; it becomes a ring. */
const lonePoints = (pieces: readonly Point[][], look: Look): string =>
  pieces
    .flatMap((piece) => (piece.length === 1 ? piece : []))
    .map(([x, y]) => `<circle class="${look} lone" cx="${place(x)}" cy="${place(y)}" r="2.5"/>`)
    .join('')
