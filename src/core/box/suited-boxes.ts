import { hertz, litre, significant } from '../say.ts'
import { namedClosed, worthwhileVented } from './alignment.ts'

/** A box that would suit a driver, or why none of that kind does. */
export interface SuitedBox {
  kind: 'closed' | 'vented'
  alignment: string
  netVolumeL: number | null
  tuningHz: number | null
  f3Hz: number | null
  peakDb: number | null
  text: string
}

/** What of the drivers decides the box: all of one box together. */
export interface BoxSeeker {
  fsHz: number
  /** Total Q, source resistance included. */
  qts: number
  /** Vas of all drivers together at the air of the day, litres. */
  vasL: number
  /** Acoustic over geometric volume. */
  liningGain: number
  /** Losses of a closed box, 1/QL + 1/QA. */
  closedLoss: number
}

/**
 * −3 dB frequency of a closed box over its resonance.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 798 (Dec 1972): y⁻⁴ + (1/Q² − 2) y⁻² − 1 = 0.
 */
export function closedF3OverFc(qtc: number): number {
  const b = 1 / (qtc * qtc) - 2
  return Math.sqrt((b + Math.sqrt(b * b + 4)) / 2)
}

/** Peak of a closed box above its mid-band, dB; 0 up to Q = 1/√2. Source: Small, as above. */
export const closedPeakDb = (qtc: number): number =>
  qtc <= Math.SQRT1_2 ? 0 : 10 * Math.log10(qtc ** 4 / (qtc * qtc - 0.25))

/**
 * Compliance ratio of a closed box that makes a total Q of `qtc` from `qts` with the box losses 1/QL + 1/QA = `loss`;
 * null when no box between Vas/10 000 and 100 Vas does. Source: R. H. Small 1972, Qts√(1 + α) for no loss; with loss as in `closedQtc`.
 */
export function closedAlpha(qts: number, qtc: number, loss: number): number | null {
  const excess = (alpha: number) => 1 / (qts * Math.sqrt(1 + alpha)) + (loss * alpha) / (1 + alpha) - 1 / qtc
  if (qts >= qtc) return null
  let [low, high] = [0, 1e-3]
  while (excess(high) > 0) {
    low = high
    high *= 2
    if (high > MOST_ALPHA) return null
  }
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (excess(middle) > 0) low = middle
    else high = middle
  }
  return high < LEAST_ALPHA ? null : high
}

// A box a ten-thousandth of Vas is no box, and one of a hundred times Vas is as good as none. Common practice, no source.
const MOST_ALPHA = 1e4
const LEAST_ALPHA = 0.01

function closedBox(driver: BoxSeeker, name: string, qtc: number): SuitedBox {
  const alpha = closedAlpha(driver.qts, qtc, driver.closedLoss)
  if (alpha === null)
    return {
      kind: 'closed',
      alignment: name,
      netVolumeL: null,
      tuningHz: null,
      f3Hz: null,
      peakDb: null,
      text: `no closed box makes ${significant(qtc, 2)} of a total Q of ${significant(driver.qts, 2)}`,
    }
  const fcHz = driver.fsHz * Math.sqrt(1 + alpha)
  const netVolumeL = driver.vasL / alpha / driver.liningGain
  const f3Hz = fcHz * closedF3OverFc(qtc)
  return {
    kind: 'closed',
    alignment: name,
    netVolumeL,
    tuningHz: null,
    f3Hz,
    peakDb: closedPeakDb(qtc),
    text: `${litre(netVolumeL)}, resonance ${hertz(fcHz)}, down to ${hertz(f3Hz)}`,
  }
}

function ventedBox(driver: BoxSeeker, leakageQ: number | null): SuitedBox {
  const classic = worthwhileVented(driver.qts, leakageQ)
  if (classic === null)
    return {
      kind: 'vented',
      alignment: 'none',
      netVolumeL: null,
      tuningHz: null,
      f3Hz: null,
      peakDb: null,
      text: `no classic vented box suits a total Q of ${significant(driver.qts, 2)}: close the box`,
    }
  const netVolumeL = driver.vasL / classic.alpha / driver.liningGain
  const [tuningHz, f3Hz] = [classic.h * driver.fsHz, classic.f3OverFs * driver.fsHz]
  return {
    kind: 'vented',
    alignment: classic.name,
    netVolumeL,
    tuningHz,
    f3Hz,
    peakDb: classic.peakDb,
    text: `${litre(netVolumeL)} tuned to ${hertz(tuningHz)}, down to ${hertz(f3Hz)}, ${leakageQ === null ? 'without losses' : `with all losses taken as a leak of Q ${significant(leakageQ, 2)} (QL)`}`,
  }
}

/**
 * The boxes a driver deserves: the named closed ones, one for a wanted Qtc, and its classic vented one.
 * @param leakageQ   all losses of a vented box as leakage; null for none
 * @param wantedQtc  a total Q of one's own; null for none
 */
export function suitedBoxes(
  driver: BoxSeeker,
  leakageQ: number | null,
  wantedQtc: number | null,
): SuitedBox[] {
  const own =
    wantedQtc === null ? [] : [closedBox(driver, `wanted Qtc ${significant(wantedQtc, 3)}`, wantedQtc)]
  return [
    ...own,
    ...namedClosed.map(({ name, qtc }) => closedBox(driver, name, qtc)),
    ventedBox(driver, leakageQ),
  ]
}
