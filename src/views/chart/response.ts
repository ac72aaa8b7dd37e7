import { decibel, hertz } from '../../core/say.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { resonanceMarks } from './box-marks.ts'
import { axisAround, valueDomain } from './linear-axis.ts'
import type { Curve } from './panel.ts'
import { type Named, titled } from './picture.ts'
import { type Mark, plot } from './plot.ts'
import { valueAt } from './value-at.ts'

type Sections = Pick<BoxTuningSections, 'tuning' | 'limits' | 'curves'>

/** Wishes that the picture shows. */
export interface ResponseWishes extends Named {
  lowestHz?: number | undefined
}

/** Below this far under the loudest point a response is of no use, and the picture ends. */
const SHOWN_DB = 50
const HEADROOM_DB = 2
/** Curves that differ by less lie on each other. */
const SAME_WITHIN_DB = 0.1

/** Level over frequency, at this drive voltage and the highest one, with f3, tuning and the lowest wanted note. */
export function responsePicture(sections: Sections, wishes: ResponseWishes = {}): string {
  const { tuning, curves } = sections
  const levels = [...curves.splDb, ...curves.maximumSplDb, tuning.referenceSplDb]
  const [lowest, highest] = valueDomain(levels)
  return plot({
    id: 'response',
    title: titled('Frequency response', wishes),
    says: [reachSaid(tuning), ...noteSaid(sections, wishes), highestSaid(sections)],
    frequencyHz: curves.frequencyHz,
    marks: [...f3Marks(tuning), ...resonanceMarks(tuning), ...noteMarks(wishes)],
    panels: [
      {
        axisTitle: 'Level on axis at 1 m (dB)',
        axis: axisAround([Math.max(lowest, highest - SHOWN_DB), highest + HEADROOM_DB]),
        height: 270,
        curves: levelCurves(curves),
      },
    ],
  })
}

function levelCurves({ splDb, maximumSplDb }: Sections['curves']): Curve[] {
  const same = splDb.every(
    (level, index) => Math.abs(level - (maximumSplDb[index] ?? level)) < SAME_WITHIN_DB,
  )
  return same
    ? [{ values: splDb, text: 'at this drive, the highest possible', look: 'first' }]
    : [
        { values: splDb, text: 'at this drive', look: 'first' },
        { values: maximumSplDb, text: 'highest possible', look: 'second' },
      ]
}

const reachSaid = ({ f3Hz, referenceSplDb }: Sections['tuning']): string =>
  f3Hz === null
    ? `The level stays within 3 dB of ${decibel(referenceSplDb)} down to the lowest note.`
    : `The level falls 3 dB below its ${decibel(referenceSplDb)} at ${hertz(f3Hz)}.`

function noteSaid({ tuning, curves }: Sections, { lowestHz }: ResponseWishes): string[] {
  if (lowestHz === undefined) return []
  const level = valueAt(curves.frequencyHz, curves.splDb, lowestHz)
  if (level === null) return []
  const over = level - tuning.referenceSplDb
  const side = over < 0 ? 'below' : 'above'
  return [`The lowest wanted note, ${hertz(lowestHz)}, lies ${decibel(Math.abs(over))} ${side} that level.`]
}

const highestSaid = ({ limits }: Sections): string =>
  `Every note from ${hertz(limits.bandFromHz)} up can reach ${decibel(limits.maximumSplDb)}; the one at ${hertz(limits.atHz)} ends first.`

const f3Marks = ({ f3Hz }: Sections['tuning']): Mark[] =>
  f3Hz === null ? [] : [{ hz: f3Hz, text: `f3 ${hertz(f3Hz)}` }]

const noteMarks = ({ lowestHz }: ResponseWishes): Mark[] =>
  lowestHz === undefined ? [] : [{ hz: lowestHz, text: `lowest wanted note ${hertz(lowestHz)}` }]
