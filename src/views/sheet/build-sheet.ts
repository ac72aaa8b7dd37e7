import { decibel, hertz, say } from '../../core/say.ts'
import type { Design } from '../../schema/design.ts'
import type { DesignCheckSections } from '../../schema/design-check.ts'
import type { Finding, Verdict } from '../../schema/frame.ts'
import { responsePicture } from '../chart/response.ts'
import { boxSvg, cuttingSvg } from '../drawing/cut-list-drawings.ts'
import { designWiringSvg } from '../wiring/design-circuit.ts'
import { htmlText, list, paragraph, table } from './html-text.ts'
import { SHEET_STYLE } from './sheet-style.ts'
import { stepsOf } from './steps.ts'

/** What the sheet is made from: the whole answer of a design check. */
export type Checked = DesignCheckSections & {
  answer: string
  verdict: Verdict
  findings: readonly Finding[]
  cautions: readonly string[]
}

const VERDICTS: Record<Verdict, string> = {
  ready: 'Ready to build',
  review: 'Read the warnings first',
  blocked: 'Do not build it like this',
}

const rounded = (value: number): number => Math.round(value * 10) / 10

/** The sheet a maker takes to the saw, as a page of its own: it asks no other host and prints on A4 and Letter. */
export function buildSheet(checked: Checked, design: Design): string {
  const title = design.name ?? 'Build sheet'
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${htmlText(title)}</title>
<style>${SHEET_STYLE}</style>
</head>
<body>
<h1>${htmlText(title)}</h1>
<p class="verdict ${checked.verdict}">${VERDICTS[checked.verdict]}</p>
${paragraph(checked.answer)}
${sections(checked, design)
  .filter(({ html }) => html !== '')
  .map(({ heading, html }) => `<section><h2>${heading}</h2>\n${html}</section>`)
  .join('\n')}
</body>
</html>
`
}

const sections = (checked: Checked, design: Design): { heading: string; html: string }[] => [
  { heading: 'What to mind', html: findings(checked) },
  { heading: 'What to buy or find', html: materials(checked) },
  { heading: 'Step by step', html: steps(checked) },
  { heading: 'Panels', html: panels(checked) },
  { heading: 'Cutting diagram', html: cuttingSvg(checked, design) ?? '' },
  { heading: 'Sawing order', html: cuts(checked) },
  { heading: 'Holes', html: holes(checked) },
  { heading: 'The box', html: boxSvg(checked, design) ?? '' },
  { heading: 'Wiring', html: designWiringSvg(checked, design) ?? '' },
  { heading: 'What it does', html: responsePicture(checked, { lowestHz: design.wants?.lowestHz }) },
  { heading: 'What a meter should show', html: readings(checked) },
]

const findings = ({ findings: rows }: Checked): string =>
  rows
    .map(
      ({ severity, message, remedies }) =>
        `<div class="finding ${severity}"><p><strong>${severity}:</strong> ${htmlText(message)}</p>${list(remedies)}</div>`,
    )
    .join('\n')

const materials = ({ materials: rows, hardware }: Checked): string =>
  table(
    ['What', 'How much', 'Note'],
    [
      ...rows.map(({ item, count, unit, note }) => [item, say(count, unit).trim(), note]),
      ...hardware
        .filter(({ item }) => rows.every((row) => row.item !== item))
        .map(({ item, count, unit = '', note }) => [item, say(count, unit).trim(), note]),
    ],
  )

const steps = (checked: Checked): string =>
  `<ol class="steps">${stepsOf(checked, checked.cautions)
    .map(
      ({ title, tasks, cautions }) =>
        `<li><h3>${title}</h3>${list(tasks)}${cautions.map((caution) => `<p class="caution">${htmlText(caution)}</p>`).join('')}</li>`,
    )
    .join('')}</ol>`

const panels = ({ panels: rows }: Checked): string =>
  table(
    ['Panel', 'Pieces', 'Saw to, mm', 'Thick, mm', 'Band', 'Mass, kg'],
    rows.map(({ id, count, sawLengthMm, sawWidthMm, thicknessMm, bandedEdges, massKg }) => [
      id,
      count,
      `${rounded(sawLengthMm)} by ${rounded(sawWidthMm)}`,
      thicknessMm === null ? '' : rounded(thicknessMm),
      bandedEdges.join(', '),
      massKg === null ? '' : Math.round(massKg * 100) / 100,
    ]),
  )

const cuts = ({ cuts: rows, sheets }: Checked): string =>
  table(
    ['Board', 'Cut', 'Saw runs', 'At, mm', 'Then done'],
    rows.map(({ sheet, step, direction, atMm, trim, leaves }) => [
      `${sheets[sheet]?.stock ?? ''} ${sheets[sheet]?.index ?? ''}`.trim(),
      step,
      direction === 'along' ? 'along the board' : 'across the board',
      rounded(atMm),
      trim ? 'trims the edge' : leaves.join(', '),
    ]),
  )

const holes = ({ panels: rows }: Checked): string =>
  rows
    .filter((panel) => panel.holes.length > 0)
    .map(
      (panel) =>
        `<h3>${htmlText(panel.id)}, from its lower left corner, seen from outside</h3>${table(
          ['Hole', 'x, mm', 'y, mm', 'Size, mm', 'How'],
          panel.holes.map(({ id, xMm, yMm, diameterMm, slotWidthMm, slotHeightMm, toolNote }) => [
            id,
            rounded(xMm),
            rounded(yMm),
            diameterMm === null
              ? `${rounded(slotWidthMm ?? 0)} by ${rounded(slotHeightMm ?? 0)}`
              : rounded(diameterMm),
            toolNote,
          ]),
        )}`,
    )
    .join('\n')

const readings = ({ readings: rows, tuning, limits }: Checked): string =>
  `${table(
    ['Test', 'Should show', 'Fine from', 'to', 'If not'],
    rows.map(({ test, expected, from, to, unit, ifNot }) => [
      test,
      say(expected, unit),
      say(from, unit),
      say(to, unit),
      ifNot,
    ]),
  )}${paragraph(
    `Loudest before something gives: ${decibel(limits.maximumSplDb)} at 1 m${tuning.f3Hz === null ? '' : `, half the power at ${hertz(tuning.f3Hz)}`}.`,
  )}`
