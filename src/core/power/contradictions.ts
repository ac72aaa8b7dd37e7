import type { Amplifier, Supply } from '../../schema/power.ts'
import type { Fault } from '../outcome.ts'
import { volt } from '../say.ts'
import { packVoltages } from './battery.ts'
import { BUS, mayHaveUsb } from './source.ts'

/** Three cells of 4.2 V are 12.6 V, whatever floating point makes of it. */
const DUST = 1e-9

/** Whether the socket gives its one voltage and nothing else; a computer port without a name is such a one. */
const hasPlainSocket = ({ kind, port }: Supply): boolean =>
  port === undefined ? kind === 'computer-port' : port !== 'power-delivery'

const isOutside = (value: number, least: number, most: number): boolean =>
  value < least * (1 - DUST) || value > most * (1 + DUST)

/** A contradiction between two values of a supply, as a row. */
interface Contradiction {
  at: string
  when: (supply: Supply) => boolean
  message: (supply: Supply) => string
}

const SUPPLY_CONTRADICTIONS: readonly Contradiction[] = [
  {
    at: '/supply/port',
    when: (supply) => supply.port !== undefined && !mayHaveUsb(supply),
    message: ({ kind }) =>
      `A USB socket belongs to computer-port, charger or power-bank, not to ${kind}; leave it out or change the kind.`,
  },
  {
    at: '/supply/voltageV',
    when: (supply) =>
      supply.voltageV !== undefined &&
      mayHaveUsb(supply) &&
      hasPlainSocket(supply) &&
      isOutside(supply.voltageV, BUS.sourceMinV, BUS.typeCSourceMaxV),
    message: ({ voltageV = 0 }) =>
      `This socket gives ${BUS.sourceMinV} to ${BUS.typeCSourceMaxV} V, not ${volt(voltageV)}; only power-delivery gives more.`,
  },
  {
    at: '/supply/voltageV',
    when: ({ kind, voltageV, cellsInSeries }) => {
      if (kind !== 'cells' || voltageV === undefined || cellsInSeries === undefined) return false
      const { emptyV, fullV } = packVoltages(cellsInSeries)
      return isOutside(voltageV, emptyV, fullV)
    },
    message: ({ voltageV = 0, cellsInSeries = 1 }) => {
      const { emptyV, fullV } = packVoltages(cellsInSeries)
      const pack =
        cellsInSeries === 1 ? 'One lithium cell has' : `${cellsInSeries} lithium cells in series have`
      return `${pack} ${volt(emptyV)} to ${volt(fullV)}, not ${volt(voltageV)}; correct one of the two, or leave the voltage out.`
    },
  },
  {
    at: '/supply/cable/areaMm2',
    when: ({ cable }) => cable?.gaugeAwg !== undefined && cable.areaMm2 !== undefined,
    message: () => 'Give one of gaugeAwg and areaMm2, not both.',
  },
]

/** What contradicts within a supply, every contradiction with its place in the request. */
export const supplyFaults = (supply: Supply): Fault[] =>
  SUPPLY_CONTRADICTIONS.filter(({ when }) => when(supply)).map(({ at, message }) => ({
    at,
    message: message(supply),
  }))

/** What contradicts within an amplifier; nothing when there is none. */
export function amplifierFaults({ minimumSupplyV, maximumSupplyV }: Amplifier = {}): Fault[] {
  return minimumSupplyV !== undefined && maximumSupplyV !== undefined && minimumSupplyV > maximumSupplyV
    ? [
        {
          at: '/amplifier/minimumSupplyV',
          message: `It must not be above maximumSupplyV, ${volt(maximumSupplyV)}.`,
        },
      ]
    : []
}
