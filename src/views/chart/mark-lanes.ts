import { textWidth } from './text-width.ts'

/** A frequency that is pointed out, at its place in the picture. */
export interface PlacedMark {
  x: number
  text: string
  /** Where its text begins. */
  textX: number
  /** Line of text it stands in, counted upwards from the plot. */
  lane: number
}

const TEXT_FROM_LINE = 4
const BETWEEN_TEXTS = 8

/**
 * Lanes for the texts above a plot, so that no text covers another, nor the line of another where that can be.
 * A text stands to the right of its line, or to the left where the picture ends. Those to the right are placed from
 * right to left, the others from left to right, so that the line of the next passes beside the texts before it.
 * @param right  where the texts must end
 */
export function markLanes(
  marks: readonly { x: number; text: string }[],
  right: number,
  size: number,
): PlacedMark[] {
  const fits = ({ x, text }: { x: number; text: string }) =>
    x + TEXT_FROM_LINE + textWidth(text, size) <= right
  const onRight = marks.filter(fits).toSorted((a, b) => b.x - a.x)
  const onLeft = marks.filter((mark) => !fits(mark)).toSorted((a, b) => a.x - b.x)
  const placed: PlacedMark[] = []
  for (const { x, text } of onRight)
    placed.push(inFreeLane({ x, text, textX: x + TEXT_FROM_LINE, lane: 0 }, placed, size))
  for (const { x, text } of onLeft)
    placed.push(
      inFreeLane({ x, text, textX: x - TEXT_FROM_LINE - textWidth(text, size), lane: 0 }, placed, size),
    )
  return placed
}

/** In the lowest lane that is free; above all others when a line passes through each. */
function inFreeLane(mark: PlacedMark, placed: readonly PlacedMark[], size: number): PlacedMark {
  const top = placed.reduce((most, { lane }) => Math.max(most, lane + 1), 0)
  let { lane } = mark
  while (lane < top && placed.some((other) => collide({ ...mark, lane }, other, size))) lane += 1
  return { ...mark, lane }
}

/** Whether texts of one lane overlap, or the line of the higher text passes through the lower one. */
function collide(a: PlacedMark, b: PlacedMark, size: number): boolean {
  const end = ({ textX, text }: PlacedMark) => textX + textWidth(text, size) + BETWEEN_TEXTS
  if (a.lane === b.lane) return a.textX < end(b) && b.textX < end(a)
  const [lower, higher] = a.lane < b.lane ? [a, b] : [b, a]
  return higher.x >= lower.textX && higher.x < end(lower)
}
