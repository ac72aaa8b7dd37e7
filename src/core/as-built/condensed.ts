import type { MeasuredSweep } from '../measurement/sweep.ts'

/** The readings of a sweep that are to be kept, by what each is. */
export function filtered(
  { frequencyHz, ohm, phaseDeg }: MeasuredSweep,
  keeps: (reading: { hz: number; ohm: number }) => boolean,
): MeasuredSweep {
  const isKept = (_: number, i: number) => keeps({ hz: frequencyHz[i]!, ohm: ohm[i]! })
  return {
    frequencyHz: frequencyHz.filter(isKept),
    ohm: ohm.filter(isKept),
    phaseDeg: phaseDeg?.filter(isKept) ?? null,
  }
}

/** The part of a sweep between two frequencies (Hz), both included. */
export const between = (sweep: MeasuredSweep, fromHz: number, toHz: number): MeasuredSweep =>
  filtered(sweep, ({ hz }) => hz >= fromHz && hz <= toHz)

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length

/**
 * A sweep with at most `most` readings: where they lie closer than that many equal steps of ratio, they are averaged,
 * frequency and modulus in logarithms, phase as it is. Averages, so that no reading is thrown away.
 */
export function condensed(sweep: MeasuredSweep, most: number): MeasuredSweep {
  const { frequencyHz, ohm, phaseDeg } = sweep
  if (frequencyHz.length <= most) return sweep
  const firstHz = frequencyHz[0] ?? 1
  const step = Math.log((frequencyHz.at(-1) ?? firstHz) / firstHz) / most
  const placeOf = (hz: number) => Math.min(most - 1, Math.floor(Math.log(hz / firstHz) / step))
  const starts = Array.from(frequencyHz.keys()).filter(
    (i) => i === 0 || placeOf(frequencyHz[i]!) !== placeOf(frequencyHz[i - 1]!),
  )
  const averaged = (column: Float64Array) =>
    Float64Array.from(starts, (start, place) => mean(column.subarray(start, starts[place + 1])))
  return {
    frequencyHz: averaged(frequencyHz.map(Math.log)).map(Math.exp),
    ohm: averaged(ohm.map(Math.log)).map(Math.exp),
    phaseDeg: phaseDeg === null ? null : averaged(phaseDeg),
  }
}
