import type { Hole } from '../../schema/panel.ts'
import { figure } from './figures.ts'
import { holeSizeSaid } from './hole-labels.ts'
import type { Column } from './ruled-table.ts'

export const HOLE_COLUMNS: readonly Column[] = [
  { title: 'hole', widthMm: 32 },
  { title: 'x', widthMm: 14 },
  { title: 'y', widthMm: 14 },
  { title: 'size', widthMm: 20 },
  { title: 'depth', widthMm: 18 },
  { title: 'how', widthMm: 92 },
]

/** Every hole of a panel, its note once where the next ones are made alike. */
export const holeRows = (holes: readonly Hole[]): string[][] =>
  holes.map((hole, index) => [
    hole.id,
    figure(hole.xMm),
    figure(hole.yMm),
    holeSizeSaid(hole),
    hole.through ? 'through' : figure(hole.depthMm),
    holes[index - 1]?.toolNote === hole.toolNote ? 'as above' : hole.toolNote,
  ])
