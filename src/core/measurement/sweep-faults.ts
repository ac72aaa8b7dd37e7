import type { Fault } from '../outcome.ts'
import { significant } from '../say.ts'
import type { SweepColumns } from './sweep.ts'

/** A curve of five unknowns needs some readings to spare. Common practice, no source. */
export const FEWEST_READINGS = 8
/** As many as the arrays of the schema may hold. */
const MOST_READINGS = 2000
/** No sweep of a loudspeaker ends below this; one in kilohertz does. Common practice, no source. */
const LOWEST_END_HZ = 40
/** A driver whose impedance rises this much has phases of tens of degrees. Derived from the motional circle. */
const CLEAR_PEAK = 2
/** Nothing a driver does reaches a right angle, noise apart. */
const PASSIVE_DEG = 95

/** Reasons not to believe a sweep at all, each with what to do. */
export function sweepFaults(columns: SweepColumns): Fault[] {
  const unequal = lengthFaults(columns)
  if (unequal.length > 0) return unequal
  const numbers = numberFaults(columns)
  if (numbers.length > 0) return numbers
  return [...fewFaults(columns), ...orderFaults(columns), ...phaseFaults(columns)]
}

function lengthFaults({ frequencyHz, impedanceOhm, phaseDeg, at }: SweepColumns): Fault[] {
  const n = frequencyHz.length
  const fault = (place: string, length: number) =>
    length === n
      ? []
      : [{ at: place, message: `holds ${length} values for ${n} frequencies; give one for each` }]
  return [
    ...fault(at.impedance, impedanceOhm.length),
    ...(phaseDeg === null ? [] : fault(at.phase, phaseDeg.length)),
  ]
}

function numberFaults({ frequencyHz, impedanceOhm, phaseDeg, at }: SweepColumns): Fault[] {
  const fault = (
    place: string,
    column: readonly number[],
    good: (value: number) => boolean,
    must: string,
  ) => {
    const bad = column.findIndex((value) => !good(value))
    return bad < 0
      ? []
      : [{ at: place, message: `reading ${bad + 1} is ${column[bad]}; every one must be ${must}` }]
  }
  const positive = (value: number) => Number.isFinite(value) && value > 0
  return [
    ...fault(at.frequency, frequencyHz, positive, 'a frequency above 0 Hz'),
    ...fault(at.impedance, impedanceOhm, positive, 'an impedance above 0 ohm'),
    ...(phaseDeg === null ? [] : fault(at.phase, phaseDeg, Number.isFinite, 'a phase in degrees')),
  ]
}

function fewFaults({ frequencyHz, at }: SweepColumns): Fault[] {
  const n = frequencyHz.length
  if (n > MOST_READINGS)
    return [
      { at: at.frequency, message: `holds ${n} readings, more than ${MOST_READINGS}; send every other one` },
    ]
  return n >= FEWEST_READINGS
    ? []
    : [
        {
          at: at.frequency,
          message: `holds too few points, ${n}; give at least ${FEWEST_READINGS}, better 25, most of them about the peak`,
        },
      ]
}

const rises = (column: readonly number[]): boolean =>
  column.every((value, i) => i === 0 || value >= column[i - 1]!)
const falls = (column: readonly number[]): boolean =>
  column.every((value, i) => i === 0 || value <= column[i - 1]!)

function orderFaults({ frequencyHz, impedanceOhm, at, anyOrder }: SweepColumns): Fault[] {
  const monotone = rises(frequencyHz) || falls(frequencyHz)
  if (!monotone && (rises(impedanceOhm) || falls(impedanceOhm)) && impedanceOhm.length >= FEWEST_READINGS)
    return [
      {
        at: at.frequency,
        message:
          'the columns look swapped: the impedances run in order and the frequencies do not; put the frequency first',
      },
    ]
  const highest = Math.max(...frequencyHz)
  if (highest < LOWEST_END_HZ)
    return [
      {
        at: at.frequency,
        message: `ends at ${significant(highest, 3)} Hz, so the frequencies look like kilohertz; give them in Hz: 0.1 kHz is 100`,
      },
    ]
  if (monotone || anyOrder) return []
  const up = frequencyHz[0]! <= frequencyHz.at(-1)!
  const turn = frequencyHz.findIndex(
    (value, i) => i > 0 && (up ? value < frequencyHz[i - 1]! : value > frequencyHz[i - 1]!),
  )
  return [
    {
      at: at.frequency,
      message: `is not in order: reading ${turn + 1} (${significant(frequencyHz[turn]!, 3)} Hz) turns back; sort the readings by frequency`,
    },
  ]
}

function phaseFaults({ impedanceOhm, phaseDeg, at }: SweepColumns): Fault[] {
  if (phaseDeg === null) return []
  const beyond = phaseDeg.filter((value) => Math.abs(value) > PASSIVE_DEG).length
  if (beyond > phaseDeg.length / 4)
    return [
      {
        at: at.phase,
        message: `${beyond} of ${phaseDeg.length} phases are beyond 90 degrees, which no driver reaches; give the phase of the impedance, in degrees`,
      },
    ]
  const peaked = Math.max(...impedanceOhm) > CLEAR_PEAK * Math.min(...impedanceOhm)
  return peaked && phaseDeg.every((value) => Math.abs(value) <= Math.PI / 2)
    ? [{ at: at.phase, message: 'never leaves 1.57, so the phases look like radians; give them in degrees' }]
    : []
}
