import type { Box, Sides } from '../../schema/box.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Port } from '../../schema/port.ts'
import type { AirState } from '../air.ts'
import type { Fault } from '../outcome.ts'
import { litre } from '../say.ts'
import { type BodyInBox, fittingsL, portBodyL, tubeWallAssumption } from './bodies.ts'
import { innerOf, outerOf, sidesFaults, volumeL } from './sides.ts'
import { type TunedPort, tunePort } from './tuned-port.ts'

/** A box with its sides where they are known, its free air, and its port solved on that air. */
export interface Enclosure {
  outer: Sides | null
  inner: Sides | null
  grossVolumeL: number | null
  netVolumeL: number
  port: TunedPort | null
  assumptions: Assumption[]
}

type Solve = (netVolumeL: number) => TunedPort | null

function sidesOf(box: Box): Pick<Enclosure, 'outer' | 'inner' | 'grossVolumeL'> {
  const t = box.panelThicknessMm
  const inner = box.inner ?? (box.outer !== undefined && t !== undefined ? innerOf(box.outer, t) : null)
  const outer = box.outer ?? (box.inner !== undefined && t !== undefined ? outerOf(box.inner, t) : null)
  return { outer, inner, grossVolumeL: inner === null ? null : volumeL(inner) }
}

// The tube takes up air, which changes its length: a contraction that settles within a few rounds.
function settledNetL(
  beforeTubesL: number,
  port: Port | undefined,
  panelThicknessMm: number,
  innerWidthMm: number | null,
  solve: Solve,
): number {
  let net = beforeTubesL
  for (let i = 0; i < 40 && net > 0; i++) {
    const solved = solve(net)
    if (port === undefined || solved === null) return net
    const bodyL = portBodyL(port, solved.lengthMm ?? 0, panelThicknessMm, innerWidthMm)
    const next = beforeTubesL - solved.geometry.count * bodyL
    if (Math.abs(next - net) < 1e-12 * beforeTubesL) return next
    net = next
  }
  return net
}

// Below a thimble of air the circuit says nothing about a real box.
const MINIMUM_NET_L = 0.005

/**
 * Works out sides and free air of a box and solves its port on that air (times `liningGain`), the tube's own body
 * included. Refuses boxes without sides or volume, and boxes whose drivers and tubes leave no air.
 * Source: geometry; port as in port.ts.
 */
export function enclosure(
  box: Box,
  bodies: readonly BodyInBox[],
  port: Port | undefined,
  air: AirState,
  liningGain: number,
): Enclosure | { faults: Fault[] } {
  const faults = sidesFaults(box, '/box')
  if (faults.length > 0) return { faults }
  const sides = sidesOf(box)
  const gross = sides.grossVolumeL
  const solve: Solve = (netL) => (port === undefined ? null : tunePort(port, netL * liningGain, air))
  if (box.netVolumeL !== undefined) {
    if (box.netVolumeL > (gross ?? box.netVolumeL))
      return {
        faults: [
          { at: '/box/netVolumeL', message: `cannot exceed the ${litre(gross ?? 0)} inside the walls` },
        ],
      }
    return { netVolumeL: box.netVolumeL, port: solve(box.netVolumeL), assumptions: [], ...sides }
  }
  const grossL = gross ?? 0
  const fittings = fittingsL(box, bodies, sides.inner)
  const netVolumeL = settledNetL(
    grossL - fittings.takenL,
    port,
    box.panelThicknessMm ?? 0,
    sides.inner?.widthMm ?? null,
    solve,
  )
  if (netVolumeL < MINIMUM_NET_L) {
    const message = `drivers, tubes and fittings take ${litre(grossL - netVolumeL)} of the ${litre(grossL)} inside; no air is left`
    return { faults: [{ at: box.outer === undefined ? '/box/inner' : '/box/outer', message }] }
  }
  const assumptions = [...fittings.assumptions, ...tubeWallAssumption(port)]
  return { netVolumeL, port: solve(netVolumeL), assumptions, ...sides }
}
