import type { Panel } from '../../schema/panel.ts'
import type { Carcass } from './carcass.ts'
import type { Anchor, Point, Rectangle, Shape } from './drawing.ts'
import { sizeSaid } from './figures.ts'
import type { InsideBoards } from './inside-boards.ts'
import { insideList, insideNumbers } from './inside-numbers.ts'
import { type Corner, project } from './isometric.ts'
import { placed } from './placed.ts'
import { at, line, polygon, text } from './shapes.ts'
import { faceShapes, solidFaces } from './solid-boards.ts'

/** A panel lifted off the box: its middle, its size along the axes, and how its own x, y become corners of its outer face. */
interface Lifted {
  name: string
  panel: Panel
  middle: Corner
  size: Corner
  onFace: (xMm: number, yMm: number) => Corner
  named: Named
}

/** Where its name stands: at a side, this share of its height up, where the others leave it in sight. */
type Named = 'above' | 'below' | { side: 'left' | 'right'; share: number }

/** Distance that panels are lifted off, over the mean side of the box: more where boards inside are to be seen. */
const APART = { empty: 0.42, filled: 0.75 }
const CIRCLE_STEPS = 48

/** The six panels, the farthest first, so that each covers what lies behind it. */
function lifted({ front, back, side, topBottom }: Carcass, apart: number): Lifted[] {
  const t = front.thicknessMm ?? 0
  const [w, d, h] = [
    Math.max(front.lengthMm, topBottom.lengthMm),
    topBottom.widthMm,
    Math.max(front.widthMm, side.lengthMm),
  ]
  const gap = (apart * (w + d + h)) / 3
  const [x, y, z] = [w / 2 + gap, d / 2 + gap, h / 2 + gap]
  const upright = (name: string, panel: Panel, toY: number): Lifted => ({
    name,
    panel,
    middle: [0, toY, 0],
    size: [panel.lengthMm, t, panel.widthMm],
    onFace: (xMm, yMm) => [xMm - panel.lengthMm / 2, toY - t / 2, yMm - panel.widthMm / 2],
    named: { side: toY < 0 ? 'left' : 'right', share: toY < 0 ? 0.45 : 0.7 },
  })
  const sideways = (name: string, toX: number): Lifted => ({
    name,
    panel: side,
    middle: [toX, 0, 0],
    size: [t, side.widthMm, side.lengthMm],
    onFace: (xMm, yMm) => [toX + t / 2, yMm - side.widthMm / 2, xMm - side.lengthMm / 2],
    named: { side: toX < 0 ? 'left' : 'right', share: toX < 0 ? 0.7 : 0.45 },
  })
  const level = (name: string, toZ: number): Lifted => ({
    name,
    panel: topBottom,
    middle: [0, 0, toZ],
    size: [topBottom.lengthMm, topBottom.widthMm, t],
    onFace: (xMm, yMm) => [xMm - topBottom.lengthMm / 2, yMm - topBottom.widthMm / 2, toZ + t / 2],
    named: toZ > 0 ? 'above' : 'below',
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

/** Room for words at each side of the picture, and above and below it. */
const ASIDE_MM = 30
const OVER_MM = 10

interface Extent {
  left: number
  right: number
  low: number
  high: number
}

const extentOf = (points: readonly Point[]): Extent => ({
  left: Math.min(...points.map(({ xMm }) => xMm)),
  right: Math.max(...points.map(({ xMm }) => xMm)),
  low: Math.min(...points.map(({ yMm }) => yMm)),
  high: Math.max(...points.map(({ yMm }) => yMm)),
})

/** Name and size of a panel where nothing else is drawn: beside the picture with a leader, above or below it. */
function nameOf({ name, panel, named }: Lifted, { left, right, low, high }: Extent): Shape[] {
  const size = sizeSaid(panel)
  const two = (place: Point, anchor: Anchor): Shape[] => [
    text(at(place.xMm, place.yMm + 0.7), name, { anchor, role: 'heading' }),
    text(at(place.xMm, place.yMm - 3), size, { anchor }),
  ]
  if (named === 'above') return two(at((left + right) / 2, high + 4.5), 'middle')
  if (named === 'below') return two(at((left + right) / 2, low - 5), 'middle')
  const y = low + named.share * (high - low)
  const [edge, way, anchor] =
    named.side === 'left' ? [left, -1, 'end' as const] : [right, 1, 'start' as const]
  return [line('dimension', at(edge, y), at(edge + way * 4, y)), ...two(at(edge + way * 5, y), anchor)]
}

/** How many of the panels are drawn before what is inside: back, left side and bottom lie behind it. */
const BEHIND = 3

/** The six panels drawn apart, each named, around the boards inside, which are numbered; filling a room, not to scale. */
export function explodedView(carcass: Carcass, inside: readonly InsideBoards[], room: Rectangle): Shape[] {
  const panels = lifted(carcass, inside.length > 0 ? APART.filled : APART.empty)
  const drawn = panels.map((panel) => [...block(panel), ...holesOn(panel)])
  const { left, right, low, high } = extentOf(pointsOf(drawn.flat()))
  const scale = Math.min(
    (room.lengthMm - 2 * ASIDE_MM) / (right - left),
    (room.widthMm - 2 * OVER_MM) / (high - low),
  )
  const origin = at(
    room.xMm + room.lengthMm / 2 - (scale * (left + right)) / 2,
    room.yMm + room.widthMm / 2 - (scale * (low + high)) / 2,
  )
  const placement = { origin, scale }
  const shapes = drawn.map((block) => block.map((shape) => placed(shape, placement)))
  const faces = solidFaces(inside.flatMap((kind) => kind.boards))
  const before = shapes.slice(BEHIND).flat()
  return [
    ...shapes.slice(0, BEHIND).flat(),
    ...faceShapes(faces).map((shape) => placed(shape, placement)),
    ...before,
    ...insideNumbers(inside, faces, placement, before),
    ...insideList(inside, room),
    ...panels.flatMap((panel, index) => nameOf(panel, extentOf(pointsOf(shapes[index]!)))),
  ]
}
