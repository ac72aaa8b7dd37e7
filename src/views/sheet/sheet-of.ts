import { say } from '../../core/say.ts'
import type { Design } from '../../schema/design.ts'
import type { DesignCheckSections, Material } from '../../schema/design-check.ts'
import type { Assumption, Finding, Verdict } from '../../schema/frame.ts'
import { excursionPicture } from '../chart/excursion.ts'
import { loadImpedancePicture } from '../chart/impedance.ts'
import { responsePicture } from '../chart/response.ts'
import type { PaperSize } from '../drawing/paper.ts'
import { designCircuit } from '../wiring/design-circuit.ts'
import { wiringDrawing } from '../wiring/wiring-drawing.ts'
import type { Block, Column, Section, Sheet } from './block.ts'
import { figuresSection } from './figures-section.ts'
import { linkSection } from './link-section.ts'
import { boxSection, cuttingSection, holeSection, panelSection, sawingSection } from './panel-sections.ts'
import { readingsSection } from './readings-section.ts'
import { stepsOf } from './steps.ts'

/** What the sheet is made from: the whole answer of a design check. */
export type Checked = DesignCheckSections & {
  answer: string
  verdict: Verdict
  findings: readonly Finding[]
  assumptions: readonly Assumption[]
  cautions: readonly string[]
}

/** A sheet to make. */
export interface SheetOrder {
  checked: Checked
  design: Design
  /** Scheme and host of the service, for the code that leads back to it. */
  origin: string
  paper: PaperSize
}

const VERDICTS: Record<Verdict, string> = {
  ready: 'Ready to build',
  review: 'Read the warnings first',
  blocked: 'Do not build it like this',
}

/** The sheet a maker takes to the saw, with all it says; how it is printed is decided elsewhere. */
export function sheetOf({ checked, design, origin, paper }: SheetOrder): Sheet {
  const sections = [
    { heading: 'What to mind', blocks: checked.findings.map(findingBlock) },
    figuresSection(checked, design),
    panelSection(checked),
    cuttingSection(checked, design, paper),
    sawingSection(checked),
    holeSection(checked, design, paper),
    boxSection(checked, design, paper),
    wiringSection(checked, design),
    materialSection(checked),
    stepSection(checked),
    readingsSection(checked),
    linkSection(design, origin),
    chartSection(checked, design),
    assumptionSection(checked),
  ]
  return {
    title: design.name ?? 'Build sheet',
    verdict: checked.verdict,
    said: VERDICTS[checked.verdict],
    answer: checked.answer,
    sections: sections.filter(({ blocks }) => blocks.length > 0),
  }
}

const findingBlock = ({ severity, message, remedies }: Finding): Block => ({
  kind: 'finding',
  severity,
  message,
  remedies,
})

function wiringSection(checked: Checked, design: Design): Section {
  const circuit = designCircuit(checked, design)
  return {
    heading: 'Wiring',
    blocks: circuit === null ? [] : [{ kind: 'drawing', id: 'wiring', drawing: wiringDrawing(circuit) }],
  }
}

const MATERIAL_COLUMNS: readonly Column[] = [
  { title: 'What', share: 0.34 },
  { title: 'How much', share: 0.12, isNumber: true },
  { title: 'Note', share: 0.54 },
]

/** An amount to buy: never less than is needed, and not more exact than a shop is. */
function amountSaid({ count, unit }: Pick<Material, 'count' | 'unit'>): string {
  if (unit === '') return String(count)
  const step = 10 ** (Math.floor(Math.log10(Math.max(count, 0.01))) - 1)
  return say(step * Math.ceil(count / step - 1e-9), unit, 2)
}

const materialSection = ({ materials }: Checked): Section => ({
  heading: 'What to buy or find',
  blocks: [
    {
      kind: 'table',
      columns: MATERIAL_COLUMNS,
      rows: materials.map((material) => [material.item, amountSaid(material), material.note]),
    },
  ],
})

const stepSection = (checked: Checked): Section => ({
  heading: 'Step by step',
  blocks: stepsOf(checked, checked.cautions).flatMap(({ title, tasks, cautions }, index): Block[] => [
    { kind: 'heading', text: `${index + 1}. ${title}` },
    ...cautions.map((text) => ({ kind: 'caution' as const, text })),
    { kind: 'list', items: tasks },
  ]),
})

const chartSection = (checked: Checked, design: Design): Section => ({
  heading: 'What it does',
  blocks: [
    { kind: 'chart', svg: responsePicture(checked, { lowestHz: design.wants?.lowestHz }) },
    { kind: 'chart', svg: excursionPicture(checked) },
    { kind: 'chart', svg: loadImpedancePicture(checked) },
  ],
})

const assumedSaid = ({ value, unit }: Assumption): string => {
  if (typeof value === 'number') return `${Number(value.toPrecision(4))} ${unit}`.trim()
  return value === null ? 'none' : `${value} ${unit}`.trim()
}

/** The fields of a pointer as words: "box, leakageQ". */
const fieldSaid = ({ at }: Assumption): string => at.split('/').slice(1).join(', ')

const assumptionSection = ({ assumptions }: Checked): Section => ({
  heading: 'Taken where nothing was said',
  blocks:
    assumptions.length === 0
      ? []
      : [
          {
            kind: 'table',
            columns: [
              { title: 'Field', share: 0.34 },
              { title: 'Taken as', share: 0.16 },
              { title: 'Why', share: 0.5 },
            ],
            rows: assumptions.map((row) => [fieldSaid(row), assumedSaid(row), row.why]),
          },
        ],
})
