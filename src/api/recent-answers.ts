/**
 * A pure calculation that remembers its last few results by what was asked: a page that shows one design as an answer
 * and as pictures asks the same several times, and a long search is not to be done again for its drawing.
 * Only results that came are kept, so that a search given up by one client is not lost to another.
 */
export function remembered<Body, Rest extends readonly unknown[], Result>(
  compute: (body: Body, ...rest: Rest) => Result | Promise<Result>,
  most = 12,
): (body: Body, ...rest: Rest) => Promise<Result> {
  const results = new Map<string, Result>()
  return async (body, ...rest) => {
    const asked = JSON.stringify(body)
    const known = results.get(asked)
    const result = known ?? (await compute(body, ...rest))
    // Taken out and put in again, the entry used last stands last.
    results.delete(asked)
    results.set(asked, result)
    for (const [oldest] of results) {
      if (results.size <= most) break
      results.delete(oldest)
    }
    return result
  }
}
