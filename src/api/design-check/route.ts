import { designCheck as computeDesignCheck } from '../../core/design/design-check.ts'
import { Design } from '../../schema/design.ts'
import { designCheckSections } from '../../schema/design-check.ts'
import { airSpeedPicture } from '../../views/chart/air-speed.ts'
import { excursionPicture } from '../../views/chart/excursion.ts'
import { groupDelayPicture } from '../../views/chart/group-delay.ts'
import { loadImpedancePicture } from '../../views/chart/impedance.ts'
import { powerFlowPicture } from '../../views/chart/power-flow.ts'
import { responsePicture } from '../../views/chart/response.ts'
import { boxSvg, cuttingSvg, panelsDxf, panelsSvg } from '../../views/drawing/cut-list-drawings.ts'
import { htmlSheet } from '../../views/sheet/html-sheet.ts'
import { designWiringSvg } from '../../views/wiring/design-circuit.ts'
import { calculation } from '../calculation.ts'
import { chosenPanel, chosenSheet } from '../drawing-choice.ts'
import { isHeavyLayout } from '../heavy-layout.ts'
import type { Aside } from '../heavy-work.ts'
import { paperOf } from '../printing.ts'
import { remembered } from '../recent-answers.ts'
import { designCheckAnswer } from './answer.ts'
import { shelfPair } from './example.ts'

export const designCheck = calculation({
  views: {
    svg: {
      response: ({ answer, body }) =>
        responsePicture(answer, { name: body.name, lowestHz: body.wants?.lowestHz }),
      impedance: ({ answer, body }) => loadImpedancePicture(answer, body),
      excursion: ({ answer, body }) => excursionPicture(answer, body),
      'air-speed': ({ answer, body }) => airSpeedPicture(answer, body),
      'group-delay': ({ answer, body }) => groupDelayPicture(answer, body),
      'power-flow': ({ answer, body }) =>
        powerFlowPicture(answer, {
          ...body,
          amplifier: { channels: body.amplifier.channels ?? body.boxes ?? 1 },
        }),
      cutting: ({ answer, body, options }) => cuttingSvg(answer, body, chosenSheet(answer, options)),
      panels: ({ answer, body, options }) => panelsSvg(answer, body, chosenPanel(answer, options)),
      box: ({ answer, body }) => boxSvg(answer, body),
      wiring: ({ answer, body }) => designWiringSvg(answer, body),
    },
    pdf: ({ answer, body, options, origin, aside: { heavyWork, waiting } }) =>
      heavyWork.buildSheetPdf({ checked: answer, design: body, origin, paper: paperOf(options) }, waiting()),
    dxf: ({ answer, options }) => panelsDxf(answer, chosenPanel(answer, options)),
    html: ({ answer, body, origin }) => htmlSheet({ checked: answer, design: body, origin }),
  },
  path: '/v1/design-check',
  operationId: 'designCheck',
  summary: 'Will this build work?',
  description:
    'Use this when somebody has a whole build in mind, drivers, box, amplifier, supply and boards, and asks whether it will work before the first cut. It gives every section of the other calculations, one verdict, what to buy and what a meter should show at each test. For one question alone use box-tuning, port, load-impedance, power-budget or cut-list.',
  body: Design,
  sections: designCheckSections,
  example: shelfPair,
  get: false,
  compute: remembered((design, { heavyWork, waiting }: Aside) =>
    isHeavyLayout(design) ? heavyWork.designCheck(design, waiting()) : computeDesignCheck(design),
  ),
  mainTable: 'materials',
  answer: designCheckAnswer,
})
