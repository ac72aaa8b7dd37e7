/**
 * A function f of a whole side x of a board side C with sum f <= 1 whenever sum x <= C.
 * Replacing sides by f gives a bound on the number of boards.
 */
export type DualFeasible = (side: number, boardSide: number) => number

/** Sides above C - e count as the whole, below e as nothing. Source: Fekete & Schepers, arXiv cs/0402044, 2004. */
const ends =
  (e: number): DualFeasible =>
  (x, C) =>
    x > C - e ? 1 : x < e ? 0 : x / C

/** Rounds (k + 1) x / C down to k-ths. Source: Fekete & Schepers, 2004. */
const steps =
  (k: number): DualFeasible =>
  (x, C) =>
    ((k + 1) * x) % C === 0 ? x / C : Math.floor(((k + 1) * x) / C) / k

/** Short sides count by how many e go into them, long ones by what they leave. Source: Carlier, Clautiaux & Moukrim, 2007, from memory. */
const halves =
  (e: number): DualFeasible =>
  (x, C) => {
    const most = Math.floor(C / e)
    if (2 * x === C) return 0.5
    return 2 * x > C ? 1 - Math.floor((C - x) / e) / most : Math.floor(x / e) / most
  }

/** Thresholds tried in each direction; more cost time and gained nothing on the published instances. */
const MOST_THRESHOLDS = 40
const MOST_STEPS = 12

/** Every one of the values, or evenly spread ones when there are too many. */
function thinned(values: number[], most: number): number[] {
  const step = Math.max(1, values.length / most)
  return Array.from(
    { length: Math.min(most, values.length) },
    (_, index) => values[Math.floor(index * step)]!,
  )
}

/**
 * The functions worth trying on one side of the board, the identity among them.
 * @param sides      sides of the pieces, whole micrometres
 * @param boardSide  side of the board, whole micrometres
 */
export function dualFeasibleFunctions(sides: readonly number[], boardSide: number): DualFeasible[] {
  const corners = sides.flatMap((side) => [side, boardSide - side, boardSide - side + 1])
  const thresholds = thinned(
    [...new Set(corners)].filter((e) => e > 0 && 2 * e <= boardSide).sort((a, b) => b - a),
    MOST_THRESHOLDS,
  )
  return [
    (x, C) => x / C,
    ...thresholds.map(ends),
    ...thresholds.map(halves),
    ...Array.from({ length: MOST_STEPS }, (_, k) => steps(k + 1)),
  ]
}
