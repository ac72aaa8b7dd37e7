import type { CutListSections } from '../../schema/cut-list.ts'

const counted = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`

const sum = (rows: readonly { count: number }[]): number =>
  rows.reduce((total, { count }) => total + count, 0)

/** The sentence of `/v1/cut-list`. */
export function cutListAnswer({ panels, sheets, notPlaced, cuts }: CutListSections): string {
  const pieces = counted(sum(panels), 'piece', 'pieces')
  const missing = sum(notPlaced)
  const boards = counted(sheets.length, 'board', 'boards')
  if (missing > 0) return `The boards on hand do not yield ${missing} of ${pieces}.`
  return `${pieces} come out of ${boards} with ${counted(cuts.length, 'saw cut', 'saw cuts')}.`
}
