import { escaped } from '../views/markup-text.ts'

/** A cell that asks the service: what it shows, its unit, and the fields of the calculation from cells above. */
interface Asking {
  label: string
  unit: string
  path: string
  fields: Readonly<Record<string, string>>
  pick: string
}

/** What the maker types in, row by row from row 4: name of the field, value, unit. */
const INPUTS = [
  ['Free air in the box', 4, 'L'],
  ['Inner diameter of the tube', 30, 'mm'],
  ['Wanted tuning', 80, 'Hz'],
  ['Resonance of the driver', 110, 'Hz'],
  ['Total Q of the driver', 0.45, ''],
  ['Equivalent air of the driver', 2.5, 'L'],
  ['Area of the cone', 50, 'cm2'],
  ['Resistance of the driver by a meter', 3.4, 'ohm'],
  ['Supply of the amplifier board', 12, 'V'],
  ['Load of a channel', 4, 'ohm'],
] as const

const FIRST_INPUT = 4
const FIRST_ANSWER = FIRST_INPUT + INPUTS.length + 2
const cell = (input: number): string => `$B$${FIRST_INPUT + input}`

const PORT = { netVolumeL: cell(0), innerDiameterMm: cell(1), tuningHz: cell(2) }
const CLOSED = {
  'driver.fsHz': cell(3),
  'driver.qts': cell(4),
  'driver.vasL': cell(5),
  'driver.sdCm2': cell(6),
  'driver.reOhm': cell(7),
  'box.kind': '"closed"',
  'box.netVolumeL': cell(0),
}
const VENTED = {
  ...CLOSED,
  'box.kind': '"vented"',
  'port.innerDiameterMm': cell(1),
  'port.tuningHz': cell(2),
}
const POWER = {
  'amplifier.supplyVoltageV': cell(8),
  'amplifier.output': '"bridge"',
  'supply.kind': '"adapter"',
  'supply.voltageV': cell(8),
  'supply.currentLimitA': '2',
  loadOhm: cell(9),
}

const ASKING: readonly Asking[] = [
  { label: 'Length of the tube', unit: 'mm', path: 'port', fields: PORT, pick: 'port.lengthMm' },
  {
    label: 'First resonance of the tube',
    unit: 'Hz',
    path: 'port',
    fields: PORT,
    pick: 'port.pipeResonanceHz',
  },
  { label: 'Closed: resonance', unit: 'Hz', path: 'box-tuning', fields: CLOSED, pick: 'tuning.fcHz' },
  { label: 'Closed: total Q', unit: '', path: 'box-tuning', fields: CLOSED, pick: 'tuning.qtc' },
  {
    label: 'Closed: down by half the power',
    unit: 'Hz',
    path: 'box-tuning',
    fields: CLOSED,
    pick: 'tuning.f3Hz',
  },
  {
    label: 'Vented: down by half the power',
    unit: 'Hz',
    path: 'box-tuning',
    fields: VENTED,
    pick: 'tuning.f3Hz',
  },
  {
    label: 'Vented: length of the tube',
    unit: 'mm',
    path: 'box-tuning',
    fields: VENTED,
    pick: 'port.lengthMm',
  },
  {
    label: 'Clean power of a channel',
    unit: 'W',
    path: 'power-budget',
    fields: POWER,
    pick: 'power.cleanPowerW',
  },
  {
    label: 'Current of the supply with music',
    unit: 'A',
    path: 'power-budget',
    fields: POWER,
    pick: 'supply.programmeA',
  },
  { label: 'Verdict on the supply', unit: '', path: 'power-budget', fields: POWER, pick: 'verdict' },
]

/**
 * A workbook whose cells ask this service, as flat OpenDocument (ISO/IEC 26300). A number is taken by NUMBERVALUE with
 * a decimal point, which reads it in every language of the sheet; a fault shows as its text.
 */
export function exampleSheet(address: string): string {
  const inputs = INPUTS.map(([label, value, unit]) => row(text(label), number(value), text(unit)))
  const answers = ASKING.map((asking) =>
    row(text(asking.label), formula(formulaOf(asking)), text(asking.unit)),
  )
  return `<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet">
<office:automatic-styles>
<style:style style:name="wide" style:family="table-column"><style:table-column-properties style:column-width="75mm"/></style:style>
</office:automatic-styles>
<office:body><office:spreadsheet><table:table table:name="Box">
<table:table-column table:style-name="wide"/><table:table-column table:style-name="wide"/><table:table-column/>
${[
  row(text('Address of the service'), text(address)),
  row(),
  row(text('Type in here')),
  ...inputs,
  row(),
  row(text('The service answers')),
  ...answers,
].join('\n')}
</table:table></office:spreadsheet></office:body>
</office:document>
`
}

/** Rows of the answers, for whoever reads the workbook by a program: the first one, and how many. */
export const ANSWER_ROWS = { first: FIRST_ANSWER, count: ASKING.length }

/** A sheet writes its numbers with its own decimal mark; the service gets a point. */
function formulaOf({ path, fields, pick }: Asking): string {
  const query = Object.entries(fields).map(([name, value], index) => {
    const constant = value.startsWith('"') ? value.slice(1, -1) : /^\d/.test(value) ? value : undefined
    const lead = `${index === 0 ? '?' : '&'}${name}=`
    return constant === undefined
      ? `&"${lead}"&COM.MICROSOFT.ENCODEURL(SUBSTITUTE([.${value}];",";"."))`
      : `&"${lead}${constant}"`
  })
  const ask = `COM.MICROSOFT.WEBSERVICE([.$B$1]&"/v1/${path}"${query.join('')}&"&errors=text&pick=${pick}")`
  return pick === 'verdict' ? `of:=${ask}` : `of:=IFERROR(NUMBERVALUE(${ask};".");${ask})`
}

const row = (...cells: string[]): string =>
  `<table:table-row>${cells.length === 0 ? '<table:table-cell/>' : cells.join('')}</table:table-row>`

const text = (value: string): string =>
  `<table:table-cell office:value-type="string"><text:p>${escaped(value)}</text:p></table:table-cell>`

const number = (value: number): string =>
  `<table:table-cell office:value-type="float" office:value="${value}"/>`

const formula = (value: string): string => `<table:table-cell table:formula="${escaped(value)}"/>`
