import type { Panel } from '../../schema/panel.ts'
import type { Carcass } from './carcass.ts'
import type { Point, Rectangle, Shape } from './drawing.ts'
import { sizeSaid } from './figures.ts'
import { labelShapes, type Taken } from './labels.ts'
import { onPaper, placed } from './placed.ts'
import { at, polygon } from './shapes.ts'

/** A point of the box: x to the right, y to the back, z upwards, from the middle. */
type Corner = readonly [x: number, y: number, z: number]

/** Isometric projection, seen from the front, the right and above: the three axes 120 degrees apart. */
const project = ([x, y, z]: Corner): Point =>
  at((x + y) * Math.cos(Math.PI / 6), z + (y - x) * Math.sin(Math.PI / 6))

/** A panel lifted off the box: its middle, its size along the axes, and how its own x, y become corners of its outer face. */
interface Lifted {
  name: string
  panel: Panel
  middle: Corner
  size: Corner
  onFace: (xMm: number, yMm: number) => Corner
}

/** Distance that panels are lifted off, over the mean side of the box. */
const APART = 0.42
const CIRCLE_STEPS = 48

/** The six panels, the farthest first, so that each covers what lies behind it. */
function lifted({ front, back, side, topBottom }: Carcass): Lifted[] {
  const t = front.thicknessMm ?? 0
  const [w, d, h] = [
    Math.max(front.lengthMm, topBottom.lengthMm),
    topBottom.widthMm,
    Math.max(front.widthMm, side.lengthMm),
  ]
  const gap = (APART * (w + d + h)) / 3
  const [x, y, z] = [w / 2 + gap, d / 2 + gap, h / 2 + gap]
  const upright = (name: string, panel: Panel, toY: number): Lifted => ({
    name,
    panel,
    middle: [0, toY, 0],
    size: [panel.lengthMm, t, panel.widthMm],
    onFace: (xMm, yMm) => [xMm - panel.lengthMm / 2, toY - t / 2, yMm - panel.widthMm / 2],
  })
  const sideways = (name: string, toX: number): Lifted => ({
    name,
    panel: side,
    middle: [toX, 0, 0],
    size: [t, side.widthMm, side.lengthMm],
    onFace: (xMm, yMm) => [toX + t / 2, yMm - side.widthMm / 2, xMm - side.lengthMm / 2],
  })
  const level = (name: string, toZ: number): Lifted => ({
    name,
    panel: topBottom,
    middle: [0, 0, toZ],
    size: [topBottom.lengthMm, topBottom.widthMm, t],
    onFace: (xMm, yMm) => [xMm - topBottom.lengthMm / 2, yMm - topBottom.widthMm / 2, toZ + t / 2],
  })
  return [
    // Its outer face looks away: its holes are seen from inside, so left and right change places.
    {
      ...upright('back', back, y),
      onFace: (xMm, yMm) => [back.lengthMm / 2 - xMm, y - t / 2, yMm - back.widthMm / 2],
    },
    sideways('side', -x),
    level('bottom', -z),
    sideways('side', x),
    level('top', z),
    upright('front', front, -y),
  ]
}

/** The three faces that are seen of an upright block: front, right and top. */
function block({ middle: [x, y, z], size: [a, b, c] }: Lifted): Shape[] {
  const corner = (i: number, j: number, k: number): Point =>
    project([x + (i * a) / 2, y + (j * b) / 2, z + (k * c) / 2])
  return [
    polygon('face', [corner(-1, -1, -1), corner(1, -1, -1), corner(1, -1, 1), corner(-1, -1, 1)]),
    polygon('face', [corner(1, -1, -1), corner(1, 1, -1), corner(1, 1, 1), corner(1, -1, 1)]),
    polygon('face', [corner(-1, -1, 1), corner(1, -1, 1), corner(1, 1, 1), corner(-1, 1, 1)]),
  ]
}

function holesOn({ panel, onFace }: Lifted): Shape[] {
  return panel.holes.map(({ xMm, yMm, diameterMm, slotWidthMm, slotHeightMm }) => {
    if (diameterMm === null) {
      const [x, y] = [(slotWidthMm ?? 0) / 2, (slotHeightMm ?? 0) / 2]
      const corners = [
        onFace(xMm - x, yMm - y),
        onFace(xMm + x, yMm - y),
        onFace(xMm + x, yMm + y),
        onFace(xMm - x, yMm + y),
      ]
      return polygon('hole', corners.map(project))
    }
    const round = Array.from({ length: CIRCLE_STEPS }, (_, step) => {
      const angle = (2 * Math.PI * step) / CIRCLE_STEPS
      return project(
        onFace(xMm + (diameterMm / 2) * Math.cos(angle), yMm + (diameterMm / 2) * Math.sin(angle)),
      )
    })
    return polygon('hole', round)
  })
}

const pointsOf = (shapes: readonly Shape[]): Point[] =>
  shapes.flatMap((shape) => (shape.kind === 'polygon' ? [...shape.points] : []))

const LABEL_MM = 6

/** The six panels drawn apart, each named, filling a room; not to scale. */
export function explodedView(carcass: Carcass, room: Rectangle): Shape[] {
  const panels = lifted(carcass)
  const drawn = panels.map((panel) => [...block(panel), ...holesOn(panel)])
  const points = pointsOf(drawn.flat())
  const [left, right] = [Math.min(...points.map((p) => p.xMm)), Math.max(...points.map((p) => p.xMm))]
  const [low, high] = [Math.min(...points.map((p) => p.yMm)), Math.max(...points.map((p) => p.yMm))]
  const scale = Math.min(room.lengthMm / (right - left), (room.widthMm - 2 * LABEL_MM) / (high - low))
  const origin = at(
    room.xMm + room.lengthMm / 2 - (scale * (left + right)) / 2,
    room.yMm + room.widthMm / 2 - (scale * (low + high)) / 2,
  )
  const taken: Taken = { boxes: [] }
  const labels = panels.flatMap(({ name, panel }, index) => {
    const own = pointsOf(drawn[index]!).map((point) => onPaper(point, { origin, scale }))
    const lowest = own.reduce((best, point) => (point.yMm < best.yMm ? point : best))
    const highest = own.reduce((best, point) => (point.yMm > best.yMm ? point : best))
    const middles = [at(lowest.xMm, lowest.yMm - 4), at(highest.xMm, highest.yMm + 4)]
    return labelShapes({ words: `${name} ${sizeSaid(panel)}`, middles, patch: false }, taken)
  })
  return [...drawn.flat().map((shape) => placed(shape, { origin, scale })), ...labels]
}
