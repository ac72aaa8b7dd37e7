import type { Point } from './curve-path.ts'
import { type Box, freePlace, inside } from './free-place.ts'
import { TEXT_SIZE, textAt } from './picture.ts'
import type { Look } from './style.ts'
import { textWidth } from './text-width.ts'

/** All that a panel shows, at its place in the picture. */
export interface PlacedContent {
  curves: readonly { pieces: readonly Point[][]; text?: string; look: Look }[]
  levels: readonly { y: number; text: string }[]
  spots: readonly { x: number; y: number; text: string }[]
  markX: readonly number[]
  frame: Box
}

const ABOVE_BASELINE = 10
const BELOW_BASELINE = 4
const GAP = 5
/** Places along a curve that its label is tried at, and where along the frame that of a level is. */
const TRIED = 40
const ALONG_LEVEL = [1, 0, 0.75, 0.25, 0.5]
const ALONG_CURVE_FIRST = 0.7

/** The labels beside levels, spots and curves, each where it covers least of what is there before it. */
export function labelsOf(content: PlacedContent): string[] {
  const { frame, levels, spots, curves } = content
  const lines = linesOf(content)
  const boxes: Box[] = spots.map(({ x, y }) => ({ left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 }))
  const put = (text: string, kind: string, places: readonly Box[]): string => {
    const box = freePlace(
      places.filter((candidate) => inside(candidate, frame)),
      { boxes, lines },
    )
    if (box === undefined) return ''
    boxes.push(box)
    return textAt(box.left, box.bottom - BELOW_BASELINE, text, { kind: `label ${kind}` })
  }
  return [
    ...levels.map(({ text, y }) => put(text, 'limit', alongLevel(text, y, frame))),
    ...spots.map(({ text, x, y }) => put(text, 'named', aroundSpot(text, x, y))),
    ...curves.map(({ text, look, pieces }) =>
      text === undefined ? '' : put(text, `of-${look}`, alongCurve(text, pieces, frame)),
    ),
  ].filter((label) => label !== '')
}

const linesOf = ({ curves, levels, markX, frame }: PlacedContent): (readonly Point[])[] => [
  ...curves.flatMap(({ pieces }) => pieces),
  ...levels.map(({ y }): Point[] => [
    [frame.left, y],
    [frame.right, y],
  ]),
  ...markX.map((x): Point[] => [
    [x, frame.top],
    [x, frame.bottom],
  ]),
  [
    [frame.left, frame.top],
    [frame.right, frame.top],
    [frame.right, frame.bottom],
    [frame.left, frame.bottom],
    [frame.left, frame.top],
  ],
]

/** The box of a text by the left end of its line of writing. */
const boxOf = (text: string, left: number, baseline: number): Box => ({
  left,
  right: left + textWidth(text, TEXT_SIZE),
  top: baseline - ABOVE_BASELINE,
  bottom: baseline + BELOW_BASELINE,
})

const above = (y: number): number => y - GAP - BELOW_BASELINE + 2
const below = (y: number): number => y + GAP + ABOVE_BASELINE

function alongLevel(text: string, y: number, { left, right }: Box): Box[] {
  const room = right - left - textWidth(text, TEXT_SIZE) - 2 * GAP
  return [above(y), below(y)].flatMap((baseline) =>
    ALONG_LEVEL.map((share) => boxOf(text, left + GAP + share * room, baseline)),
  )
}

function aroundSpot(text: string, x: number, y: number): Box[] {
  const width = textWidth(text, TEXT_SIZE)
  const lefts = [x + 2 * GAP, x - width - 2 * GAP, x - width / 2]
  const near = lefts.flatMap((left) =>
    [above(y) - 4, below(y) + 4, y + 4].map((line) => boxOf(text, left, line)),
  )
  const farther = [20, 34, 48].flatMap((away) =>
    [...lefts, x - width - 2].flatMap((left) =>
      [above(y) - away, below(y) + away].map((line) => boxOf(text, left, line)),
    ),
  )
  return [...near, ...farther]
}

/** Beside points of the curve that are in the frame, those at the right middle first. */
function alongCurve(text: string, pieces: readonly Point[][], frame: Box): Box[] {
  const width = textWidth(text, TEXT_SIZE)
  const seen = pieces.flat().filter(([x, y]) => inside({ left: x, right: x, top: y, bottom: y }, frame))
  const step = Math.max(1, Math.floor(seen.length / TRIED))
  const liked = frame.left + ALONG_CURVE_FIRST * (frame.right - frame.left)
  return seen
    .filter((_, index) => index % step === 0)
    .toSorted(([a], [b]) => Math.abs(a - liked) - Math.abs(b - liked))
    .flatMap(([x, y]) =>
      [above(y) - 2, below(y) + 2].flatMap((baseline) =>
        [x - width / 2, x + GAP, x - width - GAP].map((left) => boxOf(text, left, baseline)),
      ),
    )
}
