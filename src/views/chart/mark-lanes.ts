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

const TEXT_AFTER_LINE = 4
const BETWEEN_TEXTS = 8

/**
 * Lanes for the texts above a plot, so that no text covers another or the line of another: from right to left, each
 * takes the lowest lane that is free, above all whose lines rise through it.
 * @param right  where the texts must end
 */
export function markLanes(
  marks: readonly { x: number; text: string }[],
  right: number,
  size: number,
): PlacedMark[] {
  const placed: PlacedMark[] = []
  for (const { x, text } of marks.toSorted((a, b) => b.x - a.x)) {
    const width = textWidth(text, size)
    const textX = Math.min(x + TEXT_AFTER_LINE, right - width)
    const end = textX + width + BETWEEN_TEXTS
    let lane = 0
    while (placed.some((other) => collides({ x, textX, end, lane }, other, size))) lane += 1
    placed.push({ x, text, textX, lane })
  }
  return placed
}

function collides(
  { x, textX, end, lane }: { x: number; textX: number; end: number; lane: number },
  other: PlacedMark,
  size: number,
): boolean {
  const otherEnd = other.textX + textWidth(other.text, size) + BETWEEN_TEXTS
  if (lane === other.lane) return textX < otherEnd && other.textX < end
  return lane < other.lane ? other.x >= textX && other.x < end : x >= other.textX && x < otherEnd
}
