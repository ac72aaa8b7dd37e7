/** Middle value of a list; between the two middle ones of an even count, 0 of an empty one. */
export function medianOf(list: ArrayLike<number>): number {
  const sorted = Float64Array.from(list).sort()
  const middle = Math.floor(sorted.length / 2)
  if (sorted.length % 2 === 1) return sorted[middle]!
  return sorted.length === 0 ? 0 : (sorted[middle - 1]! + sorted[middle]!) / 2
}
