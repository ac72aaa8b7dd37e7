import type { CutListRequest } from '../src/schema/cut-list.ts'

/** Eleven sizes that fill boards badly: enough to keep the search busy for as long as it may. */
export const hardSearch = (seconds: number): CutListRequest => ({
  parts: Array.from({ length: 11 }, (_, i) => ({
    id: `p${i}`,
    lengthMm: 211 + 37 * ((i * 7) % 11),
    widthMm: 97 + 29 * ((i * 5) % 11),
    count: 6,
  })),
  stock: [{ id: 'board', lengthMm: 1220, widthMm: 610, count: 40 }],
  effort: { seconds },
})
