import type { Wiring } from '../../schema/wiring.ts'
import { partsOf } from './wiring-parts.ts'

/** Up to this many drivers every series-parallel wiring is looked at: 52 for four different ones. */
const MOST_FOR_ALL = 4

/**
 * Distinct series and parallel wirings of the same drivers.
 * Up to four drivers all of them; above that all in series, all in parallel, and for equal drivers every
 * arrangement in equal rows and columns.
 * @param ids  one entry a driver, ids repeated for equal drivers (≥ 1)
 */
export function wiringsOf(ids: readonly string[]): Wiring[] {
  if (ids.length > MOST_FOR_ALL) return [...rowsAndColumns(ids)]
  const found = new Map<string, Wiring>()
  for (const wiring of everyWiring([...ids].sort())) found.set(canonical(wiring), wiring)
  return [...found.values()]
}

/** Whether a wiring holds drivers only, so that another wiring of them does the same job. */
export const isDriversOnly = (wiring: Wiring): boolean =>
  partsOf(wiring).every(({ part }) => typeof part === 'string')

/** A text that is equal for two wirings exactly when they are the same network. */
export function canonical(wiring: Wiring): string {
  if (typeof wiring === 'string') return JSON.stringify(wiring)
  if ('series' in wiring) return joined('series', wiring.series)
  if ('parallel' in wiring) return joined('parallel', wiring.parallel)
  return JSON.stringify(wiring)
}

/** Order does not matter inside a joint, a joint of one is no joint, and equal joints nested are one. */
function joined(kind: 'series' | 'parallel', branches: readonly Wiring[]): string {
  const flat = flattened(kind, branches)
  if (flat.length === 1 && flat[0] !== undefined) return canonical(flat[0])
  return `${kind}(${flat.map(canonical).sort().join(',')})`
}

function flattened(kind: 'series' | 'parallel', branches: readonly Wiring[]): Wiring[] {
  return branches.flatMap((branch) => {
    if (typeof branch === 'string') return [branch]
    if ('series' in branch && (kind === 'series' || branch.series.length === 1))
      return flattened(kind, branch.series)
    if ('parallel' in branch && (kind === 'parallel' || branch.parallel.length === 1))
      return flattened(kind, branch.parallel)
    return [branch]
  })
}

function everyWiring(ids: readonly string[]): Wiring[] {
  const [only] = ids
  if (only !== undefined && ids.length === 1) return [only]
  return splits(ids).flatMap(([left, right]) =>
    everyWiring(left).flatMap((a) =>
      everyWiring(right).flatMap((b): Wiring[] => [
        { series: merged('series', [a, b]) },
        { parallel: merged('parallel', [a, b]) },
      ]),
    ),
  )
}

/** Writes a joint within an equal joint as one: "a and b and c in series". */
function merged(kind: 'series' | 'parallel', branches: readonly Wiring[]): Wiring[] {
  return flattened(kind, branches)
}

/** Every way to part the drivers in two heaps, the first driver always in the left one. */
function splits(ids: readonly string[]): [string[], string[]][] {
  const result: [string[], string[]][] = []
  for (let mask = 1; mask < 2 ** ids.length - 1; mask += 2) {
    const inLeft = (_: string, index: number) => (mask & (1 << index)) !== 0
    result.push([ids.filter(inLeft), ids.filter((id, index) => !inLeft(id, index))])
  }
  return result
}

function* rowsAndColumns(ids: readonly string[]): Generator<Wiring> {
  yield { series: [...ids] }
  yield { parallel: [...ids] }
  const [first] = ids
  if (first === undefined || ids.some((id) => id !== first)) return
  for (let columns = 2; columns <= ids.length / 2; columns++) {
    if (ids.length % columns !== 0) continue
    const rows = ids.length / columns
    const group = Array.from({ length: rows }, () => first)
    yield { parallel: Array.from({ length: columns }, () => ({ series: [...group] })) }
    yield { series: Array.from({ length: columns }, () => ({ parallel: [...group] })) }
  }
}
