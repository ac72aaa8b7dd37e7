/**
 * The known name nearest to a written one, upper and lower case alike, if it is near enough to be meant.
 * Distance by Levenshtein (1966): single letters added, dropped or changed.
 */
export function nearestName(written: string, known: readonly string[]): string | undefined {
  const wanted = written.slice(0, 60).toLowerCase()
  const near = known
    .map((name) => ({ name, distance: distance(wanted, name.toLowerCase()) }))
    .filter(({ name, distance }) => distance <= Math.max(1, Math.ceil(name.length / 3)))
    .sort((a, b) => a.distance - b.distance)
  return near[0]?.name
}

function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, column) => column)
  for (const [i, letter] of [...a].entries()) {
    const next = [i + 1]
    for (let j = 0; j < b.length; j++) {
      const changed = row[j]! + (letter === b[j] ? 0 : 1)
      next.push(Math.min(changed, row[j + 1]! + 1, next[j]! + 1))
    }
    row = next
  }
  return row.at(-1)!
}
