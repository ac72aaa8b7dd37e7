import type { Wiring } from '../../schema/wiring.ts'
import type { ChannelFeed, DriverGroup } from '../box/loudspeaker.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import { type Network, solveNetwork } from '../load/network.ts'
import { partsOf } from '../load/wiring-parts.ts'

/** Impedances of the other kinds of driver on a grid. */
export type OtherImpedances = (frequencyHz: Float64Array) => ReadonlyMap<string, ComplexCurve>

const one = Float64Array.of(1)

/** Voltage share and impedance factor of a tree of equal drivers only: numbers, the same at every frequency. */
function plainGroup(wiring: Wiring, id: string): { share: number; factor: number; even: boolean } {
  const unit = new Map([[id, { re: one, im: Float64Array.of(0) }]])
  const { re, places } = solveNetwork(wiring, unit, one)
  const shares = places.map((place) => place.re[0]!)
  const mean = shares.reduce((a, b) => a + b, 0) / shares.length
  return { share: mean, factor: re[0]!, even: shares.every((share) => Math.abs(share - mean) < 1e-9) }
}

function feedOf(network: Network, id: string): ChannelFeed {
  const places = network.places.filter((place) => place.driver === id)
  const n = network.re.length
  const feed: ChannelFeed = {
    transferRe: new Float64Array(n),
    transferIm: new Float64Array(n),
    unevenness: new Float64Array(n),
    impedanceRe: network.re,
    impedanceIm: network.im,
  }
  for (let i = 0; i < n; i++) {
    let re = 0
    let im = 0
    let highest = 0
    for (const place of places) {
      re += place.re[i]! / places.length
      im += place.im[i]! / places.length
      highest = Math.max(highest, Math.hypot(place.re[i]!, place.im[i]!))
    }
    feed.transferRe[i] = re
    feed.transferIm[i] = im
    feed.unevenness[i] = highest / Math.hypot(re, im)
  }
  return feed
}

/**
 * How a channel's voltage reaches the drivers `id`, `count` of them in the box (all channels of it).
 * A tree of those drivers alone is two numbers; components or other drivers make it a function of frequency.
 * Source: Kirchhoff's laws.
 */
export function channelGroup(
  wiring: Wiring,
  id: string,
  count: number,
  others: OtherImpedances,
): DriverGroup {
  const alone = partsOf(wiring).every(({ part }) => part === id)
  const plain = alone ? plainGroup(wiring, id) : null
  if (plain?.even === true) return { count, voltageShare: plain.share, impedanceFactor: plain.factor }
  const feed: DriverGroup['feed'] = (frequencyHz, re, im) => {
    const impedances = new Map(others(frequencyHz)).set(id, { re, im })
    return feedOf(solveNetwork(wiring, impedances, frequencyHz), id)
  }
  return { count, voltageShare: plain?.share ?? 1, impedanceFactor: plain?.factor ?? 1, feed }
}
