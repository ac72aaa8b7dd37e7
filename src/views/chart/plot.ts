import type { Axis } from './axis.ts'
import { logAxis, positiveDomain } from './log-axis.ts'
import { markLanes, type PlacedMark } from './mark-lanes.ts'
import { drawnPanel, type Panel, ruled } from './panel.ts'
import { type Heading, headOf, PICTURE_WIDTH, picture, TEXT_SIZE, textAt } from './picture.ts'

/** A frequency that is pointed out. */
export interface Mark {
  hz: number
  text: string
}

/** Curves over frequency, in one panel or several above each other. */
export interface Plot extends Heading {
  frequencyHz: readonly number[]
  marks: readonly Mark[]
  panels: readonly Panel[]
}

const LEFT = 66
const RIGHT = PICTURE_WIDTH - 20
const LANE_HEIGHT = 15
const BETWEEN_PANELS = 14
const BELOW_PANELS = 44
const AUDIBLE_HZ = [20, 20_000] as const
const MOST_FREQUENCY_TICKS = 20

/** Draws a plot: heading, marks, panels, and the frequencies below. */
export function plot(given: Plot): string {
  const head = headOf(given)
  const domain = positiveDomain(given.frequencyHz, AUDIBLE_HZ)
  const x = logAxis({ domain, mostTicks: MOST_FREQUENCY_TICKS, prefixFrom: 1000 })([LEFT, RIGHT])
  const seen = given.marks.filter(({ hz }) => hz >= domain[0] && hz <= domain[1])
  const marks = markLanes(
    seen.map(({ hz, text }) => ({ x: x.at(hz), text })),
    RIGHT,
    TEXT_SIZE,
  )
  const lanes = marks.reduce((most, { lane }) => Math.max(most, lane + 1), 0)
  const top = head.bottom + 8 + lanes * LANE_HEIGHT
  const frames = framesOf(given.panels, top)
  const bottom = frames.at(-1)?.bottom ?? top
  const panels = given.panels.flatMap((panel, index) => {
    const frame = frames[index]
    const clipId = `${given.id}-clip-${index + 1}`
    return frame === undefined
      ? []
      : [
          drawnPanel(panel, {
            clipId,
            frame,
            x,
            frequencyHz: given.frequencyHz,
            markX: marks.map((mark) => mark.x),
          }),
        ]
  })
  return picture(given, bottom + BELOW_PANELS, [
    head.drawn,
    ...markLines(marks, top, bottom),
    ...marks.map(({ text, textX, lane }) => textAt(textX, baselineOf(lane, top), text, { kind: 'label' })),
    ...panels,
    ...frequencies(x, bottom),
  ])
}

function framesOf(panels: readonly Panel[], top: number) {
  let from = top
  return panels.map(({ height }) => {
    const frame = { left: LEFT, right: RIGHT, top: from, bottom: from + height }
    from = frame.bottom + BETWEEN_PANELS
    return frame
  })
}

const baselineOf = (lane: number, top: number): number => top - 5 - lane * LANE_HEIGHT

/** One line for each place: marks at the same frequency share it, as dashes drawn twice fill each other's gaps. */
function markLines(marks: readonly PlacedMark[], top: number, bottom: number): string[] {
  const highest = new Map<number, number>()
  for (const { x, lane } of marks) highest.set(x, Math.max(lane, highest.get(x) ?? 0))
  return [...highest].map(([x, lane]) => ruled('mark', [x, baselineOf(lane, top) - 9], [x, bottom]))
}

function frequencies(x: Axis, bottom: number): string[] {
  return [
    ...x.ticks.map(({ value, text }) =>
      textAt(x.at(value), bottom + 17, text, { kind: 'tick', anchor: 'middle' }),
    ),
    textAt((LEFT + RIGHT) / 2, bottom + 36, 'Frequency (Hz)', { kind: 'quiet', anchor: 'middle' }),
  ]
}
