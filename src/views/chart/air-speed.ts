import { hertz, say } from '../../core/say.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { bandMark, resonanceMarks } from './box-marks.ts'
import { axisAround } from './linear-axis.ts'
import type { Level } from './panel.ts'
import { type Named, titled } from './picture.ts'
import { plot } from './plot.ts'

type Sections = Pick<BoxTuningSections, 'port' | 'limits' | 'tuning' | 'curves'>

/** Peak speeds at which a port begins to be heard: the limits of the findings about the box. Common practice. */
const PORT_LIMITS = [
  { value: 10, above: 'a square edge may be heard' },
  { value: 17, above: 'plainly audible' },
  { value: 34, above: 'it roars' },
] as const

/** Speed of the air in the port with its limits, or of the passive radiator, or the news that neither is there. */
export function airSpeedPicture(sections: Sections, said: Named = {}): string {
  const { port, limits, tuning, curves } = sections
  const fastest = curves.portAirSpeedMPerS.reduce((most, speed) => Math.max(most, speed), 0)
  const levels = port === null ? [] : levelsUpTo(fastest)
  const spot =
    port === null
      ? []
      : [
          {
            hz: port.atHz,
            value: port.airSpeedMPerS,
            text: `${metres(port.airSpeedMPerS)} at ${hertz(port.atHz)}`,
          },
        ]
  return plot({
    id: 'air-speed',
    title: titled(
      port === null && fastest > 0 ? 'Speed of the passive radiator' : 'Air speed in the port',
      said,
    ),
    says: [fastestSaid(sections, fastest)],
    frequencyHz: curves.frequencyHz,
    marks: [bandMark(limits), ...resonanceMarks(tuning)],
    panels: [
      {
        axisTitle: 'Peak speed at this drive (m/s)',
        axis: axisAround([0, ...curves.portAirSpeedMPerS, ...levels.map(({ value }) => 1.1 * value)]),
        height: 250,
        curves: [{ values: curves.portAirSpeedMPerS, look: 'first' }],
        levels,
        spots: spot,
      },
    ],
  })
}

/** The limits that are passed, and the next one to show how far it is. */
const levelsUpTo = (fastest: number): Level[] =>
  PORT_LIMITS.filter((_, index) => index === 0 || (PORT_LIMITS[index - 1]?.value ?? 0) < fastest).map(
    ({ value, above }) => ({ value, text: `${value} m/s: ${above}` }),
  )

const metres = (speed: number): string => say(speed, 'm/s')

function fastestSaid({ port, curves }: Sections, fastest: number): string {
  if (port !== null) {
    const passed = PORT_LIMITS.filter(({ value }) => port.airSpeedMPerS > value).at(-1)
    const judged = passed === undefined ? 'it stays quiet' : passed.above
    return `The air in the port moves at ${metres(port.airSpeedMPerS)} at most, at ${hertz(port.atHz)}: ${judged}.`
  }
  if (fastest === 0) return 'This box has neither a port nor a passive radiator: no air moves in or out.'
  const at = curves.frequencyHz[curves.portAirSpeedMPerS.indexOf(fastest)] ?? 0
  return `The passive radiator moves at ${metres(fastest)} at most, at ${hertz(at)}.`
}
