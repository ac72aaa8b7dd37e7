/** Law of a volume control: share of the track below the wiper at a turn from 0 to 1. */
export type Taper = 'linear' | 'audio'

/** Track share of an audio law at half turn. Common practice; 0.10 and 0.13 also read in workshop notes. */
const AUDIO_AT_HALF = 0.15

const TRACKS = {
  linear: (turn) => turn,
  // Two straight lines, as the tracks are printed.
  audio: (turn) =>
    turn <= 0.5 ? 2 * AUDIO_AT_HALF * turn : AUDIO_AT_HALF + 2 * (1 - AUDIO_AT_HALF) * (turn - 0.5),
} satisfies Record<Taper, (turn: number) => number>

/** Share of the track between wiper and ground. Linear, or two straight lines with 15 % at half turn. */
export const trackShare = (taper: Taper, turn: number): number => TRACKS[taper](turn)

/** Two resistances in parallel, ohm; an open one is Infinity, and 0 with anything is 0. */
export const parallelOhm = (a: number, b: number): number => {
  if (a === 0 || b === 0) return 0
  return 1 / (1 / a + 1 / b)
}

/** A volume control with what feeds it and what hangs on its wiper. */
export interface LoadedControl {
  resistanceOhm: number
  taper: Taper
  /** Infinity for an open wiper. */
  inputResistanceOhm: number
  sourceResistanceOhm: number
}

/**
 * Share of the source voltage that reaches the amplifier input, 0 to 1.
 * Source: loaded divider, a = (xR ∥ Ri)/(xR ∥ Ri + (1 − x)R + Rs).
 */
export function controlGain(control: LoadedControl, turn: number): number {
  const lower = trackShare(control.taper, turn) * control.resistanceOhm
  const upper = control.resistanceOhm - lower + control.sourceResistanceOhm
  const loaded = parallelOhm(lower, control.inputResistanceOhm)
  return loaded / (loaded + upper)
}

/** The same in dB; above 0 turn it is finite. */
export const attenuationDb = (control: LoadedControl, turn: number): number =>
  20 * Math.log10(controlGain(control, turn))
