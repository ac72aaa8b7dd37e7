import { hertz, mm } from '../../core/say.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { bandMark, resonanceMarks } from './box-marks.ts'
import { axisAround } from './linear-axis.ts'
import { type Named, titled } from './picture.ts'
import { plot } from './plot.ts'

type Limits = BoxTuningSections['limits']

/** Travel of the cone over frequency, with what the driver allows. */
export function excursionPicture(
  { limits, tuning, curves }: Pick<BoxTuningSections, 'limits' | 'tuning' | 'curves'>,
  said: Named = {},
): string {
  const xmax = limits.xmaxMm === null ? [] : [limits.xmaxMm]
  return plot({
    id: 'excursion',
    title: titled('Travel of the cone', said),
    says: [inBandSaid(limits), `Below the band it reaches ${mm(limits.excursionBelowBandMm)}.`],
    frequencyHz: curves.frequencyHz,
    marks: [bandMark(limits), ...resonanceMarks(tuning)],
    panels: [
      {
        axisTitle: 'Peak excursion at this drive (mm)',
        axis: axisAround([0, ...curves.excursionMm, ...xmax.map((value) => 1.15 * value)]),
        height: 250,
        curves: [{ values: curves.excursionMm, look: 'first' }],
        levels: xmax.map((value) => ({ value, text: `the driver allows ${mm(value)}` })),
        spots: [
          {
            hz: limits.excursionAtHz,
            value: limits.excursionMm,
            text: `${mm(limits.excursionMm)} at ${hertz(limits.excursionAtHz)}`,
          },
        ],
      },
    ],
  })
}

function inBandSaid({ excursionMm, excursionAtHz, bandFromHz, xmaxMm }: Limits): string {
  const moves = `From ${hertz(bandFromHz)} up the cone moves ${mm(excursionMm)} at most, at ${hertz(excursionAtHz)}`
  if (xmaxMm === null) return `${moves}.`
  return excursionMm > xmaxMm
    ? `${moves}: beyond the ${mm(xmaxMm)} of the driver.`
    : `${moves}: within the ${mm(xmaxMm)} of the driver.`
}
