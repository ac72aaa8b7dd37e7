import type { Sides } from '../../schema/box.ts'
import type { Hole, Panel } from '../../schema/panel.ts'
import { type Carcass, innerSides } from './carcass.ts'
import type { Corner } from './isometric.ts'
import type { Block, Board } from './solid-boards.ts'

/** A kind of panel inside the box with its boards in their places, from the middle of the box. */
export interface InsideBoards {
  panel: Panel
  boards: Board[]
}

type Axis = 0 | 1 | 2

const moved = (corner: Corner, axis: Axis, mm: number): Corner => [
  axis === 0 ? mm : corner[0],
  axis === 1 ? mm : corner[1],
  axis === 2 ? mm : corner[2],
]

const stretch = ({ from, to }: Block, axis: Axis, fromMm: number, toMm: number): Block => ({
  from: moved(from, axis, fromMm),
  to: moved(to, axis, toMm),
})

const blockAround = (middle: Corner, [x, y, z]: Corner): Block => ({
  from: [middle[0] - x / 2, middle[1] - y / 2, middle[2] - z / 2],
  to: [middle[0] + x / 2, middle[1] + y / 2, middle[2] + z / 2],
})

/** The four blocks around a window in the middle of a board that lies along two axes. */
function framed(whole: Block, [first, second]: readonly [Axis, Axis], window: Hole): Board {
  const edges = (axis: Axis, openMm: number): [number, number] => {
    const middle = (whole.from[axis] + whole.to[axis]) / 2
    return [middle - openMm / 2, middle + openMm / 2]
  }
  const [near, far] = edges(first, window.slotWidthMm ?? 0)
  const [low, high] = edges(second, window.slotHeightMm ?? 0)
  const between = stretch(whole, first, near, far)
  return [
    stretch(whole, first, whole.from[first], near),
    stretch(whole, first, far, whole.to[first]),
    stretch(between, second, whole.from[second], low),
    stretch(between, second, high, whole.to[second]),
  ]
}

/** A brace where it stands; its length and its width run along two axes of the box. */
function braceBoards(panel: Panel, inner: Sides): Board[] {
  const { stands, lengthMm, widthMm } = panel
  const t = panel.thicknessMm ?? 0
  if (stands === null) return []
  const { lies, atMm } = stands
  const placed: { whole: Block; axes: readonly [Axis, Axis] } =
    lies === 'level'
      ? { whole: blockAround([0, 0, atMm - inner.heightMm / 2], [lengthMm, widthMm, t]), axes: [0, 1] }
      : lies === 'upright'
        ? { whole: blockAround([atMm - inner.widthMm / 2, 0, 0], [t, widthMm, lengthMm]), axes: [2, 1] }
        : { whole: blockAround([0, atMm - inner.depthMm / 2, 0], [widthMm, t, lengthMm]), axes: [2, 0] }
  const window = panel.holes.find(({ kind }) => kind === 'window')
  return [window === undefined ? [placed.whole] : framed(placed.whole, placed.axes, window)]
}

/** Shelves and cheeks around the slots of the front, from the inside of the front backwards. */
function ductBoards(panel: Panel, { front }: Carcass, inner: Sides, shelvesEach: number): Board[] {
  const t = panel.thicknessMm ?? 0
  const slots = front.holes.filter(({ kind }) => kind === 'slot')
  return slots.flatMap((slot): Board[] => {
    const [x, z] = [slot.xMm - front.lengthMm / 2, slot.yMm - front.widthMm / 2]
    const [halfX, halfZ] = [(slot.slotWidthMm ?? 0) / 2, (slot.slotHeightMm ?? 0) / 2]
    const [fromY, toY] = [-inner.depthMm / 2, -inner.depthMm / 2 + panel.lengthMm]
    const reaching = (fromX: number, toX: number, fromZ: number, toZ: number): Board => [
      { from: [fromX, fromY, fromZ], to: [toX, toY, toZ] },
    ]
    if (panel.id === 'port shelf')
      return [
        reaching(x - halfX, x + halfX, z + halfZ, z + halfZ + t),
        ...(shelvesEach > 1 ? [reaching(x - halfX, x + halfX, z - halfZ - t, z - halfZ)] : []),
      ]
    const footZ = z - halfZ - (shelvesEach - 1) * t
    return [
      reaching(x - halfX - t, x - halfX, footZ, footZ + panel.widthMm),
      reaching(x + halfX, x + halfX + t, footZ, footZ + panel.widthMm),
    ]
  })
}

/** Braces and the boards of ducts, each where it is glued in. */
export function insideBoards(panels: readonly Panel[], carcass: Carcass): InsideBoards[] {
  const inner = innerSides(carcass)
  const shelf = panels.find(({ id }) => id === 'port shelf')
  const slots = carcass.front.holes.filter(({ kind }) => kind === 'slot').length
  const shelvesEach = shelf === undefined ? 0 : shelf.count / (carcass.front.count * Math.max(1, slots))
  return panels
    .map((panel) => ({
      panel,
      boards:
        panel.stands === null
          ? panel.id === 'port shelf' || panel.id === 'port cheek'
            ? ductBoards(panel, carcass, inner, shelvesEach)
            : []
          : braceBoards(panel, inner),
    }))
    .filter(({ boards }) => boards.length > 0)
}
