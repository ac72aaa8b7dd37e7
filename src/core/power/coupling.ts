import { type LoadedControl, parallelOhm, trackShare } from './volume.ts'

/** Corner of a capacitor into a resistance, Hz: 1/(2π R C). */
export const cornerHz = (capacitorUf: number, resistanceOhm: number): number =>
  1 / (2 * Math.PI * capacitorUf * 1e-6 * resistanceOhm)

/** Capacitor for a corner, uF. A single-ended output needs it to keep direct current from the driver. */
export const capacitorForCornerUf = (wantedHz: number, resistanceOhm: number): number =>
  1e6 / (2 * Math.PI * wantedHz * resistanceOhm)

/** Where the coupling capacitor sits. */
export type Placement = 'before-control' | 'after-wiper'

/**
 * Resistance that a coupling capacitor works into with a volume control, ohm; it moves with the knob.
 * Source: before the control Rs + (1 − x)R + xR ∥ Ri; after the wiper Ri + xR ∥ ((1 − x)R + Rs). Derived.
 */
export function couplingResistanceOhm(control: LoadedControl, turn: number, placement: Placement): number {
  const lower = trackShare(control.taper, turn) * control.resistanceOhm
  const upper = control.resistanceOhm - lower + control.sourceResistanceOhm
  return placement === 'before-control'
    ? upper + parallelOhm(lower, control.inputResistanceOhm)
    : control.inputResistanceOhm + parallelOhm(lower, upper)
}
