import { Refused } from './problem.ts'

/**
 * A pure calculation that remembers its last few results by what was asked: a page that shows one design as an answer
 * and as pictures asks the same several times, and a long search is not to be done again for its drawing. Who asks what
 * is under way waits for its result. Only results that came are kept, so that a search given up by one client is not
 * lost to another: when what it waited for fails, it asks anew. A refusal holds for all who waited.
 */
export function remembered<Body, Rest extends readonly unknown[], Result>(
  compute: (body: Body, ...rest: Rest) => Result | Promise<Result>,
  most = 12,
): (body: Body, ...rest: Rest) => Promise<Result> {
  const results = new Map<string, Result>()
  const underWay = new Map<string, Promise<Result>>()

  function kept(asked: string, result: Result): Result {
    // Taken out and put in again, the entry used last stands last.
    results.delete(asked)
    results.set(asked, result)
    for (const [oldest] of results) {
      if (results.size <= most) break
      results.delete(oldest)
    }
    return result
  }

  function begun(asked: string, body: Body, rest: Rest): Promise<Result> {
    // Kept before anybody hears of it, or the next who waited would begin it again.
    const result = (async () => kept(asked, await compute(body, ...rest)))()
    underWay.set(asked, result)
    return result.finally(() => underWay.delete(asked))
  }

  return async (body, ...rest) => {
    const asked = JSON.stringify(body)
    for (let other = underWay.get(asked); other !== undefined; other = underWay.get(asked)) {
      const failed = await other.then(
        () => undefined,
        (error: unknown) => error,
      )
      if (failed instanceof Refused) throw failed
    }
    const known = results.get(asked)
    return known === undefined ? begun(asked, body, rest) : kept(asked, known)
  }
}
