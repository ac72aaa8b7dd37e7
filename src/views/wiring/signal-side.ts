import type { Point, Shape } from '../drawing/drawing.ts'
import { at, polygon, textAround } from '../drawing/shapes.ts'
import type { Circuit } from './circuit.ts'
import { valued } from './network.ts'
import { below, beside, lines } from './part.ts'
import { AROUND, FILLED, joint, path, terminal, wire } from './pens.ts'
import { bareCapacitor, bareResistor } from './symbols.ts'

type Signal = Circuit['signal']

/** From the middle, where the ground runs, to the wire of a channel. */
const ASIDE_MM = 23
/** From that wire on outwards to the wiper. */
const WIPER_MM = 9
const OUTERMOST_MM = ASIDE_MM + WIPER_MM + 20
const HEAD_MM = 8
const CONTROL_MM = 24
const CAPACITOR_MM = 15

/** Which way a channel stands off the middle: the first to the left. */
type Way = -1 | 1

/** The arrow of the wiper onto the track. */
const wiper = (track: Point, way: Way): Shape[] => [
  wire(at(track.xMm + way * WIPER_MM, track.yMm), at(track.xMm + way * 3.8, track.yMm)),
  polygon(FILLED, [
    at(track.xMm + way * 1.9, track.yMm),
    at(track.xMm + way * 4.2, track.yMm + 1),
    at(track.xMm + way * 4.2, track.yMm - 1),
  ]),
]

/** Where a channel enters the amplifier, from the middle. */
const inputMm = ({ volumeControl }: Signal): number =>
  volumeControl === undefined ? ASIDE_MM : ASIDE_MM + WIPER_MM

interface Place {
  /** Upper end of the ground in the middle. */
  top: Point
  downMm: number
}

function control(top: Point, way: Way, { volumeControl }: Signal): Shape[] {
  if (volumeControl === undefined) return []
  const track = below(top, HEAD_MM)
  const words = [valued(volumeControl.resistanceKohm, 'kΩ'), volumeControl.taper ?? 'audio']
  return [
    ...bareResistor.drawn(track),
    ...wiper(below(track, 8), way),
    ...lines(at(track.xMm - way * 3.2, track.yMm - 9), words, way < 0 ? 'start' : 'end'),
  ]
}

function channel(number: number, way: Way, signal: Signal, { top, downMm }: Place): Shape[] {
  const hot = beside(top, way * ASIDE_MM)
  const foot = at(top.xMm + way * inputMm(signal), top.yMm - downMm)
  const hasControl = signal.volumeControl !== undefined
  const start = hasControl ? at(foot.xMm, hot.yMm - HEAD_MM - 8) : hot
  const capacitorTop = at(foot.xMm, foot.yMm + CAPACITOR_MM + 6)
  const coupled = signal.inputCapacitorUf !== undefined
  return [
    textAround(at(hot.xMm, hot.yMm + 4), `signal ${number}`),
    ...(hasControl ? [wire(hot, below(hot, HEAD_MM))] : []),
    ...control(hot, way, signal),
    wire(start, coupled ? capacitorTop : foot),
    ...(coupled
      ? [
          ...bareCapacitor.drawn(capacitorTop),
          wire(below(capacitorTop, bareCapacitor.heightMm), foot),
          ...lines(
            at(foot.xMm + way * 5.5, capacitorTop.yMm - 7),
            [valued(signal.inputCapacitorUf ?? 0, 'µF')],
            way < 0 ? 'end' : 'start',
          ),
        ]
      : []),
    terminal(hot),
    terminal(foot),
  ]
}

/** The ends of the tracks joined to the ground in the middle. */
function grounds(ways: readonly Way[], { volumeControl }: Signal, { top }: Place): Shape[] {
  if (volumeControl === undefined) return []
  const foot = below(top, HEAD_MM + CONTROL_MM)
  return [
    ...ways.flatMap((way) => {
      const end = beside(below(top, HEAD_MM + 16), way * ASIDE_MM)
      return [wire(end, beside(foot, way * ASIDE_MM), foot)]
    }),
    joint(foot),
    // One shaft turns both tracks.
    ...(ways.length < 2
      ? []
      : [
          path(AROUND, [
            at(top.xMm - ASIDE_MM - 1.8, top.yMm - HEAD_MM - 4.6),
            at(top.xMm + ASIDE_MM + 1.8, top.yMm - HEAD_MM - 4.6),
          ]),
        ]),
  ]
}

/** What stands above the signal terminals of the amplifier. */
export interface SignalSide {
  heightMm: number
  /** Reach to both sides of the ground in the middle. */
  leftMm: number
  rightMm: number
  drawn: (top: Point, downMm: number) => Shape[]
}

/** @param channels  of the amplifier; the first two are drawn */
export function signalSide(signal: Signal, channels: number): SignalSide {
  const ways: readonly Way[] = channels === 1 ? [-1] : [-1, 1]
  const hasControl = signal.volumeControl !== undefined
  const partsMm =
    (hasControl ? CONTROL_MM : 4) + (signal.inputCapacitorUf === undefined ? 4 : CAPACITOR_MM + 6)
  return {
    heightMm: 6 + HEAD_MM + partsMm,
    leftMm: OUTERMOST_MM,
    rightMm: channels === 1 ? 10 : OUTERMOST_MM,
    drawn: (corner, downMm) => {
      const place = { top: below(corner, 6), downMm: downMm - 6 }
      const foot = at(corner.xMm, corner.yMm - downMm)
      return [
        textAround(at(corner.xMm, place.top.yMm + 4), 'ground'),
        wire(place.top, foot),
        ...ways.flatMap((way, index) => channel(index + 1, way, signal, place)),
        ...grounds(ways, signal, place),
        terminal(place.top),
        terminal(foot),
      ]
    },
  }
}

/** Names of the terminals below, for the amplifier to write beside them. */
export function signalTerminals(signal: Signal, channels: number): { xMm: number; words: string }[] {
  const asideMm = inputMm(signal)
  const ground = { xMm: 0, words: 'ground' }
  const inputs = [
    { xMm: -asideMm, words: 'in 1' },
    { xMm: asideMm, words: 'in 2' },
  ]
  return [ground, ...inputs.slice(0, channels)]
}
