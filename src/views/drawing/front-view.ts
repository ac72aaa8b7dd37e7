import type { Driver } from '../../schema/driver.ts'
import type { Hole } from '../../schema/panel.ts'
import { type Carcass, isInset } from './carcass.ts'
import { lengthBelow, widthAtLeft } from './dimension.ts'
import type { Point, Rectangle, Shape } from './drawing.ts'
import { labelShapes, type Taken } from './labels.ts'
import { holeEdge, holeReach } from './panel-shapes.ts'
import { onPaper, type Placement, placed } from './placed.ts'
import { roundScale } from './round-scale.ts'
import { at, circle, line, rectangle, TYPE_MM } from './shapes.ts'
import { typeWidthMm } from './type-width.ts'

const DIMENSIONS_MM = 12
const AIR_MM = 6
/** Cone and dust cap over the cut-out, to look like a driver; nothing is measured from them. */
const CONE = 0.88
const CAP = 0.32

/** Edges of the board around an inset front, seen end on: which panel runs through shows at the corners. */
function shellShapes({ side, topBottom }: Carcass, lengthMm: number, widthMm: number, t: number): Shape[] {
  const sidesRun = side.lengthMm >= widthMm
  const topRuns = topBottom.lengthMm >= lengthMm
  if (sidesRun && topRuns) {
    const corners: readonly [Point, Point][] = [
      [at(0, 0), at(t, t)],
      [at(lengthMm, 0), at(lengthMm - t, t)],
      [at(0, widthMm), at(t, widthMm - t)],
      [at(lengthMm, widthMm), at(lengthMm - t, widthMm - t)],
    ]
    return corners.map(([from, to]) => line('hole', from, to))
  }
  // The ends of what does not run through reach into the others as deep as a rebate, if there is one.
  const e = sidesRun ? (lengthMm - topBottom.lengthMm) / 2 : (widthMm - side.lengthMm) / 2
  const corner = (x: number, y: number): Point => (sidesRun ? at(x, y) : at(y, x))
  const [run, across] = sidesRun ? [lengthMm, widthMm] : [widthMm, lengthMm]
  return [
    [e, t],
    [run - e, run - t],
  ].flatMap(([end = 0, inner = 0]) => [
    line('hole', corner(end, 0), corner(end, t)),
    line('hole', corner(end, across - t), corner(end, across)),
    ...(Math.abs(end - inner) > 0
      ? [
          line('hole', corner(end, t), corner(inner, t)),
          line('hole', corner(end, across - t), corner(inner, across - t)),
        ]
      : []),
  ])
}

/** The driver a hole is for: of several the holes are numbered. */
const driverOf = (hole: Hole, drivers: readonly Driver[]): Driver | undefined =>
  drivers.find(({ id }) => hole.id === id || hole.id.startsWith(`${id} `))

/** What is seen of what goes into a hole. */
function fittedShapes(hole: Hole, drivers: readonly Driver[]): Shape[] {
  if (hole.kind !== 'driver' && hole.kind !== 'radiator') return [holeEdge(hole)]
  const radius = holeReach(hole).xMm
  const flange = driverOf(hole, drivers)?.frame?.outerDiameterMm
  const rings = [radius, CONE * radius, ...(hole.kind === 'driver' ? [CAP * radius] : [])]
  return [
    ...(flange === undefined ? [] : [circle('face', hole, flange / 2)]),
    ...rings.map((ring) => circle('hole', hole, ring)),
  ]
}

/** The box from the front with what goes into it, and how many times smaller. */
export function frontView(
  carcass: Carcass,
  drivers: readonly Driver[],
  room: Rectangle,
): { shapes: Shape[]; times: number } {
  const { front } = carcass
  const t = isInset(carcass) ? (front.thicknessMm ?? 0) : 0
  const [lengthMm, widthMm] = [front.lengthMm + 2 * t, front.widthMm + 2 * t]
  const labelsMm =
    3 + Math.max(0, ...front.holes.map(({ id, kind }) => (kind === 'bolt' ? 0 : typeWidthMm(id, TYPE_MM))))
  const inner = {
    lengthMm: room.lengthMm - DIMENSIONS_MM - labelsMm,
    widthMm: room.widthMm - DIMENSIONS_MM - AIR_MM,
  }
  const times = roundScale({ lengthMm, widthMm }, inner)
  const scale = 1 / times
  const left = room.xMm + DIMENSIONS_MM + (inner.lengthMm - scale * lengthMm) / 2
  const bottom = room.yMm + DIMENSIONS_MM + (inner.widthMm - scale * widthMm) / 2
  const [right, top] = [left + scale * lengthMm, bottom + scale * widthMm]
  const outer = { origin: at(left, bottom), scale }
  const inside = { origin: at(left + scale * t, bottom + scale * t), scale }
  const fitted = [...front.holes].sort((a, b) => Number(a.kind === 'bolt') - Number(b.kind === 'bolt'))
  const taken: Taken = { boxes: [] }
  const names = front.holes
    .filter(({ kind }) => kind !== 'bolt')
    .flatMap((hole) => nameOf(hole, inside, right, taken))
  const edge = rectangle('outline', { xMm: 0, yMm: 0, lengthMm, widthMm })
  const shell =
    t === 0
      ? []
      : [
          rectangle('hole', { xMm: t, yMm: t, lengthMm: front.lengthMm, widthMm: front.widthMm }),
          ...shellShapes(carcass, lengthMm, widthMm, t),
        ]
  return {
    times,
    shapes: [
      ...[edge, ...shell].map((shape) => placed(shape, outer)),
      ...fitted.flatMap((hole) => fittedShapes(hole, drivers)).map((shape) => placed(shape, inside)),
      ...names,
      ...lengthBelow(left, right, bottom, lengthMm, 6),
      ...widthAtLeft(bottom, top, left, widthMm, 6),
    ],
  }
}

/** Drivers drawn larger than this are named beside the box with a leader, all else in or below its hole. */
const SMALL_MM = 16

function nameOf(hole: Hole, inside: Placement, right: number, taken: Taken): Shape[] {
  const { xMm, yMm } = onPaper(hole, inside)
  const reach = holeReach(hole)
  const [x, y] = [inside.scale * reach.xMm, inside.scale * reach.yMm]
  if (2 * x < SMALL_MM || hole.kind !== 'driver') {
    const fits = typeWidthMm(hole.id, TYPE_MM) < 1.6 * x && y > TYPE_MM
    const below = [3, -3, 6.5, -6.5].map((down) => at(xMm, yMm - Math.sign(down) * y - down))
    return labelShapes(
      { words: hole.id, middles: fits ? [at(xMm, yMm), ...below] : below, patch: !fits },
      taken,
    )
  }
  const middle = right + 5 + typeWidthMm(hole.id, TYPE_MM) / 2
  const middles = [0, 4, -4, 8, -8].map((aside) => at(middle, yMm + aside))
  const label = labelShapes({ words: hole.id, middles, patch: false }, taken)
  const box = taken.boxes.at(-1)
  const labelY = box === undefined ? yMm : (box.top + box.bottom) / 2
  return [line('dimension', at(xMm + x, yMm), at(right + 4, labelY)), ...label]
}
