import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { Json } from './draft.ts'

/** Of an air coil of a few tenths of a millihenry in common wire. Source: common practice, no source. */
export const COIL_OHM = 0.3

type Parts = LoadImpedanceSections['crossover'][number]

/** Coil before the driver that loses level in it, capacitor of the usual series before the one that plays the treble. */
export function crossed(rows: readonly Parts[]): Json | undefined {
  const bass = rows.find(({ coilLossDb }) => coilLossDb !== null)
  const treble = rows.find(({ coilLossDb }) => coilLossDb === null)
  if (bass === undefined || treble === undefined) return undefined
  const inductorMh = Number(bass.inductorMh.toPrecision(2))
  return {
    parallel: [
      { series: [{ inductorMh, resistanceOhm: COIL_OHM }, bass.driver] },
      { series: [{ capacitorUf: treble.capacitorE12Uf }, treble.driver] },
    ],
  }
}
