import { cutListInBox } from '../../core/design/cut-list-in-box.ts'
import { CutListRequest, cutListSections } from '../../schema/cut-list.ts'
import { boxSvg, cuttingSvg, panelsDxf, panelsSvg } from '../../views/drawing/cut-list-drawings.ts'
import { calculation } from '../calculation.ts'
import { chosenPanel, chosenSheet } from '../drawing-choice.ts'
import { isHeavyLayout } from '../heavy-layout.ts'
import type { Aside } from '../heavy-work.ts'
import { printingOf } from '../printing.ts'
import { remembered } from '../recent-answers.ts'
import { cutListAnswer } from './answer.ts'

const isHeavy = (body: CutListRequest): boolean => (body.effort?.seconds ?? 0) > 0 || isHeavyLayout(body)

export const cutList = calculation({
  views: {
    svg: {
      cutting: ({ answer, body, options }) => cuttingSvg(answer, body, chosenSheet(answer, options)),
      panels: ({ answer, body, options }) => panelsSvg(answer, body, chosenPanel(answer, options)),
      box: ({ answer, body }) => boxSvg(answer, body),
    },
    pdf: ({ answer, body, options, aside: { heavyWork, waiting } }) =>
      heavyWork.cutListPdf(printingOf(answer, body, options), waiting()),
    dxf: ({ answer, options }) => panelsDxf(answer, chosenPanel(answer, options)),
  },
  path: '/v1/cut-list',
  operationId: 'cutList',
  summary: 'Panels, holes and a layout on the boards on hand',
  description:
    'Use this when the sides of a box with its drivers and port, or plain parts of any project, are known and it is asked what to saw, where to drill, whether the boards on hand yield it, in which order to cut, and which screws, glue and edging to get. It does not judge the sound: for that use box-tuning or design-check.',
  body: CutListRequest,
  sections: cutListSections,
  example: {
    box: {
      kind: 'closed',
      outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
      panelThicknessMm: 12,
      joint: 'butt',
    },
    boxes: 2,
    stock: [
      {
        id: 'ply offcut',
        lengthMm: 1220,
        widthMm: 400,
        thicknessMm: 12,
        count: 1,
        grain: 'length',
        trimMm: 5,
      },
    ],
    workshop: { kerfMm: 2.4 },
  },
  get: false,
  compute: remembered((body, { heavyWork, waiting }: Aside) =>
    isHeavy(body) ? heavyWork.cutList(body, waiting()) : cutListInBox(body),
  ),
  mainTable: 'panels',
  answer: cutListAnswer,
})
