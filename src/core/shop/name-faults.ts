import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Fault } from '../outcome.ts'
import { namedParts, namedStock } from './board-sections.ts'

/** Names that come a second time, each at its place; also one that another gets because it was given none. */
function namedTwice(at: string, named: readonly { id: string }[]): Fault[] {
  const firsts = new Map<string, number>()
  return named.flatMap(({ id }, index) => {
    const first = firsts.get(id)
    if (first === undefined) {
      firsts.set(id, index)
      return []
    }
    return [{ at: `${at}/${index}/id`, message: `${at}/${first} is called "${id}" already; ids must differ` }]
  })
}

/** Plain parts of one name, and boards of one name: an answer could not tell which is meant. */
export const nameFaults = ({ parts = [], stock }: Pick<CutListRequest, 'parts' | 'stock'>): Fault[] => [
  ...namedTwice('/parts', namedParts(parts)),
  ...namedTwice('/stock', namedStock(stock)),
]
