import type { Material } from '../../schema/design-check.ts'
import { partsOf } from '../load/wiring-parts.ts'
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

const radiators: Row = (facts) => {
  const { passiveRadiator } = facts.design
  if (passiveRadiator === undefined) return []
  const mass =
    passiveRadiator.addedMassG === undefined ? '' : `, ${passiveRadiator.addedMassG} g added to each`
  return [
    item(
      'passive radiator',
      boxesOf(facts) * (passiveRadiator.count ?? 1),
      '',
      `resonance ${say(passiveRadiator.fsHz, 'Hz')}${mass}`,
    ),
  ]
}

const amplifier: Row = ({ design, plan, power }) => [
  item(
    'amplifier board',
    1,
    '',
    `${plan.channels} channel${plan.channels === 1 ? '' : 's'}, ${say(power.supply.voltageV, 'V')}, ${design.amplifier.output ?? 'bridge'} output`,
  ),
]

const supply: Row = ({ design, power }) => {
  const { kind } = design.supply
  const { voltageV, programmeA, worstA, fuseA } = power.supply
  const current = `at least ${say(programmeA, 'A', 2)} for music and ${say(worstA, 'A', 2)} for test tones`
  const note =
    kind === 'cells'
      ? `${design.supply.cellsInSeries ?? 1} in series with a protection board; ${current}; and the charger made for them`
      : `${say(voltageV, 'V')}, ${current}; ${kind === 'adapter' || kind === 'charger' ? 'approved and closed' : 'as it is'}`
  return [
    item(`supply: ${kind.replace('-', ' ')}`, 1, '', note),
    ...(design.supply.switchRatedA === undefined
      ? []
      : [item('switch', 1, '', `${power.supply.switchA} A direct current or more`)]),
    item('fuse', 1, '', `${fuseA} A, slow, ${kind === 'cells' ? 'at the cells' : 'in the supply lead'}`),
  ]
}

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

// A part is heated by what a full sine sends through it; twice that is a safe rating. Common practice, no source.
const crossover: Row = ({ plan, power }) => {
  const watts = say(2 * power.power.cleanPowerW, 'W', 2)
  const volts = say(2 * power.power.cleanVoltageV, 'V', 2)
  return partsOf(plan.wiring).flatMap(({ part }) => {
    if (typeof part === 'string') return []
    if ('resistorOhm' in part)
      return [
        item(
          `resistor ${part.resistorOhm} ohm`,
          plan.channels,
          '',
          `up to ${watts}; keep it off wood and lining`,
        ),
      ]
    if ('capacitorUf' in part)
      return [
        item(`capacitor ${part.capacitorUf} uF`, plan.channels, '', `film or bipolar, ${volts} or more`),
      ]
    const resistance = part.resistanceOhm === undefined ? '' : `, at most ${part.resistanceOhm} ohm`
    return [item(`coil ${part.inductorMh} mH`, plan.channels, '', `air core${resistance}`)]
  })
}

const outputCapacitor: Row = ({ design, plan, power, load }) =>
  power.power.outputCapacitorUf === null ||
  design.amplifier.outputCapacitorFitted === true ||
  // Nothing reads on a meter: a capacitor of the wiring already keeps direct current from the drivers.
  load.load.meterOhm === null
    ? []
    : [
        item(
          `output capacitor ${say(power.power.outputCapacitorUf, 'uF', 2)} or more`,
          plan.channels,
          '',
          `marked ${say(power.supply.highestVoltageV, 'V', 2)} or more, plus to the amplifier`,
        ),
      ]

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
        item(
          `resistor ${power.indicator.resistorOhm} ohm`,
          1,
          '',
          `${power.indicator.resistorRatingW} W, in series with the indicator`,
        ),
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
            `${plan.channels} gang${plan.channels === 1 ? '' : 's'}`,
          ),
        ]),
    ...(capacitor === undefined
      ? []
      : [item(`coupling capacitor ${capacitor} uF`, plan.channels, '', 'film')]),
  ]
}

const hardware: Row = ({ cut }) =>
  cut.hardware.map((row) => item(row.item, row.count, row.unit ?? '', row.note))

const LIST: readonly Row[] = [
  drivers,
  radiators,
  amplifier,
  supply,
  board,
  tube,
  hardware,
  crossover,
  outputCapacitor,
  reservoir,
  indicator,
  signal,
]

/** What to buy or find for the whole set. */
export const materialsOf = (facts: DesignFacts): Material[] => LIST.flatMap((row) => row(facts))
