import type { Assumption } from '../../schema/frame.ts'
import type { Amplifier, Supply } from '../../schema/power.ts'
import type { Refusal } from '../outcome.ts'
import { cellsInSeriesOf, packVoltages } from './battery.ts'
import { mustBeAsked, PORTS, powerDeliveryCurrentA, powerDeliveryLevelV } from './source.ts'

/** What is known of the source, with what its kind and its socket add. */
export interface Source {
  kind: Supply['kind']
  port: Supply['port']
  voltageV: number
  /** An empty and a full pack, else both the same as voltageV. */
  lowestVoltageV: number
  highestVoltageV: number
  /** Lithium cells in series, given or told from the voltage; null for other sources and packs of other cells. */
  cellsInSeries: number | null
  currentLimitA: number | null
}

interface Voltage {
  voltageV: number
  why: string | undefined
}

/**
 * Voltage and current limit of the source: as given, else by its socket, its cells, its kind or the amplifier.
 * @returns the source and what was filled in; faults when no voltage can be had
 */
export function sourceOf(
  supply: Supply,
  amplifier: Amplifier,
): { source: Source; assumptions: Assumption[] } | Refusal {
  const voltage = voltageOf(supply, amplifier)
  if (voltage === undefined)
    return {
      faults: [
        {
          at: '/supply/voltageV',
          message: 'Give the voltage of the source, or supplyVoltageV of the amplifier.',
        },
      ],
    }
  const limit = limitOf(supply, amplifier, voltage.voltageV)
  const cellsInSeries = cellsOf(supply, voltage.voltageV)
  return {
    source: {
      kind: supply.kind,
      port: supply.port,
      voltageV: voltage.voltageV,
      ...rangeOf(cellsInSeries, voltage.voltageV),
      cellsInSeries,
      currentLimitA: limit.currentLimitA,
    },
    assumptions: [
      ...filled('/supply/voltageV', voltage.voltageV, 'V', voltage.why),
      ...filled(
        '/supply/cellsInSeries',
        cellsInSeries,
        '',
        cellsInSeries === null || supply.cellsInSeries !== undefined ? undefined : '3.7 V a lithium cell',
      ),
      ...filled('/supply/currentLimitA', limit.currentLimitA ?? 'unknown', 'A', limit.why),
    ],
  }
}

const cellsOf = ({ kind, cellsInSeries }: Supply, voltageV: number): number | null =>
  kind === 'cells' ? (cellsInSeries ?? cellsInSeriesOf(voltageV)) : null

function rangeOf(
  cellsInSeries: number | null,
  voltageV: number,
): Pick<Source, 'lowestVoltageV' | 'highestVoltageV'> {
  if (cellsInSeries === null) return { lowestVoltageV: voltageV, highestVoltageV: voltageV }
  const { emptyV, fullV } = packVoltages(cellsInSeries)
  // A full pack may be given with a hair more than its cells have, by the rounding of floating point.
  return { lowestVoltageV: Math.min(voltageV, emptyV), highestVoltageV: Math.max(voltageV, fullV) }
}

const filled = (
  at: string,
  value: number | string | null,
  unit: string,
  why: string | undefined,
): Assumption[] => (why === undefined ? [] : [{ at, value, unit, why }])

function voltageOf(supply: Supply, amplifier: Amplifier): Voltage | undefined {
  if (supply.voltageV !== undefined) return { voltageV: supply.voltageV, why: undefined }
  if (supply.port === 'power-delivery' && amplifier.asksForPower === true) {
    const limit = amplifier.maximumSupplyV ?? amplifier.supplyVoltageV ?? 5
    return { voltageV: powerDeliveryLevelV(limit), why: 'highest negotiated level that the board stands' }
  }
  if (supply.port !== undefined)
    return { voltageV: PORTS[supply.port].voltageV, why: 'voltage of that socket' }
  if (supply.kind === 'computer-port') return { voltageV: 5, why: 'a computer port gives 5 V' }
  if (supply.kind === 'cells' && supply.cellsInSeries !== undefined)
    return { voltageV: packVoltages(supply.cellsInSeries).nominalV, why: '3.7 V a cell' }
  return amplifier.supplyVoltageV === undefined
    ? undefined
    : { voltageV: amplifier.supplyVoltageV, why: 'the voltage the amplifier runs on' }
}

interface Limit {
  currentLimitA: number | null
  why: string | undefined
}

const UNKNOWN_LIMIT = 'not known, so whether the source carries the current is not judged; its label tells'

/** What is given, but never more than a socket gives to a board that does not ask or through a lead not marked. */
function limitOf(supply: Supply, amplifier: Amplifier, voltageV: number): Limit {
  const given = supply.currentLimitA
  const ofSocket = socketLimitOf(supply, amplifier, voltageV)
  if (given === undefined) return ofSocket
  const isCapped =
    supply.port !== undefined && mustBeAsked(supply.port) && given > (ofSocket.currentLimitA ?? given)
  return isCapped ? ofSocket : { currentLimitA: given, why: undefined }
}

function socketLimitOf(supply: Supply, { asksForPower = false }: Amplifier, voltageV: number): Limit {
  if (supply.port !== undefined && mustBeAsked(supply.port) && !asksForPower)
    return {
      currentLimitA: PORTS['type-c-default'].currentLimitA,
      why: 'the default of a Type-C source: the board does not ask for more (asksForPower)',
    }
  if (supply.port === 'power-delivery') {
    const isMarked = supply.cable?.marked5A === true
    return {
      currentLimitA: powerDeliveryCurrentA(voltageV, isMarked),
      why: isMarked ? 'what that level may give' : 'what that level may give without a lead marked for 5 A',
    }
  }
  if (supply.port !== undefined)
    return { currentLimitA: PORTS[supply.port].currentLimitA, why: 'what the standard of that socket gives' }
  if (supply.kind === 'computer-port')
    return { currentLimitA: PORTS.usb2.currentLimitA, why: 'most computer ports give 0.5 A in practice' }
  return { currentLimitA: null, why: UNKNOWN_LIMIT }
}
