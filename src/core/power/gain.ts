import { clipPeakV, type OutputStage } from './amplifier.ts'

/** Consumer line level, V: −10 dBV by definition. */
export const CONSUMER_LINE_V = 10 ** (-10 / 20)

/** Levels from the source to the clip point. */
export interface GainStructure {
  outputV: number
  clipV: number
  overdriveDb: number
  sourceForClipV: number
}

/**
 * Whether a source can drive an amplifier to its clip point, RMS, knob open.
 * Source: derived; clip at Vs M/√2 at the terminals of a bridge, half of it single-ended.
 */
export function gainStructure(
  sourceLevelV: number,
  gainDb: number,
  supplyV: number,
  stage: OutputStage,
): GainStructure {
  const gain = 10 ** (gainDb / 20)
  const outputV = sourceLevelV * gain
  const clipV = clipPeakV(stage, supplyV) / Math.SQRT2
  return { outputV, clipV, overdriveDb: 20 * Math.log10(outputV / clipV), sourceForClipV: clipV / gain }
}
