import { describe, expect, test } from 'vitest'
import {
  cleanOutput,
  largestClaimW,
  type OutputStage,
  peakCurrentA,
  powerAt10PercentW,
  stageLoadOhm,
} from '../../../src/core/power/amplifier.ts'
import { holdRows } from './hold-rows.ts'

interface StageInputs extends OutputStage {
  supplyVoltageV: number
  loadOhm: number
}

const clean = (inputs: StageInputs) => {
  const { peakVoltageV, powerW } = cleanOutput(inputs, inputs.supplyVoltageV, inputs.loadOhm)
  return {
    cleanPowerW: powerW,
    peakVoltageV,
    peakCurrentA: peakCurrentA(inputs, inputs.supplyVoltageV, inputs.loadOhm),
  }
}

interface DataSheet extends Omit<StageInputs, 'outputResistanceOhm' | 'largestDuty'> {
  switchOnOhm: number
  coilOhm: number
  capacitorEsrOhm?: number
  minimumPulseNs: number
  switchingKhz: number
}

const dataSheet = (inputs: DataSheet) => {
  const halves = inputs.output === 'bridge' ? 2 : 1
  const stage = {
    output: inputs.output,
    outputResistanceOhm: halves * (inputs.switchOnOhm + inputs.coilOhm) + (inputs.capacitorEsrOhm ?? 0),
    // Widder & Brugora 2008: one minus the share of the shortest pulse in a period.
    largestDuty: 1 - inputs.minimumPulseNs * 1e-9 * inputs.switchingKhz * 1e3,
  }
  const { powerW } = cleanOutput(stage, inputs.supplyVoltageV, inputs.loadOhm)
  return { powerAtHalfPercentW: powerW, powerAt10PercentW: powerAt10PercentW(powerW) }
}

const lossless = (output: OutputStage['output']): OutputStage => ({
  output,
  outputResistanceOhm: 0,
  largestDuty: 1,
})

holdRows('amplifier', {
  'bridge-': clean,
  'single-': clean,
  'datasheet-': dataSheet,
  'bridge-side-load': ({ output, loadOhm }) => ({ eachSideOhm: stageLoadOhm(output, loadOhm) }),
  'bridge-versus-single': ({ supplyVoltageV, loadOhm }) => ({
    powerRatio:
      cleanOutput(lossless('bridge'), supplyVoltageV, loadOhm).powerW /
      cleanOutput(lossless('single-ended'), supplyVoltageV, loadOhm).powerW,
  }),
  'thd-10-': (inputs) => ({ powerAt1PercentW: inputs.powerAt10PercentW / powerAt10PercentW(1) }),
})

describe('clean power', () => {
  test('a bridge on 5 V into 4 ohm ends near 3 W before clipping (common practice)', () => {
    expect(cleanOutput(lossless('bridge'), 5, 4).powerW).toBeCloseTo(3.125, 6)
    expect(cleanOutput({ ...lossless('bridge'), outputResistanceOhm: 0.4 }, 5, 4).powerW).toBeGreaterThan(2.5)
  })

  test('on 5 V into 4 ohm 4 W are the most that a maker can claim, 5 W are made up', () => {
    // 1.3 times 25 V² over 8 ohm: 4.06 W.
    expect(largestClaimW('bridge', 5, 4)).toBeGreaterThan(4)
    expect(largestClaimW('bridge', 5, 4)).toBeLessThan(4.1)
  })
})
