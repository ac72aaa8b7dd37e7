/**
 * The known name with the fewest changed letters, when at most half of the letters change.
 * Edit distance of Levenshtein 1966, counted row by row.
 */
export function nearestName(wanted: string, known: readonly string[]): string | undefined {
  let best: string | undefined
  let fewest = Math.ceil(wanted.length / 2)
  for (const name of known) {
    const changes = editDistance(wanted.toLowerCase(), name.toLowerCase())
    if (changes <= fewest && (best === undefined || changes < fewest)) {
      best = name
      fewest = changes
    }
  }
  return best
}

/** Letters to insert, delete or exchange until one word becomes the other. */
export function editDistance(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, column) => column)
  for (let i = 1; i <= from.length; i++) {
    const next = [i]
    for (let j = 1; j <= to.length; j++) {
      const exchange = row[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1)
      next.push(Math.min(exchange, row[j]! + 1, next[j - 1]! + 1))
    }
    row = next
  }
  return row[to.length]!
}
