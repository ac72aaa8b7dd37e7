import { type Response, responseOf, solveCircuit } from './circuit.ts'
import type { ChannelFeed, Loudspeaker } from './loudspeaker.ts'

/** A response with the impedance of the whole channel, source resistance excluded. */
export interface ChannelResponse extends Response {
  channelRe: Float64Array
  channelIm: Float64Array
  /** Voltage at the terminals of the hardest driven driver, V RMS; what its source resistance takes is off, by Re. */
  driverV: Float64Array
  /** Mean driver voltage over channel voltage. */
  channelGain: Float64Array
}

const DB_PER_NEPER = 20 / Math.LN10

/** Applies what a network passes on, frequency by frequency, to a response solved for equal driver voltages. */
function applyFeed(out: Response, feed: ChannelFeed): void {
  for (let i = 0; i < out.splDb.length; i++) {
    const re = feed.transferRe[i]!
    const im = feed.transferIm[i]!
    const gain = Math.hypot(re, im)
    out.splDb[i] = out.splDb[i]! + DB_PER_NEPER * Math.log(gain)
    out.ventSpeedMPerS[i] = out.ventSpeedMPerS[i]! * gain
    // The mean voltage decides flow and pressure; the hardest driven cone decides the travel.
    out.excursionMm[i] = out.excursionMm[i]! * gain * feed.unevenness[i]!
    out.phaseRad[i] = out.phaseRad[i]! + Math.atan2(im, re)
  }
}

// The divider of voice coil and source; the thermal limit counts Re, so Re divides.
const atTerminals = ({ circuit }: Loudspeaker): number => circuit.reOhm / (circuit.reOhm + circuit.sourceOhm)

/**
 * Response of a loudspeaker over a grid (> 0, Hz) for `voltageV` V RMS on its channel.
 * Source: the circuit, see circuit.ts; flow and pressure in a shared box follow the mean driver voltage, by superposition.
 */
export function solveLoudspeaker(
  speaker: Loudspeaker,
  frequencyHz: Float64Array,
  voltageV: number,
): ChannelResponse {
  const out = responseOf(frequencyHz.length)
  const { feed, voltageShare, impedanceFactor } = speaker.group
  solveCircuit(speaker.circuit, frequencyHz, voltageV * (feed === undefined ? voltageShare : 1), out)
  if (feed === undefined)
    return {
      channelRe: out.impedanceRe.map((ohm) => ohm * impedanceFactor),
      channelIm: out.impedanceIm.map((ohm) => ohm * impedanceFactor),
      driverV: new Float64Array(frequencyHz.length).fill(voltageV * voltageShare * atTerminals(speaker)),
      channelGain: new Float64Array(frequencyHz.length).fill(voltageShare),
      ...out,
    }
  const fed = feed(frequencyHz, out.impedanceRe, out.impedanceIm)
  applyFeed(out, fed)
  const channelGain = fed.transferRe.map((re, i) => Math.hypot(re, fed.transferIm[i]!))
  const driverV = channelGain.map((gain, i) => voltageV * gain * fed.unevenness[i]! * atTerminals(speaker))
  return { channelRe: fed.impedanceRe, channelIm: fed.impedanceIm, driverV, channelGain, ...out }
}
