import { E12, nextNotAbove } from './preferred-values.ts'

/** Voltage of a lithium cell: empty, nominal, full. Common practice, no source. */
export const CELL_V = { empty: 3, nominal: 3.7, full: 4.2 } as const
/** Average voltage of a cell over its discharge, V, and the share of its charge one should use. Common practice. */
const CELL_AVERAGE_V = 3.6
const USABLE_SHARE = 0.9
/** Efficiency of the converter in a power bank: 0.8 to 0.9. Common practice, no source. */
export const CONVERTER_EFFICIENCY = 0.85

/** Voltages of a pack of cells in series, V. */
export const packVoltages = (cellsInSeries: number) => ({
  emptyV: CELL_V.empty * cellsInSeries,
  nominalV: CELL_V.nominal * cellsInSeries,
  fullV: CELL_V.full * cellsInSeries,
})

/**
 * Lithium cells in series that a pack of this voltage has, from 3.7 V a cell; null when no number of them has it,
 * as with a converter behind the cells or cells of another kind. Common practice, no source.
 */
export function cellsInSeriesOf(voltageV: number): number | null {
  const nearest = Math.round(voltageV / CELL_V.nominal)
  const cells = [nearest, nearest + 1].find((count) => {
    const { emptyV, fullV } = packVoltages(count)
    return emptyV <= voltageV && voltageV <= fullV
  })
  return cells ?? null
}

/** Energy in a power bank, Wh: its capacity is stated at the cell voltage, not at the output. */
export const bankEnergyWh = (capacityMah: number): number => capacityMah * 1e-3 * CELL_V.nominal

/** Running time of a power bank, hours. Energy balance. */
export const bankHours = (
  capacityMah: number,
  outputV: number,
  currentA: number,
  efficiency = CONVERTER_EFFICIENCY,
): number => (bankEnergyWh(capacityMah) * efficiency) / (outputV * currentA)

/** Running time of a pack of cells, hours, at the average cell voltage and nine tenths of the charge. */
export const packHours = (capacityMah: number, cellsInSeries: number, powerW: number): number =>
  (cellsInSeries * capacityMah * 1e-3 * CELL_AVERAGE_V * USABLE_SHARE) / powerW

/** A bank does not tell currents apart that differ by less, mA. */
const NEGLIGIBLE_MA = 0.01

/** A resistor across the supply that keeps a power bank awake. */
export interface KeepAlive {
  resistorOhm: number
  dissipationW: number
}

/**
 * Keep-alive resistor: next lower E12 value of V over the current that is missing.
 * @returns null when the idle current keeps the bank awake by itself
 * Source: Ohm's law; that banks poll and switch off is seen in maker write-ups.
 */
export function keepAlive(supplyV: number, cutoffMa: number, idleMa: number): KeepAlive | null {
  const missingMa = cutoffMa - idleMa
  if (missingMa < NEGLIGIBLE_MA) return null
  const resistorOhm = nextNotAbove(supplyV / (missingMa * 1e-3), E12)
  return { resistorOhm, dissipationW: supplyV ** 2 / resistorOhm }
}
