import type { Material } from '../../schema/design-check.ts'
import { mm, say } from '../say.ts'
import type { DesignFacts } from './design-facts.ts'

type Row = (facts: DesignFacts) => Material[]

const item = (name: string, count: number, unit: string, note: string): Material => ({
  item: name,
  count,
  unit,
  note,
})

const boxesOf = ({ design }: DesignFacts): number => design.boxes ?? 1

const drivers: Row = (facts) =>
  facts.design.drivers.map((driver) =>
    item(
      `driver "${driver.id}"`,
      boxesOf(facts) * (driver.count ?? 1),
      '',
      'as measured or as its data sheet says',
    ),
  )

const amplifier: Row = ({ design, plan, power }) => [
  item(
    'amplifier board',
    1,
    '',
    `${plan.channels} channel${plan.channels === 1 ? '' : 's'}, ${say(power.supply.voltageV, 'V')}, ${design.amplifier.output ?? 'bridge'} output`,
  ),
]

const supply: Row = ({ design, power }) => [
  item(
    `supply: ${design.supply.kind.replace('-', ' ')}`,
    1,
    '',
    `${say(power.supply.voltageV, 'V')}, at least ${say(power.supply.programmeA, 'A', 2)} for music and ${say(power.supply.sineA, 'A', 2)} for test tones; approved and closed`,
  ),
  item('fuse in the supply lead', 1, '', `${power.supply.fuseA} A, slow`),
]

const tube: Row = (facts) => {
  const { port } = facts.enclosure
  if (port === null || port.lengthMm === null || facts.design.port?.innerDiameterMm === undefined) return []
  const inner = mm(facts.design.port.innerDiameterMm)
  return [
    item(
      `tube, ${inner} inside, cut to ${mm(port.lengthMm)}`,
      boxesOf(facts) * port.geometry.count,
      '',
      'deburr both ends, round them if you can',
    ),
  ]
}

const board: Row = ({ cut }) => {
  const names = [...new Set(cut.sheets.map((sheet) => sheet.stock))]
  return names.map((name) => {
    const sheets = cut.sheets.filter((sheet) => sheet.stock === name)
    const [first] = sheets
    return item(
      `board "${name}"`,
      sheets.length,
      '',
      first === undefined ? '' : `${mm(first.lengthMm)} by ${mm(first.widthMm)}`,
    )
  })
}

const reservoir: Row = ({ design, power }) =>
  power.reservoir === null || design.supply.reservoirUf === undefined
    ? []
    : [
        item(
          `reservoir capacitor ${design.supply.reservoirUf} uF`,
          1,
          '',
          `marked ${power.reservoir.leastRatingV} V or more; mind the polarity`,
        ),
      ]

const indicator: Row = ({ power }) =>
  power.indicator === null || power.indicator.resistorOhm === null
    ? []
    : [
        item('indicator lamp', 1, '', `hole ${mm(power.indicator.holeMm)}`),
        item(`resistor ${power.indicator.resistorOhm} ohm`, 1, '', 'in series with the indicator'),
      ]

const signal: Row = ({ design, plan }) => {
  const control = design.signal?.volumeControl
  const capacitor = design.signal?.inputCapacitorUf
  return [
    ...(control === undefined
      ? []
      : [
          item(
            `volume control ${control.resistanceKohm} kohm, ${control.taper ?? 'audio'} taper`,
            1,
            '',
            `${plan.channels} gangs`,
          ),
        ]),
    ...(capacitor === undefined
      ? []
      : [item(`coupling capacitor ${capacitor} uF`, plan.channels, '', 'film')]),
  ]
}

const hardware: Row = ({ cut }) =>
  cut.hardware.map((row) => item(row.item, row.count, row.unit ?? '', row.note))

const LIST: readonly Row[] = [drivers, amplifier, supply, board, tube, hardware, reservoir, indicator, signal]

/** What to buy or find for the whole set. */
export const materialsOf = (facts: DesignFacts): Material[] => LIST.flatMap((row) => row(facts))
