import type { BoxTuningSections } from '../../schema/box-tuning.ts'
import { hertz, litre, significant } from '../say.ts'
import { classicVented, nearestClosed } from './alignment.ts'
import type { BoxLosses } from './losses.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import type { SystemFigures } from './system-figures.ts'

type Tuning = BoxTuningSections['tuning']
type Nearest = Tuning['nearestAlignment']

/**
 * Total Q of the driver with its source resistance in the circuit.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory.
 */
export function qtsWithSource(speaker: Loudspeaker): number {
  const { reOhm, sourceOhm } = speaker.circuit
  const qes = (speaker.driver.qes * (reOhm + sourceOhm)) / reOhm
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
    text: `Qtc ${significant(qtc, 3)} against ${significant(nearest.qtc, 3)}`,
  }
}

function nearestToVented(speaker: Loudspeaker, qts: number): Nearest {
  const { leakageQ, absorptionQ, portQ } = speaker.losses
  const loss = inverse(leakageQ) + inverse(absorptionQ) + inverse(portQ)
  const classic = classicVented(qts, loss === 0 ? null : 1 / loss)
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

/** The `tuning` section of a solved loudspeaker. */
export function tuningOf(speaker: Loudspeaker, figures: SystemFigures): Tuning {
  const qts = qtsWithSource(speaker)
  const common = {
    qts,
    alpha: speaker.alpha,
    netVolumeL: speaker.netVolumeL,
    acousticVolumeL: speaker.acousticVolumeL,
    ...figures,
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
