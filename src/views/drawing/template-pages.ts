import { DRILL_CAUTION } from '../../core/shop/cautions.ts'
import type { Hole, Panel } from '../../schema/panel.ts'
import { boltCircles } from './bolt-groups.ts'
import type { Drawing, Layer, Rectangle, Shape } from './drawing.ts'
import { figure, plural, sizeSaid } from './figures.ts'
import { holeLabels, holeSizeSaid } from './hole-labels.ts'
import { type Drawn, type Job, titled } from './job.ts'
import { missingBandsSaid, woodEdges } from './missing-bands.ts'
import { centreMark, holeEdge, panelEdge } from './panel-shapes.ts'
import { MARGIN_MM, onItsSide, type Paper, type PaperSize, page, upright } from './paper.ts'
import { moved } from './placed.ts'
import { registerMarks } from './register-marks.ts'
import { RULER_MM, ruler } from './ruler.ts'
import { at, text } from './shapes.ts'
import { tileMap } from './tile-map.ts'
import { type Tile, type Tiling, tiling } from './tiles.ts'
import { shortened, wrapped } from './type-width.ts'

/** Strip at the foot of every template: ruler, words, map. */
const FOOT_MM = 17
/** Paper around the panel, so that its edge shows whole. */
const BLEED_MM = 1
/** A template of more sheets than this is not worth gluing. Common practice, no source. */
const MOST_TILES = 40
/** Arms of a cross beyond the edge of its hole: they still show when the hole is cut out. */
const CROSS_MM = 2.5
const NOTE_MM = 2.2
const NOTE_LINE_MM = 2.8
const MAP = { lengthMm: 24, widthMm: 15 }

/** The bit or saw where it is not of the size of the hole. */
const sawSaid = ({ drillMm, diameterMm }: Hole): string =>
  drillMm === null || drillMm === diameterMm ? '' : `, saw ${figure(drillMm)}`

/** True-size holes with crosses that reach beyond their edges, and what they are. */
const holeMarks = (panel: Panel): Shape[] => [
  ...panel.holes.flatMap((hole) => [holeEdge(hole), centreMark(hole, CROSS_MM, 'mark')]),
  ...boltCircles(panel),
  ...holeLabels(panel, {
    placement: { origin: at(0, 0), scale: 1 },
    besideMm: 0,
    nameOf: (hole) => `${hole.id} ${holeSizeSaid(hole)}${sawSaid(hole)}`,
  }),
]

const ORDER = 'Print at 100 % (actual size), measure the ruler before drilling.'

/** The caution of the drill, above the ruler. */
const cautionShapes = (): Shape[] =>
  wrapped(DRILL_CAUTION, RULER_MM, NOTE_MM).map((words, index) =>
    text(at(MARGIN_MM + 1, MARGIN_MM + 13 - NOTE_LINE_MM * index), words, { sizeMm: NOTE_MM }),
  )

/** Sentences about bands that are missing yet, over the whole width above the foot. */
const bandLines = (panel: Panel, paper: Paper): string[] =>
  missingBandsSaid(panel).flatMap((said) =>
    wrapped(said, paper.widthMm - 2 * MARGIN_MM - 2, NOTE_MM, 'heading'),
  )

/** Height of the strip at the foot, mm. */
const footMm = (panel: Panel, paper: Paper): number => {
  const lines = bandLines(panel, paper).length
  return FOOT_MM + (lines === 0 ? 0 : NOTE_LINE_MM * lines + 1)
}

function footShapes(panel: Panel, plan: Tiling, tile: Tile, job: Job, paper: Paper): Shape[] {
  const many = plan.tiles.length > 1
  const left = MARGIN_MM + RULER_MM + 8
  const mapMm = many ? MAP.lengthMm + 3 : 0
  const roomMm = paper.widthMm - MARGIN_MM - left - mapMm
  const title = titled(`Template ${panel.id}`, job)
  const said = `${many ? `sheet ${tile.name} of ${plan.tiles.length}, ` : ''}${sizeSaid(panel)} mm, ${plural(panel.count, 'piece')}`
  const glue = many ? ' Cut along the dashes, lay the rings on each other.' : ''
  const notes = wrapped(`${ORDER}${glue}`, roomMm, NOTE_MM, 'heading')
  return [
    ...ruler(at(MARGIN_MM + 1, MARGIN_MM + 1)),
    ...cautionShapes(),
    ...bandLines(panel, paper)
      .reverse()
      .map((words, index) =>
        text(at(MARGIN_MM + 1, MARGIN_MM + FOOT_MM + NOTE_LINE_MM * index), words, {
          sizeMm: NOTE_MM,
          role: 'heading',
        }),
      ),
    text(at(left, MARGIN_MM + 12.2), shortened(title, roomMm, 3, 'heading'), { sizeMm: 3, role: 'heading' }),
    text(at(left, MARGIN_MM + 8.9), shortened(said, roomMm, NOTE_MM), { sizeMm: NOTE_MM }),
    ...notes.map((note, index) =>
      text(at(left, MARGIN_MM + 6.1 - NOTE_LINE_MM * index), note, { sizeMm: NOTE_MM, role: 'heading' }),
    ),
    ...(many ? tileMap(at(paper.widthMm - MARGIN_MM - MAP.lengthMm, MARGIN_MM), plan, tile, MAP) : []),
  ]
}

/** Where the thing shows on a template page. */
const roomOf = (panel: Panel, paper: Paper): Rectangle => ({
  xMm: MARGIN_MM,
  yMm: MARGIN_MM + footMm(panel, paper),
  lengthMm: paper.widthMm - 2 * MARGIN_MM,
  widthMm: paper.heightMm - 2 * MARGIN_MM - footMm(panel, paper),
})

function tilePage(panel: Panel, plan: Tiling, tile: Tile, job: Job, paper: Paper): Drawing {
  const room = roomOf(panel, paper)
  const shown: Layer = {
    shapes: [
      panelEdge(panel, 'mark'),
      ...woodEdges(panel),
      ...holeMarks(panel),
      ...registerMarks(tile, plan),
    ],
    window: tile.window,
  }
  return {
    ...paper,
    title: titled(`Template ${panel.id}, sheet ${tile.name}`, job),
    says: `${panel.id} at true size with the centres of ${plural(panel.holes.length, 'hole')}. ${[ORDER, ...missingBandsSaid(panel), DRILL_CAUTION].join(' ')}`,
    layers: [
      moved(shown, at(room.xMm - tile.window.xMm, room.yMm - tile.window.yMm)),
      { shapes: footShapes(panel, plan, tile, job, paper) },
    ],
  }
}

const tooLarge = (panel: Panel, { tiles }: Tiling, job: Job, paper: Paper): Drawing =>
  page(
    paper,
    {
      title: titled(`Template ${panel.id}`, job),
      subtitle: `left out: it would take ${plural(tiles.length, 'sheet')}; mark the holes from the drawing of the panel`,
      notes: [],
    },
    [],
  )

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
    plan: tiling(thing, roomOf(panel, paper)),
  }))
  const best = second!.plan.tiles.length < first!.plan.tiles.length ? second! : first!
  return best.plan.tiles.length > MOST_TILES
    ? [tooLarge(panel, best.plan, job, best.paper)]
    : best.plan.tiles.map((tile) => tilePage(panel, best.plan, tile, job, best.paper))
}

/** true for a panel that is drilled; windows of braces are marked from the drawing. */
const isDrilled = ({ holes }: Panel): boolean => holes.some(({ kind }) => kind !== 'window')

/** True-size drilling templates of every panel that is drilled. */
export const templatePages = ({ panels }: Pick<Drawn, 'panels'>, job: Job, size: PaperSize): Drawing[] =>
  panels.filter(isDrilled).flatMap((panel) => templateOf(panel, job, size))
