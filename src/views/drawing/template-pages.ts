import { DRILL_CAUTION } from '../../core/shop/cautions.ts'
import type { Hole, Panel } from '../../schema/panel.ts'
import { boltGroups } from './bolt-groups.ts'
import type { Drawing, Layer, Rectangle, Shape } from './drawing.ts'
import { plural, sizeSaid } from './figures.ts'
import { type Drawn, type Job, titled } from './job.ts'
import { labelShapes, type Taken } from './labels.ts'
import { centreMark, holeEdge, holeReach, panelEdge } from './panel-shapes.ts'
import { holeSaid } from './panel-view.ts'
import { MARGIN_MM, onItsSide, type Paper, type PaperSize, upright } from './paper.ts'
import { moved } from './placed.ts'
import { registerMarks } from './register-marks.ts'
import { RULER_MM, ruler } from './ruler.ts'
import { at, circle, text } from './shapes.ts'
import { tileMap } from './tile-map.ts'
import { type Tile, type Tiling, tiling } from './tiles.ts'
import { shortened, wrapped } from './type-width.ts'

/** Strip at the foot of every template: ruler, words, map. */
const FOOT_MM = 15
/** Paper around the panel, so that its edge shows whole. */
const BLEED_MM = 1
/** A template of more sheets than this is not worth gluing. Common practice, no source. */
export const MOST_TILES = 40
const SMALL_MM = 14

/** A true-size hole with a cross that reaches beyond its edge, and what it is. */
function holeMarks(panel: Panel): Shape[] {
  const taken: Taken = { boxes: [] }
  const labelled = panel.holes.filter(({ kind }) => kind !== 'bolt')
  const edges = panel.holes.flatMap((hole) => [holeEdge(hole), centreMark(hole, 4, 'mark')])
  const circles = boltGroups(panel.holes).map(({ around, circleMm }) =>
    circle('centre', at(around.xMm, around.yMm), circleMm / 2),
  )
  return [...edges, ...circles, ...labelled.flatMap((hole) => holeLabel(hole, panel, taken))]
}

function holeLabel(hole: Hole, panel: Panel, taken: Taken): Shape[] {
  const words = holeSaid(hole)
  const reach = holeReach(hole)
  const large = 2 * Math.min(reach.xMm, reach.yMm) > SMALL_MM
  const away = reach.yMm + 7
  const up = at(hole.xMm, hole.yMm + away)
  const down = at(hole.xMm, hole.yMm - away)
  const beside = panel.widthMm - hole.yMm < away + 3 ? [down, up] : [up, down]
  return labelShapes(
    { words, middles: large ? [at(hole.xMm, hole.yMm - 0.45 * reach.yMm)] : beside, patch: large },
    taken,
  )
}

const ORDER = 'Print at 100 % (actual size), measure the ruler before drilling.'

function footShapes(panel: Panel, plan: Tiling, tile: Tile, job: Job, paper: Paper): Shape[] {
  const many = plan.tiles.length > 1
  const left = MARGIN_MM + RULER_MM + 8
  const mapMm = many ? 34 : 0
  const roomMm = paper.widthMm - MARGIN_MM - left - mapMm
  const title = titled(`Template ${panel.id}`, job)
  const said = `${sizeSaid(panel)} mm, for ${plural(panel.count, 'piece')}${many ? `, sheet ${tile.name} of ${plan.tiles.length}` : ''}`
  const glue = many ? ' Cut along the dashes, lay the rings on each other.' : ''
  const notes = wrapped(`${ORDER}${glue}`, roomMm, 2.1)
  return [
    ...ruler(at(MARGIN_MM + 1, MARGIN_MM + 1)),
    text(at(left, MARGIN_MM + 10.2), shortened(title, 0.93 * roomMm, 3), { sizeMm: 3, role: 'heading' }),
    text(at(left, MARGIN_MM + 7), shortened(said, roomMm, 2.1), { sizeMm: 2.1 }),
    ...notes.map((note, index) => text(at(left, MARGIN_MM + 4.1 - 2.6 * index), note, { sizeMm: 2.1 })),
    ...(many
      ? tileMap(at(paper.widthMm - MARGIN_MM - 32, MARGIN_MM), plan, tile, { lengthMm: 32, widthMm: 13 })
      : []),
  ]
}

/** Where the thing shows on a template page. */
const roomOf = (paper: Paper): Rectangle => ({
  xMm: MARGIN_MM,
  yMm: MARGIN_MM + FOOT_MM,
  lengthMm: paper.widthMm - 2 * MARGIN_MM,
  widthMm: paper.heightMm - 2 * MARGIN_MM - FOOT_MM,
})

function tilePage(panel: Panel, plan: Tiling, tile: Tile, job: Job, paper: Paper): Drawing {
  const room = roomOf(paper)
  const shown: Layer = {
    shapes: [panelEdge(panel, 'mark'), ...holeMarks(panel), ...registerMarks(tile, plan)],
    window: tile.window,
  }
  return {
    ...paper,
    title: titled(`Template ${panel.id}, sheet ${tile.name}`, job),
    says: `${panel.id} at true size with the centres of ${plural(panel.holes.length, 'hole')}. ${ORDER} ${DRILL_CAUTION}`,
    layers: [
      moved(shown, at(room.xMm - tile.window.xMm, room.yMm - tile.window.yMm)),
      { shapes: footShapes(panel, plan, tile, job, paper) },
    ],
  }
}

/** The template of one panel, on the paper held the way that takes fewer sheets. */
function templateOf(panel: Panel, job: Job, size: PaperSize): Drawing[] {
  const thing = {
    xMm: -BLEED_MM,
    yMm: -BLEED_MM,
    lengthMm: panel.lengthMm + 2 * BLEED_MM,
    widthMm: panel.widthMm + 2 * BLEED_MM,
  }
  const [first, second] = [upright(size), onItsSide(size)].map((paper) => ({
    paper,
    plan: tiling(thing, roomOf(paper)),
  }))
  const best = second!.plan.tiles.length < first!.plan.tiles.length ? second! : first!
  return best.plan.tiles.length > MOST_TILES
    ? []
    : best.plan.tiles.map((tile) => tilePage(panel, best.plan, tile, job, best.paper))
}

/** True-size drilling templates of every panel with holes that is not too large for paper. */
export const templatePages = ({ panels }: Pick<Drawn, 'panels'>, job: Job, size: PaperSize): Drawing[] =>
  panels.filter(({ holes }) => holes.length > 0).flatMap((panel) => templateOf(panel, job, size))
