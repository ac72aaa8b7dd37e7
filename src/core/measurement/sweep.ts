import type { ImpedanceSweep } from '../../schema/impedance-sweep.ts'
import { type Fault, isRefusal, type Refusal } from '../outcome.ts'
import { sweepFaults } from './sweep-faults.ts'
import { sweepFromCsv } from './sweep-text.ts'

/** A sweep ready for work: arrays of equal length, frequencies rising, impedances above 0. */
export interface MeasuredSweep {
  /** Hz; a frequency may be there twice when it was read twice. */
  frequencyHz: Float64Array
  /** Modulus, ohm. */
  ohm: Float64Array
  /** Degrees; null when the phase was not measured. */
  phaseDeg: Float64Array | null
}

/** The columns of a sweep as they came, in the order they came. */
export interface SweepColumns {
  frequencyHz: readonly number[]
  impedanceOhm: readonly number[]
  phaseDeg: readonly number[] | null
  /** Where a fault of a column is reported, below the sweep. */
  at: { frequency: string; impedance: string; phase: string }
  /** Whether the readings may come in any order. */
  anyOrder: boolean
}

/**
 * Reads a sweep in any of its three forms.
 * Refuses, every fault at once: no or several forms, columns of unequal length, fewer than 8 readings, frequencies that
 * jump to and fro, numbers that are not finite or not above 0, columns that look swapped, kilohertz, phase in radians.
 * @param at  JSON Pointer of the sweep in the request
 */
export function readSweep(sweep: ImpedanceSweep, at: string): MeasuredSweep | Refusal {
  const columns = columnsOf(sweep)
  const below = (faults: readonly Fault[]) =>
    faults.map((fault) => ({ at: `${at}${fault.at}`, message: fault.message }))
  if (isRefusal(columns)) return { faults: below(columns.faults) }
  const faults = sweepFaults(columns)
  return faults.length > 0 ? { faults: below(faults) } : inOrder(columns)
}

const WAYS = 'frequencyHz with impedanceOhm, or csv, or readings'

function columnsOf(sweep: ImpedanceSweep): SweepColumns | Refusal {
  const { frequencyHz, impedanceOhm, phaseDeg, csv, readings } = sweep
  const arrays = frequencyHz !== undefined || impedanceOhm !== undefined || phaseDeg !== undefined
  const given = [arrays, csv !== undefined, readings !== undefined].filter(Boolean).length
  if (given === 0) return { faults: [{ at: '', message: `holds no readings; give ${WAYS}` }] }
  if (given > 1)
    return { faults: [{ at: '', message: `holds readings in more than one form; give ${WAYS}` }] }
  if (csv !== undefined) return sweepFromCsv(csv)
  if (readings !== undefined) {
    const { resistorOhm, steps } = readings
    return {
      frequencyHz: steps.map((step) => step.frequencyHz),
      impedanceOhm: steps.map((step) => (resistorOhm * step.driverV) / step.resistorV),
      phaseDeg: null,
      at: { frequency: '/readings/steps', impedance: '/readings/steps', phase: '/readings' },
      anyOrder: true,
    }
  }
  if (frequencyHz === undefined || impedanceOhm === undefined)
    return {
      faults: [
        {
          at: frequencyHz === undefined ? '/frequencyHz' : '/impedanceOhm',
          message: 'frequencyHz and impedanceOhm belong together; give both',
        },
      ],
    }
  return {
    frequencyHz,
    impedanceOhm,
    phaseDeg: phaseDeg ?? null,
    at: { frequency: '/frequencyHz', impedance: '/impedanceOhm', phase: '/phaseDeg' },
    anyOrder: false,
  }
}

function inOrder({ frequencyHz, impedanceOhm, phaseDeg }: SweepColumns): MeasuredSweep {
  const order = frequencyHz.map((_, i) => i).sort((a, b) => frequencyHz[a]! - frequencyHz[b]!)
  const sorted = (column: readonly number[]) => Float64Array.from(order, (i) => column[i]!)
  return {
    frequencyHz: sorted(frequencyHz),
    ohm: sorted(impedanceOhm),
    phaseDeg: phaseDeg === null ? null : sorted(phaseDeg),
  }
}
