/** One number for each index from 0, as a plain array: `Array.from` takes several times as long over typed arrays. */
export function numbers(count: number, at: (index: number) => number): number[] {
  const all: number[] = []
  for (let i = 0; i < count; i++) all.push(at(i))
  return all
}

/** The numbers of a typed array as a plain one, for an answer. */
export const plain = (values: Float64Array): number[] => numbers(values.length, (i) => values[i]!)
