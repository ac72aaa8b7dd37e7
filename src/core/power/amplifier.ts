import type { Amplifier } from '../../schema/power.ts'

/** What sets the clean power of one channel. */
export interface OutputStage {
  output: NonNullable<Amplifier['output']>
  /** Everything between supply and load: two switches of a bridge or one, coils, capacitor, ohm (≥ 0). */
  outputResistanceOhm: number
  /** Largest share of the supply that the output swings to, 0 to 1. */
  largestDuty: number
}

/** What one channel gives at the clip point. */
export interface CleanOutput {
  peakVoltageV: number
  voltageV: number
  powerW: number
}

/** Peak swing of the output over the supply: a bridge swings the load between both rails. */
export const SWING = { bridge: 1, 'single-ended': 0.5 } satisfies Record<OutputStage['output'], number>

/** Power at 10 % distortion over power at 1 %, the rule makers use; hard clipping gives 1.23. Common practice. */
const POWER_10_OVER_1_PERCENT = 1.25

/** A claim beyond this many times the lossless bridge power is impossible even at 10 % distortion. Derived. */
const LARGEST_CLAIM = 1.3

/** Peak voltage of the stage itself before its losses, V. The clip point that the gain works towards. */
export const clipPeakV = (stage: OutputStage, supplyV: number): number =>
  SWING[stage.output] * stage.largestDuty * supplyV

/**
 * Sine power just before clipping.
 * Source: Widder & Brugora, EE Times, 18 June 2008: P = Vp²/(2R) with Vp = M Vs R/(R + Rout), half of Vs when
 * single-ended.
 * @param loadOhm  resistance of the load, ohm (> 0)
 */
export function cleanOutput(stage: OutputStage, supplyV: number, loadOhm: number): CleanOutput {
  const peakVoltageV = (clipPeakV(stage, supplyV) * loadOhm) / (loadOhm + stage.outputResistanceOhm)
  return {
    peakVoltageV,
    voltageV: peakVoltageV / Math.SQRT2,
    powerW: peakVoltageV ** 2 / (2 * loadOhm),
  }
}

/** Peak current of one channel at the clip point into the lowest impedance of the load, A. Ohm's law. */
export const peakCurrentA = (stage: OutputStage, supplyV: number, minimumOhm: number): number =>
  clipPeakV(stage, supplyV) / (minimumOhm + stage.outputResistanceOhm)

/** Power at 10 % distortion from the power at 1 %, W. Common practice, no source. */
export const powerAt10PercentW = (powerAt1PercentW: number): number =>
  POWER_10_OVER_1_PERCENT * powerAt1PercentW

/** Clean power that a claim at 10 % distortion means, W. Common practice, no source. */
export const cleanOfClaimW = (claimedW: number): number => claimedW / POWER_10_OVER_1_PERCENT

/** Most that a maker can claim without making it up, W: 1.3 times the lossless power of the output. Derived. */
export const largestClaimW = (output: OutputStage['output'], supplyV: number, loadOhm: number): number =>
  (LARGEST_CLAIM * (SWING[output] * supplyV) ** 2) / (2 * loadOhm)

/** Load of each side of a bridge against the virtual centre, ohm; all of it when single-ended. Derived. */
export const stageLoadOhm = (output: OutputStage['output'], loadOhm: number): number =>
  output === 'bridge' ? loadOhm / 2 : loadOhm
