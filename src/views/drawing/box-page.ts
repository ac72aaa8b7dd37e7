import { carcassOf } from './carcass.ts'
import type { Drawing } from './drawing.ts'
import { explodedView } from './exploded-view.ts'
import { figure } from './figures.ts'
import { frontView } from './front-view.ts'
import { insideBoards } from './inside-boards.ts'
import { type Drawn, type Job, titled } from './job.ts'
import { onItsSide, type PaperSize, page, roomOn } from './paper.ts'
import { scaleSaid } from './round-scale.ts'

const FRONT_SHARE = 0.4
const GAP_MM = 6

/** The box from the front and taken apart; no page for plain parts. */
export function boxPages({ panels }: Pick<Drawn, 'panels'>, job: Job, size: PaperSize): Drawing[] {
  const carcass = carcassOf(panels)
  if (carcass === null) return []
  const paper = onItsSide(size)
  const plain = { title: titled('The box', job), subtitle: '', notes: [] }
  const room = roomOn(paper, plain)
  const frontMm = FRONT_SHARE * room.lengthMm
  const front = frontView(carcass, job.drivers ?? [], { ...room, lengthMm: frontMm })
  const apart = explodedView(carcass, insideBoards(panels, carcass), {
    ...room,
    xMm: room.xMm + frontMm + GAP_MM,
    lengthMm: room.lengthMm - frontMm - GAP_MM,
  })
  const { thicknessMm } = carcass.front
  const board = thicknessMm === null ? '' : `, board ${figure(thicknessMm)} mm`
  const subtitle = `left: from the front, ${scaleSaid(front.times)}; right: taken apart, not to scale. Sizes in mm${board}`
  return [page(paper, { ...plain, subtitle }, [{ shapes: [...front.shapes, ...apart] }])]
}
