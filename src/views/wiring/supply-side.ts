import type { Supply } from '../../schema/power.ts'
import type { Point, Shape } from '../drawing/drawing.ts'
import { at, rectangle, textAround } from '../drawing/shapes.ts'
import type { Feed } from './circuit.ts'
import { across, acrossWidthMm, bothWires, heightOf, inLine, ladder, type Rung } from './ladder.ts'
import { inSeries } from './nest.ts'
import { valued } from './network.ts'
import { lines, type Part } from './part.ts'
import { AROUND, SYMBOL, terminal, wire } from './pens.ts'
import { fuse, lamp, onOffSwitch, polarisedCapacitor, resistor } from './symbols.ts'

const SOURCE_SAID = {
  'computer-port': 'Computer port',
  charger: 'Charger',
  'power-bank': 'Power bank',
  adapter: 'Adapter',
  cells: 'Cells',
} satisfies Record<Supply['kind'], string>

const SOURCE_MM = 12
const LEAST_RAILS_MM = 46

const gaugeSaid = ({ gaugeAwg, areaMm2 }: NonNullable<Supply['cable']>): string => {
  if (areaMm2 !== undefined) return `, ${valued(areaMm2, 'mm²')}`
  return gaugeAwg === undefined ? '' : `, ${gaugeAwg} AWG`
}

function lead(cable: NonNullable<Supply['cable']>): Rung {
  return bothWires(13, (plus, minus) => [
    rectangle(AROUND, {
      xMm: plus.xMm - 2,
      yMm: plus.yMm - 10.5,
      lengthMm: minus.xMm - plus.xMm + 4,
      widthMm: 8,
    }),
    textAround(
      at((plus.xMm + minus.xMm) / 2, plus.yMm - 6.5),
      `lead, ${valued(cable.lengthM, 'm')}${gaugeSaid(cable)}`,
    ),
  ])
}

const acrossParts = ({ keepAliveOhm, reservoirUf, reservoirRatingV, indicatorOhm }: Feed): Part[] => [
  ...(keepAliveOhm === null ? [] : [resistor('keeps awake', valued(keepAliveOhm, 'Ω'))]),
  ...(reservoirUf === undefined || reservoirUf === 0
    ? []
    : [
        polarisedCapacitor(
          'reservoir',
          valued(reservoirUf, 'µF'),
          ...(reservoirRatingV === null ? [] : [`${valued(reservoirRatingV, 'V')} or more`]),
        ),
      ]),
  ...(indicatorOhm === null ? [] : [inSeries([resistor(valued(indicatorOhm, 'Ω')), lamp('indicator')])]),
]

function rungsOf(feed: Feed): Rung[] {
  const { kind, fuseA, switchA, cable, inrushLimiterOhm = 0 } = feed
  const parts = acrossParts(feed)
  return [
    inLine(fuse(kind === 'cells' ? 'fuse at the cells' : 'fuse', `${valued(fuseA, 'A')} slow`)),
    ...(switchA === null ? [] : [inLine(onOffSwitch('switch', valued(switchA, 'A')))]),
    ...(cable === undefined ? [] : [lead(cable)]),
    ...(inrushLimiterOhm === 0 ? [] : [inLine(resistor('limits the inrush', valued(inrushLimiterOhm, 'Ω')))]),
    ...(parts.length === 0 ? [] : [across(parts)]),
  ]
}

/** What stands above the supply terminals of the amplifier. */
export interface SupplySide {
  heightMm: number
  /** Distance from plus to minus. */
  railsMm: number
  /** @param plus  upper end of the plus rail; @param downMm  how far below the amplifier is */
  drawn: (plus: Point, downMm: number) => Shape[]
}

export function supplySide(feed: Feed): SupplySide {
  const rungs = rungsOf(feed)
  const railsMm = Math.max(LEAST_RAILS_MM, acrossWidthMm(acrossParts(feed)))
  const ladderMm = heightOf(rungs)
  return {
    heightMm: SOURCE_MM + ladderMm + 3,
    railsMm,
    drawn: (corner, downMm) => {
      const [plus, minus] = [
        at(corner.xMm, corner.yMm - SOURCE_MM),
        at(corner.xMm + railsMm, corner.yMm - SOURCE_MM),
      ]
      const foot = corner.yMm - downMm
      const sign = (point: Point, words: string, aside: number) =>
        textAround(at(point.xMm + aside, point.yMm + 2.4), words, { sizeMm: 3.4 })
      return [
        rectangle(SYMBOL, {
          xMm: plus.xMm - 4,
          yMm: plus.yMm,
          lengthMm: railsMm + 8,
          widthMm: SOURCE_MM,
        }),
        ...lines(at((plus.xMm + minus.xMm) / 2 - 12, plus.yMm + SOURCE_MM / 2), [
          SOURCE_SAID[feed.kind],
          feed.cellsInSeries === undefined
            ? valued(feed.voltageV, 'V')
            : `${feed.cellsInSeries} in series, ${valued(feed.voltageV, 'V')}`,
        ]),
        sign(plus, '+', 0),
        sign(minus, '\u2212', 0),
        ...ladder(rungs, plus, minus),
        wire(at(plus.xMm, plus.yMm - ladderMm), at(plus.xMm, foot)),
        wire(at(minus.xMm, minus.yMm - ladderMm), at(minus.xMm, foot)),
        terminal(plus),
        terminal(minus),
        terminal(at(plus.xMm, foot)),
        terminal(at(minus.xMm, foot)),
      ]
    },
  }
}
