import type { Design } from '../../schema/design.ts'
import type { DesignCheckSections } from '../../schema/design-check.ts'
import type { Panel } from '../../schema/panel.ts'
import { notPlacedSaid } from '../drawing/board-heading.ts'
import { boxPages } from '../drawing/box-page.ts'
import { cuttingPages, diagramPages } from '../drawing/cutting-pages.ts'
import { figure, sizeSaid } from '../drawing/figures.ts'
import { HOLE_COLUMNS, holeRows } from '../drawing/hole-rows.ts'
import { panelPages } from '../drawing/panel-pages.ts'
import type { PaperSize } from '../drawing/paper.ts'
import { templatePages } from '../drawing/template-pages.ts'
import type { Block, Column, OnPage, Section } from './block.ts'
import { fitsASheet, trueSizeTemplate } from './true-size-template.ts'

type Checked = DesignCheckSections & { cautions: readonly string[] }

const PANEL_COLUMNS: readonly Column[] = [
  { title: 'Panel', share: 0.2 },
  { title: 'Pieces', share: 0.1, isNumber: true },
  { title: 'Saw to, mm', share: 0.18, isNumber: true },
  { title: 'Finished, mm', share: 0.18, isNumber: true },
  { title: 'Thick, mm', share: 0.12, isNumber: true },
  { title: 'Band on', share: 0.12 },
  { title: 'Mass, kg', share: 0.1, isNumber: true },
]

const bandsSaid = ({ bandedEdges }: Panel): string =>
  bandedEdges.length === 4 ? 'all edges' : bandedEdges.join(', ')

const panelRow = (panel: Panel): string[] => [
  panel.id,
  String(panel.count),
  sizeSaid({ lengthMm: panel.sawLengthMm, widthMm: panel.sawWidthMm }),
  sizeSaid(panel),
  panel.thicknessMm === null ? '' : figure(panel.thicknessMm),
  bandsSaid(panel),
  panel.massKg === null ? '' : panel.massKg.toFixed(2),
]

/** What to saw. */
export function panelSection(checked: Checked): Section {
  const blocks: Block[] = [
    { kind: 'table', columns: PANEL_COLUMNS, rows: checked.panels.map(panelRow) },
    ...notPlacedSaid(checked).map((text) => ({ kind: 'paragraph' as const, text })),
  ]
  return { heading: 'Cut list', blocks: checked.panels.length === 0 ? [] : blocks }
}

const CUT_COLUMNS: readonly Column[] = [
  { title: 'Board', share: 0.2 },
  { title: 'Cut', share: 0.08, isNumber: true },
  { title: 'Saw runs', share: 0.2 },
  { title: 'At, mm', share: 0.12, isNumber: true },
  { title: 'Then done', share: 0.4 },
]

const cutRows = ({ cuts, sheets }: Checked): string[][] =>
  cuts.map(({ sheet, step, direction, atMm, trim, leaves }) => {
    const board = sheets[sheet]
    return [
      board === undefined ? '' : `${board.stock} ${board.index}`,
      String(step),
      `${direction} the board`,
      figure(atMm),
      trim ? 'trims the edge' : leaves.join(', '),
    ]
  })

/** Where to saw: a page for each board. */
export function cuttingSection(checked: Checked, design: Design, paper: PaperSize): Section {
  const diagrams = checked.sheets.flatMap((_, index) => diagramPages(checked, design, index, paper))
  const block: Block = {
    kind: 'pages',
    what: 'Cutting diagrams with the sawing order',
    pages: cuttingPages(checked, design, paper),
    instead: diagrams.map((drawing, index) => ({ kind: 'drawing', id: `cutting-${index + 1}`, drawing })),
  }
  return { heading: 'Cutting diagram', blocks: block.pages.length === 0 ? [] : [block] }
}

/** The cuts in their order for a page of the web; on paper they stand behind each diagram. */
export const sawingSection = (checked: Checked): Section => ({
  heading: 'Sawing order',
  blocks:
    checked.cuts.length === 0
      ? []
      : [
          {
            kind: 'pages',
            what: '',
            pages: [],
            instead: [{ kind: 'table', columns: CUT_COLUMNS, rows: cutRows(checked) }],
          },
        ],
})

const drilled = ({ panels }: Checked): Panel[] => panels.filter(({ holes }) => holes.length > 0)

const HOLES_MM = HOLE_COLUMNS.reduce((sum, { widthMm }) => sum + widthMm, 0)

const holeColumns: readonly Column[] = HOLE_COLUMNS.map(({ title, widthMm }, index) => ({
  title,
  share: widthMm / HOLES_MM,
  isNumber: index === 1 || index === 2,
}))

function template(panel: Panel): OnPage {
  const id = `template-${panel.id.replace(/\W+/g, '-')}`
  return fitsASheet(panel)
    ? { kind: 'true-size', id, drawing: trueSizeTemplate(panel) }
    : {
        kind: 'paragraph',
        text: `The template of ${panel.id} is larger than a sheet of paper: the PDF has it in sheets to glue together.`,
      }
}

/** Where to drill: tables, and templates at true size. */
export function holeSection(checked: Checked, design: Design, paper: PaperSize): Section {
  const panels = drilled(checked)
  const tables = panels.flatMap((panel): Block[] => [
    {
      kind: 'heading',
      text: `${panel.id}, seen from outside: x and y from its lower left corner, sizes in mm`,
    },
    { kind: 'table', columns: holeColumns, rows: holeRows(panel.holes) },
  ])
  const pages = [...panelPages(checked, design, paper), ...templatePages(checked, design, paper)]
  return {
    heading: 'Holes',
    blocks:
      panels.length === 0
        ? []
        : [
            ...tables,
            {
              kind: 'pages',
              what: 'Panels with their sizes, and drilling templates at true size',
              pages,
              instead: panels.map(template),
            },
          ],
  }
}

/** How the panels stand to each other. */
export function boxSection(checked: Checked, design: Design, paper: PaperSize): Section {
  const pages = boxPages(checked, design, paper)
  return {
    heading: 'The box',
    blocks:
      pages.length === 0
        ? []
        : [
            {
              kind: 'pages',
              what: 'The box from the front and taken apart',
              pages,
              instead: pages.map((drawing) => ({ kind: 'drawing' as const, id: 'box', drawing })),
            },
          ],
  }
}
