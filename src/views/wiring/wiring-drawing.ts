import type { Drawing, Point, Shape } from '../drawing/drawing.ts'
import { titled } from '../drawing/job.ts'
import { moved } from '../drawing/placed.ts'
import { at, rectangle, text, textAround } from '../drawing/shapes.ts'
import { shortened, wrapped } from '../drawing/type-width.ts'
import { type Circuit, channelsOf } from './circuit.ts'
import { loadSide } from './load-side.ts'
import { valued } from './network.ts'
import { SYMBOL } from './pens.ts'
import { signalSide, signalTerminals } from './signal-side.ts'
import { supplySide } from './supply-side.ts'
import { circuitSaid } from './wiring-said.ts'

/** As wide as both papers are between their margins. */
const WIDTH_MM = 190
const MARGIN_MM = 3
const TITLE_MM = 4
const HEAD_MM = 10
const AMPLIFIER_MM = 19
const NOTE_MM = 2.8

function amplifierSaid({ amplifier, ...circuit }: Circuit): string {
  const channels = channelsOf({ amplifier, ...circuit })
  return [
    `${channels} channel${channels === 1 ? '' : 's'}`,
    amplifier.output === undefined ? '' : `${amplifier.output} output`,
    amplifier.minimumLoadOhm === undefined
      ? ''
      : `loads of ${valued(amplifier.minimumLoadOhm, 'Ω')} and more`,
    amplifier.gainDb === undefined ? '' : valued(amplifier.gainDb, 'dB'),
  ]
    .filter((words) => words !== '')
    .join(', ')
}

interface Named {
  xMm: number
  words: string
}

function amplifierShapes(
  circuit: Circuit,
  box: { top: number; widthMm: number },
  above: Named[],
  under: Named[],
) {
  const { top, widthMm } = box
  const bottom = top - AMPLIFIER_MM
  const middle = at(widthMm / 2, top - AMPLIFIER_MM / 2)
  return [
    rectangle(SYMBOL, {
      xMm: MARGIN_MM,
      yMm: bottom,
      lengthMm: widthMm - 2 * MARGIN_MM,
      widthMm: AMPLIFIER_MM,
    }),
    textAround(at(middle.xMm, middle.yMm + 1.9), 'Amplifier', { sizeMm: 3.4, role: 'heading' }),
    textAround(at(middle.xMm, middle.yMm - 2.1), amplifierSaid(circuit)),
    ...above.map(({ xMm, words }) => textAround(at(xMm, top - 2.8), words)),
    ...under.map(({ xMm, words }) => textAround(at(xMm, bottom + 2.8), words)),
  ]
}

/** What the picture does not show by itself. */
function notesOf({ signal, ...circuit }: Circuit, left: string): string[] {
  const channels = channelsOf({ signal, ...circuit })
  return [
    ...(circuit.amplifier.output === 'bridge'
      ? [
          'Bridge output: no loudspeaker wire is ground. Join no wires of two channels, and none to a metal box.',
        ]
      : []),
    ...(left === '' ? [] : [left]),
    ...(channels > 2 ? ['Of the inputs the first two are drawn; the others are wired alike.'] : []),
    ...(signal.volumeControl !== undefined && channels > 1
      ? ['Dashes between the volume controls: one shaft turns them all.']
      : []),
    'A dot joins wires; wires that cross without one are not joined.',
  ]
}

/** What stands above the amplifier, and where it ends there. */
function aboveSide(circuit: Circuit, top: Point, widthMm: number) {
  const supply = circuit.feed === null ? null : supplySide(circuit.feed)
  const channels = channelsOf(circuit)
  const signal = signalSide(circuit.signal, channels)
  const heightMm = Math.max(supply?.heightMm ?? 0, signal.heightMm)
  const plusMm = MARGIN_MM + 7
  const middleMm =
    supply === null
      ? widthMm / 2
      : Math.min(widthMm - MARGIN_MM - 1 - signal.rightMm, 150 - (channels === 1 ? 10 : 0))
  const terminals = [
    ...(supply === null
      ? []
      : [
          { xMm: plusMm, words: '+' },
          { xMm: plusMm + supply.railsMm, words: '\u2212' },
        ]),
    ...signalTerminals(circuit.signal, channels).map(({ xMm, words }) => ({ xMm: middleMm + xMm, words })),
  ]
  const shapes: Shape[] = [
    ...(supply?.drawn(at(plusMm, top.yMm), heightMm) ?? []),
    ...signal.drawn(at(middleMm, top.yMm - heightMm + signal.heightMm), signal.heightMm),
  ]
  return { heightMm, terminals, shapes }
}

/** The whole circuit from the source above to the loudspeakers below, on a picture as tall as it needs. */
export function wiringDrawing(circuit: Circuit): Drawing {
  const loads = loadSide(circuit, WIDTH_MM - 2 * MARGIN_MM - 2)
  const widthMm = Math.max(WIDTH_MM, loads.widthMm + 2 * MARGIN_MM + 2)
  const title = titled('Wiring', circuit)
  const above = aboveSide(circuit, at(0, -HEAD_MM), widthMm)
  const amplifierTop = -HEAD_MM - above.heightMm
  const loadsTop = amplifierTop - AMPLIFIER_MM
  const loadsLeft = (widthMm - loads.widthMm) / 2
  const notes = notesOf(circuit, loads.left).flatMap((note) =>
    wrapped(note, widthMm - 2 * MARGIN_MM, NOTE_MM),
  )
  const notesTop = loadsTop - loads.heightMm - 5
  const heightMm = 3 - notesTop + notes.length * 4
  const outputs = loads.outputs.map(({ xMm, words }) => ({ xMm: loadsLeft + xMm, words }))
  const shapes: Shape[] = [
    text(at(MARGIN_MM, -6), shortened(title, widthMm - 2 * MARGIN_MM, TITLE_MM, 'heading'), {
      sizeMm: TITLE_MM,
      role: 'heading',
    }),
    ...amplifierShapes(circuit, { top: amplifierTop, widthMm }, above.terminals, outputs),
    ...above.shapes,
    ...loads.drawn(at(loadsLeft, loadsTop)),
    ...notes.map((note, index) => text(at(MARGIN_MM, notesTop - 1 - 4 * index), note)),
  ]
  return {
    title,
    says: circuitSaid(circuit),
    widthMm,
    heightMm,
    layers: [moved({ shapes }, at(0, heightMm))],
  }
}
