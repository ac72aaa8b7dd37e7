import type { Point, Shape } from '../drawing/drawing.ts'
import { at, rectangle, textAround } from '../drawing/shapes.ts'
import { type Circuit, channelsOf } from './circuit.ts'
import { namingOf, networkOf, valued } from './network.ts'
import { below, type Part } from './part.ts'
import { AROUND, terminal, wire } from './pens.ts'
import { polarisedCapacitor } from './symbols.ts'

/** From the network of a channel to the wire that goes back beside it. */
const BACK_MM = 4
const PAD_MM = 5
/** Wire from a terminal of the box to the network. */
const IN_MM = 4
const BOX_HEAD_MM = 7
/** Leads between the amplifier and the box. */
const LEADS_MM = 9
const BETWEEN_MM = 6

/** A channel with its number and where its two wires are. */
interface Channel {
  number: number
  network: Part
}

interface Box {
  number: number
  channels: Channel[]
}

const channelWidthMm = ({ network }: Channel): number => network.leftMm + network.rightMm + BACK_MM
const boxWidthMm = ({ channels }: Box): number =>
  channels.reduce((sum, channel) => sum + channelWidthMm(channel) + PAD_MM, PAD_MM)

/** The loads as they hang below the amplifier. */
export interface LoadSide {
  widthMm: number
  heightMm: number
  /** Says what is not drawn; empty when all is. */
  left: string
  drawn: (corner: Point) => Shape[]
  /** The outputs from the left end, for the amplifier to write beside them. */
  outputs: { xMm: number; words: string }[]
}

function boxesOf(circuit: Circuit): Box[] {
  return Array.from({ length: circuit.boxes }, (_, box) => {
    const naming = namingOf(circuit.drivers)
    return {
      number: box + 1,
      channels: Array.from({ length: circuit.channelsPerBox }, (_, channel) => ({
        number: box * circuit.channelsPerBox + channel + 1,
        network: networkOf(circuit.wiring, circuit.drivers, naming),
      })),
    }
  })
}

/** As many boxes as a width takes; of a box that is too wide by itself, its first channel. */
function fitting(boxes: readonly Box[], widthMm: number): Box[] {
  const [first, ...others] = boxes
  if (first === undefined) return []
  if (boxWidthMm(first) > widthMm) return [{ ...first, channels: first.channels.slice(0, 1) }]
  let sum = boxWidthMm(first)
  const more = others.filter((box) => {
    sum += boxWidthMm(box) + BETWEEN_MM
    return sum <= widthMm
  })
  return [first, ...more]
}

function leftOutSaid(shown: readonly Box[], circuit: Circuit): string {
  const last = shown.at(-1)?.channels.at(-1)?.number ?? 0
  const all = channelsOf(circuit)
  if (last === all) return ''
  return last + 1 === all
    ? `Channel ${all} is wired like channel ${last}.`
    : `Channels ${last + 1} to ${all} are wired like channel ${last}.`
}

function channelShapes({ network }: Channel, left: Point, downMm: number, capacitor: Part | null): Shape[] {
  const plus = at(left.xMm + network.leftMm, left.yMm)
  const minus = at(plus.xMm + network.rightMm + BACK_MM, left.yMm)
  const [plusIn, minusIn] = [below(plus, downMm), below(minus, downMm)]
  const top = below(plusIn, IN_MM)
  const foot = below(top, network.heightMm + 2)
  const capacitorMm = capacitor?.heightMm ?? 0
  return [
    ...(capacitor === null ? [] : capacitor.drawn(plus)),
    wire(below(plus, capacitorMm), top),
    ...network.drawn(top),
    wire(below(top, network.heightMm), foot, at(minus.xMm, foot.yMm), minus),
    ...[plus, minus, plusIn, minusIn].map(terminal),
    textAround(at(plusIn.xMm + 2.6, plusIn.yMm - 2.4), '+', { sizeMm: 3.4 }),
    textAround(at(minusIn.xMm + 2.6, minusIn.yMm - 2.4), '\u2212', { sizeMm: 3.4 }),
  ]
}

export function loadSide(circuit: Circuit, roomMm: number): LoadSide {
  const shown = fitting(boxesOf(circuit), roomMm)
  const capacitor =
    circuit.outputCapacitorUf === null
      ? null
      : polarisedCapacitor(`${valued(circuit.outputCapacitorUf, 'µF')}`, 'or more')
  const downMm = LEADS_MM + (capacitor?.heightMm ?? 0)
  const tallestMm = Math.max(
    ...shown.flatMap(({ channels }) => channels.map(({ network }) => network.heightMm)),
  )
  const widthsMm = shown.map(boxWidthMm)
  const widthMm = widthsMm.reduce((sum, width) => sum + width + BETWEEN_MM, -BETWEEN_MM)
  const bodyMm = IN_MM + tallestMm + 2 + BOX_HEAD_MM
  const starts = widthsMm.map((_, index) =>
    widthsMm.slice(0, index).reduce((sum, width) => sum + width + BETWEEN_MM, 0),
  )
  const placed = shown.flatMap((box, index) => {
    let xMm = (starts[index] ?? 0) + PAD_MM
    return box.channels.map((channel) => {
      const here = { channel, xMm }
      xMm += channelWidthMm(channel) + PAD_MM
      return here
    })
  })
  return {
    widthMm,
    heightMm: downMm + bodyMm,
    left: leftOutSaid(shown, circuit),
    outputs: placed.flatMap(({ channel: { number, network }, xMm }) => [
      { xMm: xMm + network.leftMm, words: `${number} +` },
      { xMm: xMm + network.leftMm + network.rightMm + BACK_MM, words: `${number} \u2212` },
    ]),
    drawn: (corner) => [
      ...shown.flatMap((box, index) => {
        const xMm = corner.xMm + (starts[index] ?? 0)
        const topMm = corner.yMm - downMm
        return [
          rectangle(AROUND, { xMm, yMm: topMm - bodyMm, lengthMm: boxWidthMm(box), widthMm: bodyMm }),
          textAround(at(xMm + 2, topMm - bodyMm + 3.2), boxSaid(box, circuit), {
            anchor: 'start',
            role: 'heading',
          }),
        ]
      }),
      ...placed.flatMap(({ channel, xMm }) =>
        channelShapes(channel, at(corner.xMm + xMm, corner.yMm), downMm, capacitor),
      ),
    ],
  }
}

const boxSaid = ({ number }: Box, { boxes }: Circuit): string => (boxes === 1 ? 'Box' : `Box ${number}`)
