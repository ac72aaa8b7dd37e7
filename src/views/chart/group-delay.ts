import { hertz, say } from '../../core/say.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { isNumber } from './axis.ts'
import { resonanceMarks } from './box-marks.ts'
import { axisAround } from './linear-axis.ts'
import { type Named, titled } from './picture.ts'
import { plot } from './plot.ts'

/** How much later a tone of each frequency comes out, beside the time one period of it takes. */
export function groupDelayPicture(
  { tuning, curves }: Pick<BoxTuningSections, 'tuning' | 'curves'>,
  said: Named = {},
): string {
  const { frequencyHz, groupDelayMs } = curves
  return plot({
    id: 'group-delay',
    title: titled('Group delay', said),
    says: [
      longestSaid(frequencyHz, groupDelayMs),
      'The dashed curve is one period of the tone: a delay well below it goes unnoticed.',
    ],
    frequencyHz,
    marks: resonanceMarks(tuning),
    panels: [
      {
        axisTitle: 'Group delay (ms)',
        axis: axisAround([0, ...groupDelayMs]),
        height: 250,
        curves: [
          { values: groupDelayMs, text: 'group delay', look: 'first' },
          { values: frequencyHz.map((hz) => 1000 / hz), text: 'one period of the tone', look: 'second' },
        ],
      },
    ],
  })
}

function longestSaid(frequencyHz: readonly number[], delayMs: readonly number[]): string {
  const longest = delayMs.filter(isNumber).reduce((most, delay) => Math.max(most, delay), -Infinity)
  const at = frequencyHz[delayMs.indexOf(longest)]
  return at === undefined
    ? 'No group delay is known.'
    : `The delay is longest at ${hertz(at)}, ${say(longest, 'ms')}, ${say((longest * at) / 1000, 'periods', 2)} of that tone.`
}
