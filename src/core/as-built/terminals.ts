import type { Circuit } from '../box/circuit.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import { builtCircuit } from './built-circuit.ts'
import { drivenImpedance, groupImpedance } from './cones.ts'
import type { Deviations } from './deviations.ts'
import type { PlannedBox } from './planned-box.ts'
import type { Story } from './stories.ts'

function channelImpedance(
  { speaker }: PlannedBox,
  { fault, joint, cones }: Story,
  circuit: Circuit,
  frequencyHz: Float64Array,
): ComplexCurve {
  // A plain story keeps the wiring of the plan, mixed trees and crossovers included.
  if (joint !== null && fault !== 'none') return groupImpedance(circuit, cones, joint, frequencyHz)
  const one = drivenImpedance(circuit, cones, frequencyHz)
  const { feed, impedanceFactor } = speaker.group
  if (feed !== undefined) {
    const fed = feed(frequencyHz, one.re, one.im)
    return { re: fed.impedanceRe, im: fed.impedanceIm }
  }
  return { re: one.re.map((ohm) => ohm * impedanceFactor), im: one.im.map((ohm) => ohm * impedanceFactor) }
}

/**
 * Impedance at the terminals of the measured channel for a story and its deviations, ohm on a grid (> 0, Hz).
 * @param leadOhm  resistance of a known lead between the meter and the terminals
 */
export function terminalImpedance(
  planned: PlannedBox,
  story: Story,
  built: Deviations,
  frequencyHz: Float64Array,
  leadOhm = 0,
): ComplexCurve {
  const { circuit } = builtCircuit(planned.speaker, built, story.blocked)
  const channel = channelImpedance(planned, story, circuit, frequencyHz)
  const seriesOhm = built.series * planned.referenceOhm + leadOhm
  return { re: channel.re.map((ohm) => ohm + seriesOhm), im: channel.im }
}

/** What a meter reads at the terminals for a story, ohm; null where a capacitor blocks. */
export function terminalMeterOhm(
  { meterOhm, referenceOhm, speaker }: PlannedBox,
  { fault, joint, cones }: Story,
  series: number,
): number | null {
  if (meterOhm === null) return null
  const extra = series * referenceOhm
  if (joint === null || fault === 'none') return meterOhm + extra
  const one = speaker.driver.reOhm
  return (joint === 'series' ? one * cones.driven : one / cones.driven) + extra
}
