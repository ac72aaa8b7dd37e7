import type { Point, Segments, Shape } from '../drawing/drawing.ts'
import { at, rectangle, textAround } from '../drawing/shapes.ts'
import { below, beside, besideWidthMm, lines, type Part } from './part.ts'
import { path, SYMBOL, shape, wire } from './pens.ts'

// Symbols by IEC 60617 in their plain form (from memory): a rectangle is a resistor, with the wire through it a fuse.

/** Corners of a half circle bulging to the right, from its upper end. */
const halfCircle = (top: Point, radiusMm: number): Point[] =>
  Array.from({ length: 13 }, (_, step) => {
    const angle = Math.PI / 2 - (Math.PI * step) / 12
    return at(top.xMm + radiusMm * Math.cos(angle), top.yMm - radiusMm + radiusMm * Math.sin(angle))
  })

const boxAt = (top: Point, halfMm: number, heightMm: number) =>
  rectangle(SYMBOL, {
    xMm: top.xMm - halfMm,
    yMm: top.yMm - heightMm,
    lengthMm: 2 * halfMm,
    widthMm: heightMm,
  })

/** Plus above and minus below, left of the wire. */
const polarity = (top: Point, heightMm: number): Shape[] => [
  textAround(at(top.xMm - 3.4, top.yMm - 2.2), '+', { sizeMm: 3.4 }),
  textAround(at(top.xMm - 3.4, top.yMm - heightMm + 2.2), '\u2212', { sizeMm: 3.4 }),
]

interface Symbol {
  heightMm: number
  /** Reach to the left and to the right of the wire, without words. */
  leftMm: number
  rightMm: number
  drawn: (top: Point) => Shape[]
}

/** A symbol with what it is called and worth to its right. */
const labelled = ({ heightMm, leftMm, rightMm, drawn }: Symbol, words: readonly string[]): Part => ({
  leftMm,
  rightMm: rightMm + 1.5 + besideWidthMm(words),
  heightMm,
  drawn: (top) => [...drawn(top), ...lines(at(top.xMm + rightMm + 1.5, top.yMm - heightMm / 2), words)],
})

const LOUDSPEAKER: Symbol = {
  heightMm: 17,
  leftMm: 5.5,
  rightMm: 6,
  drawn: (top) => {
    const middle = top.yMm - 8.5
    const x = top.xMm
    return [
      wire(top, below(top, 4.5)),
      boxAt(below(top, 4.5), 2, 8),
      shape(SYMBOL, [
        at(x + 2, middle + 2.4),
        at(x + 6, middle + 5.4),
        at(x + 6, middle - 5.4),
        at(x + 2, middle - 2.4),
      ]),
      wire(below(top, 12.5), below(top, 17)),
      ...polarity(top, 17),
    ]
  },
}

const RESISTOR: Symbol = {
  heightMm: 16,
  leftMm: 2,
  rightMm: 2,
  drawn: (top) => [
    wire(top, below(top, 3.5)),
    boxAt(below(top, 3.5), 1.8, 9),
    wire(below(top, 12.5), below(top, 16)),
  ],
}

const FUSE: Symbol = {
  heightMm: 14,
  leftMm: 2,
  rightMm: 2,
  drawn: (top) => [wire(top, below(top, 14)), boxAt(below(top, 3.2), 1.5, 7.6)],
}

const COIL: Symbol = {
  heightMm: 18,
  leftMm: 1.5,
  rightMm: 2,
  drawn: (top) => [
    wire(top, below(top, 3)),
    path(
      SYMBOL,
      [0, 1, 2, 3].flatMap((turn) => halfCircle(below(top, 3 + 3 * turn), 1.5)),
    ),
    wire(below(top, 15), below(top, 18)),
  ],
}

const plate = (middle: Point): Segments => path(SYMBOL, [beside(middle, -4), beside(middle, 4)])

const CAPACITOR: Symbol = {
  heightMm: 14,
  leftMm: 4,
  rightMm: 4,
  drawn: (top) => [
    wire(top, below(top, 6.1)),
    plate(below(top, 6.1)),
    plate(below(top, 7.9)),
    wire(below(top, 7.9), below(top, 14)),
  ],
}

const POLARISED: Symbol = {
  ...CAPACITOR,
  leftMm: 6,
  drawn: (top) => [
    ...CAPACITOR.drawn(top),
    textAround(at(top.xMm - 3.2, top.yMm - 3.6), '+', { sizeMm: 3.4 }),
  ],
}

const SWITCH: Symbol = {
  heightMm: 14,
  leftMm: 5,
  rightMm: 1,
  drawn: (top) => [
    wire(top, below(top, 3.5)),
    path(SYMBOL, [below(top, 10.5), at(top.xMm - 3.6, top.yMm - 3.6)]),
    wire(below(top, 10.5), below(top, 14)),
  ],
}

/** A diode from above to below with two arrows away from it: light. */
const LAMP: Symbol = {
  heightMm: 12,
  leftMm: 3,
  rightMm: 6.5,
  drawn: (top) => {
    const [x, y] = [top.xMm, top.yMm]
    const arrow = (upMm: number): Shape[] => [
      path('dimension', [at(x + 3.2, y - 5.6 + upMm), at(x + 6, y - 3.4 + upMm)]),
      shape('kerf', [at(x + 6.3, y - 3.1 + upMm), at(x + 4.9, y - 3.5 + upMm), at(x + 5.6, y - 4.4 + upMm)]),
    ]
    return [
      wire(top, below(top, 12)),
      shape(SYMBOL, [at(x - 2.6, y - 3.8), at(x + 2.6, y - 3.8), at(x, y - 8.2)]),
      path(SYMBOL, [at(x - 2.6, y - 8.2), at(x + 2.6, y - 8.2)]),
      ...arrow(0),
      ...arrow(-2.4),
    ]
  },
}

export const loudspeaker = (name: string, value: string): Part => {
  const words = value === '' ? [name] : [name, value]
  return labelled(LOUDSPEAKER, words)
}
export const resistor = (...words: string[]): Part => labelled(RESISTOR, words)
export const coil = (...words: string[]): Part => labelled(COIL, words)
export const capacitor = (...words: string[]): Part => labelled(CAPACITOR, words)
export const polarisedCapacitor = (...words: string[]): Part => labelled(POLARISED, words)
export const fuse = (...words: string[]): Part => labelled(FUSE, words)
export const onOffSwitch = (...words: string[]): Part => labelled(SWITCH, words)
export const lamp = (...words: string[]): Part => labelled(LAMP, words)

/** Symbols by themselves, for places where their words stand elsewhere. */
export const bareCapacitor: Part = CAPACITOR
export const bareResistor: Part = RESISTOR
