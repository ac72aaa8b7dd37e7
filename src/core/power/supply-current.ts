import type { Programme } from '../../schema/power.ts'

/** Peak over RMS of a sine, dB. */
const SINE_CREST_DB = 20 * Math.log10(Math.SQRT2)

/**
 * Crest factor of what is played, dB, peaks at the clip point.
 * Sine by definition; squashed music 8 to 10, music 12 to 16, speech 12 to 16: common practice, no source.
 */
export const CREST_DB = {
  sine: SINE_CREST_DB,
  'compressed-music': 10,
  music: 14,
  speech: 16,
} satisfies Record<Programme, number>

/** Crest factor at which the average is an eighth of the clean power: IEC 62368-1 Annex E, clause from memory. */
export const EIGHTH_POWER_CREST_DB = SINE_CREST_DB + 10 * Math.log10(8)

/** Average power of a programme, W, whose peaks just reach the clip point. Definition of the crest factor. */
export const averagePowerW = (cleanPowerW: number, crestDb: number): number =>
  cleanPowerW / 10 ** ((crestDb - SINE_CREST_DB) / 10)

/** What the supply current follows from. */
export interface Draw {
  channels: number
  cleanPowerW: number
  supplyVoltageV: number
  /** Share of the supply power that reaches the load at full power, above 0 to 1. */
  efficiency: number
  quiescentCurrentMa: number
}

/**
 * Average supply current of all channels on a programme, A.
 * Source: energy balance, I = ΣP/(η Vs) + Iq.
 */
export function averageCurrentA(draw: Draw, crestDb: number): number {
  const outputW = draw.channels * averagePowerW(draw.cleanPowerW, crestDb)
  return outputW / (draw.efficiency * draw.supplyVoltageV) + draw.quiescentCurrentMa * 1e-3
}

/**
 * Peak supply current in a full sine on all channels in phase, A: the power goes as 2 P sin², so the peak is twice
 * the average. Derived.
 */
export function peakSupplyCurrentA(draw: Draw): number {
  const outputW = draw.channels * draw.cleanPowerW
  return (2 * outputW) / (draw.efficiency * draw.supplyVoltageV) + draw.quiescentCurrentMa * 1e-3
}
