import type { Box } from '../../schema/box.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { hertz, litre, significant } from '../say.ts'
import { nearestClosed, worthwhileVented } from './alignment.ts'
import type { BoxLosses } from './losses.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { closedAlpha, type SuitedBox, suitedBoxes } from './suited-boxes.ts'
import { midBandSplDb, type SystemFigures } from './system-figures.ts'
import { closedDecayMs, ventedDecayMs } from './transient.ts'

type Tuning = BoxTuningSections['tuning']
type Nearest = Tuning['nearestAlignment']

const flat = (ohm: number) => [Float64Array.of(ohm), Float64Array.of(0)] as const

/**
 * Resistance that a driver feels in series at its resonance, ohm: the source's, and what its network looks like from
 * the driver. Source: Thévenin; from the voltage share at two loads, 1/T = (1 + Zth/Z)/k.
 */
function seriesOhm({ circuit, group, driver }: Loudspeaker): number {
  const { feed } = group
  if (feed === undefined) return circuit.sourceOhm
  const shareAt = (ohm: number) => {
    const { transferRe, transferIm } = feed(Float64Array.of(driver.fsHz), ...flat(ohm))
    const [re, im] = [transferRe[0]!, transferIm[0]!]
    const square = re * re + im * im
    return { re: re / square, im: -im / square }
  }
  const [low, high] = [shareAt(driver.reOhm), shareAt(10 * driver.reOhm)]
  // 1/T is straight in 1/Z: slope Zth/k over intercept 1/k is Zth.
  const slope = {
    re: (low.re - high.re) / (0.9 / driver.reOhm),
    im: (low.im - high.im) / (0.9 / driver.reOhm),
  }
  const start = { re: low.re - slope.re / driver.reOhm, im: low.im - slope.im / driver.reOhm }
  const real = (slope.re * start.re + slope.im * start.im) / (start.re ** 2 + start.im ** 2)
  return circuit.sourceOhm + Math.max(0, real)
}

/** Resistance of the whole channel above the bass, ohm. */
function channelResistanceOhm({ group, driver }: Loudspeaker): number {
  if (group.feed === undefined) return driver.reOhm * group.impedanceFactor
  const { impedanceRe } = group.feed(Float64Array.of(4 * driver.fsHz), ...flat(driver.reOhm))
  return impedanceRe[0]!
}

/**
 * Total Q of the driver with its source resistance in the circuit.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory.
 */
export function qtsWithSource(speaker: Loudspeaker): number {
  const { reOhm } = speaker.circuit
  const qes = (speaker.driver.qes * (reOhm + seriesOhm(speaker))) / reOhm
  return (qes * speaker.driver.qms) / (qes + speaker.driver.qms)
}

const inverse = (q: number | null): number => (q === null ? 0 : 1 / q)

/**
 * Total Q of a closed box: the driver's, raised by √(1 + α), with the share α/(1 + α) of the box losses.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 798 (Dec 1972), from memory; loss share derived for small losses.
 */
export function closedQtc(qts: number, alpha: number, losses: BoxLosses): number {
  const boxLoss = (alpha / (1 + alpha)) * (inverse(losses.leakageQ) + inverse(losses.absorptionQ))
  return 1 / (1 / (qts * Math.sqrt(1 + alpha)) + boxLoss)
}

const percentApart = (...ratios: number[]): number =>
  100 * (Math.exp(Math.max(...ratios.map((ratio) => Math.abs(Math.log(ratio))))) - 1)

function nearestToClosed(qtc: number): Nearest {
  const nearest = nearestClosed(qtc)
  return {
    name: nearest.name,
    differencePct: percentApart(qtc / nearest.qtc),
    qtc: nearest.qtc,
    text: `total Q (Qtc) ${significant(qtc, 3)} against ${significant(nearest.qtc, 3)}`,
  }
}

function nearestToVented(speaker: Loudspeaker, qts: number): Nearest {
  const ql = lossQ(speaker.losses)
  const classic = worthwhileVented(qts, Number.isFinite(ql) ? ql : null)
  if (classic === null)
    return {
      name: 'none',
      differencePct: null,
      text: `no classic vented box suits a driver of total Q ${significant(qts, 2)}; a closed box is the honest choice`,
    }
  const netVolumeL = (speaker.netVolumeL * speaker.alpha) / classic.alpha
  const tuningHz = classic.h * speaker.driver.fsHz
  return {
    name: classic.name,
    differencePct: percentApart(speaker.netVolumeL / netVolumeL, speaker.boxHz / tuningHz),
    netVolumeL,
    tuningHz,
    text: `that box would hold ${litre(netVolumeL)} and be tuned to ${hertz(tuningHz)}`,
  }
}

/** All losses of a box as one: 1/QB = 1/QL + 1/QA + 1/QP; Infinity for none. Source: Small 1973, from memory. */
function lossQ({ leakageQ, absorptionQ, portQ }: BoxLosses): number {
  return 1 / (inverse(leakageQ) + inverse(absorptionQ) + inverse(portQ))
}

function decay(
  speaker: Loudspeaker,
  qts: number,
  f3Hz: number | null,
): Pick<Tuning, 'decayMs' | 'decayPeriods'> {
  const { driver, alpha, boxHz, losses } = speaker
  const decayMs =
    speaker.opening === null
      ? closedDecayMs(boxHz, closedQtc(qts, alpha, losses))
      : ventedDecayMs({ fsHz: driver.fsHz, qts, h: boxHz / driver.fsHz, alpha, ql: lossQ(losses) })
  return { decayMs, decayPeriods: f3Hz === null ? null : (decayMs * f3Hz) / 1000 }
}

/** The `tuning` section of a solved loudspeaker. */
export function tuningOf(speaker: Loudspeaker, figures: SystemFigures): Tuning {
  const qts = qtsWithSource(speaker)
  const common = {
    qts,
    alpha: speaker.alpha,
    netVolumeL: speaker.netVolumeL,
    acousticVolumeL: speaker.acousticVolumeL,
    ...figures,
    // One watt in the resistance of the whole channel.
    spl1WDb: midBandSplDb(speaker, Math.sqrt(channelResistanceOhm(speaker))),
    spl2V83Db: midBandSplDb(speaker, 2.83),
    ...decay(speaker, qts, figures.f3Hz),
  }
  if (speaker.opening === null) {
    const qtc = closedQtc(qts, speaker.alpha, speaker.losses)
    return { fcHz: speaker.boxHz, qtc, ...common, nearestAlignment: nearestToClosed(qtc) }
  }
  return {
    fbHz: speaker.boxHz,
    h: speaker.boxHz / speaker.driver.fsHz,
    ...common,
    nearestAlignment: nearestToVented(speaker, qts),
  }
}

/**
 * The boxes that suit the drivers of a loudspeaker, whatever box they stand in: closed ones with the losses of the box
 * asked about, vented ones with its leakage, or the usual one where a closed box was assumed tight.
 */
export function suitedTo(speaker: Loudspeaker, box: Box, wantedQtc: number | null): SuitedBox[] {
  const { losses, driver } = speaker
  const seeker = {
    fsHz: driver.fsHz,
    qts: qtsWithSource(speaker),
    vasL: speaker.alpha * speaker.acousticVolumeL,
    liningGain: losses.liningGain,
    closedLoss: inverse(losses.leakageQ) + inverse(losses.absorptionQ),
  }
  const assumedTight = speaker.opening === null && box.leakageQ === undefined
  const ql = assumedTight ? USUAL_VENTED_Q : lossQ(losses)
  return suitedBoxes(seeker, Number.isFinite(ql) ? ql : null, wantedQtc)
}

// R. H. Small 1973 part III, the usual design start.
const USUAL_VENTED_Q = 7

/** Whether some closed box gives the drivers a total Q, with the losses of the box asked about. */
export const isReachable = (speaker: Loudspeaker, qtc: number): boolean =>
  closedAlpha(
    qtsWithSource(speaker),
    qtc,
    inverse(speaker.losses.leakageQ) + inverse(speaker.losses.absorptionQ),
  ) !== null
