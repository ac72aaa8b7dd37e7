/** A rectangle in micrometres, one kerf larger in both directions than the wood. */
export interface Rect {
  xUm: number
  yUm: number
  lengthUm: number
  widthUm: number
}

/** One cut from edge to edge of the piece at hand. */
export interface Separation {
  at: Rect
  /** across: the saw crosses the board's length, at an x; along: it runs with the length, at a y. */
  direction: 'across' | 'along'
  /** Where the second side begins; the kerf lies just before. */
  positionUm: number
}

const startOf = (rect: Rect, direction: Separation['direction']): number =>
  direction === 'across' ? rect.xUm : rect.yUm
const endOf = (rect: Rect, direction: Separation['direction']): number =>
  direction === 'across' ? rect.xUm + rect.lengthUm : rect.yUm + rect.widthUm

/** Positions where a full band parts the pieces or frees an empty end. */
function positions(at: Rect, parts: readonly Rect[], direction: Separation['direction']): number[] {
  const sorted = [...parts].sort((a, b) => startOf(a, direction) - startOf(b, direction))
  const found: number[] = []
  let reached = startOf(at, direction)
  for (const part of sorted) {
    const start = startOf(part, direction)
    if (start >= reached && start > startOf(at, direction)) {
      found.push(found.length === 0 && reached === startOf(at, direction) ? start : reached)
    }
    reached = Math.max(reached, endOf(part, direction))
  }
  if (reached < endOf(at, direction)) found.push(reached)
  return found
}

export function halvesOf(
  at: Rect,
  { direction, positionUm }: Pick<Separation, 'direction' | 'positionUm'>,
): [Rect, Rect] {
  const { xUm, yUm, lengthUm, widthUm } = at
  if (direction === 'across') {
    const first = positionUm - xUm
    return [
      { xUm, yUm, lengthUm: first, widthUm },
      { xUm: positionUm, yUm, lengthUm: lengthUm - first, widthUm },
    ]
  }
  const first = positionUm - yUm
  return [
    { xUm, yUm, lengthUm, widthUm: first },
    { xUm, yUm: positionUm, lengthUm, widthUm: widthUm - first },
  ]
}

export const within = (parts: readonly Rect[], half: Rect): Rect[] =>
  parts.filter(
    (part) =>
      part.xUm >= half.xUm &&
      part.yUm >= half.yUm &&
      part.xUm < half.xUm + half.lengthUm &&
      part.yUm < half.yUm + half.widthUm,
  )

/** Largest empty strip that one cut can take off the piece at hand. */
function largestStrip(at: Rect, parts: readonly Rect[]): number {
  if (parts.length === 0) return at.lengthUm * at.widthUm
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const part of parts) {
    left = Math.min(left, part.xUm)
    right = Math.max(right, part.xUm + part.lengthUm)
    bottom = Math.min(bottom, part.yUm)
    top = Math.max(top, part.yUm + part.widthUm)
  }
  const along = Math.max(left - at.xUm, at.xUm + at.lengthUm - right)
  const across = Math.max(bottom - at.yUm, at.yUm + at.widthUm - top)
  return Math.max(along * at.widthUm, across * at.lengthUm)
}

/** With more parts than this on the piece at hand the cut is chosen to halve them, which is fast. */
const MOST_PARTS_WEIGHED = 40

/** What a cut is worth: the largest strip free of parts after it, or with many parts how evenly it parts them. */
function worth(at: Rect, parts: readonly Rect[], cut: Separation): number {
  const [first, second] = halvesOf(at, cut)
  const inFirst = within(parts, first)
  if (parts.length > MOST_PARTS_WEIGHED) return Math.min(inFirst.length, parts.length - inFirst.length)
  return Math.max(largestStrip(first, inFirst), largestStrip(second, within(parts, second)))
}

/**
 * Any possible cut may be taken at once, since every part of a separable layout is separable; among them the one
 * that frees the largest empty strip, so that offcuts stay large. Own derivation from the recursive meaning of
 * edge-to-edge cuts.
 */
export function nextCut(at: Rect, parts: readonly Rect[]): Separation | undefined {
  const directions: Separation['direction'][] =
    at.lengthUm >= at.widthUm ? ['across', 'along'] : ['along', 'across']
  let best: Separation | undefined
  let most = -1
  for (const direction of directions) {
    for (const positionUm of positions(at, parts, direction)) {
      const cut = { at, direction, positionUm }
      const value = worth(at, parts, cut)
      if (value > most) [best, most] = [cut, value]
    }
  }
  return best
}
