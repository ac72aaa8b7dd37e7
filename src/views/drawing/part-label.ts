import type { Rectangle, Shape } from './drawing.ts'
import { at, textAround } from './shapes.ts'
import { shortened, typeWidthMm } from './type-width.ts'

/** Sizes of type from the liked one to the least that can be read, mm. */
const SIZES_MM = [3.2, 2.6, 2.1, 1.8] as const
const LEAST_MM = 1.8
const LINE = 1.25
const PAD_MM = 0.8
/** A name cut shorter than this many signs says nothing. */
const LEAST_SIGNS = 5

/** What is written into a part. */
export interface PartWords {
  name: string
  /** Its size, and marks such as that it is turned. */
  details: readonly string[]
  /** What stands for all of it where nothing else fits. */
  key: string
}

/** How a rectangle is written in: level, or upwards where only its height has room. */
interface Room {
  alongMm: number
  acrossMm: number
  upright: boolean
}

interface Fit {
  lines: readonly string[]
  sizeMm: number
}

const fits = (lines: readonly string[], sizeMm: number, { alongMm, acrossMm }: Room): boolean =>
  lines.length * LINE * sizeMm + PAD_MM <= acrossMm &&
  lines.every((words) => typeWidthMm(words, sizeMm) + 2 * PAD_MM <= alongMm)

/** The fullest wording in the largest type that fits: in lines, in one line, then with the name shortened, else none. */
function fitOf({ name, details }: PartWords, room: Room): Fit | null {
  const wordings = [[name, ...details], [name, details.join(', ')], [[name, ...details].join(', ')]]
  for (const sizeMm of SIZES_MM) {
    const lines = wordings.find((wording) => fits(wording, sizeMm, room))
    if (lines !== undefined) return { lines, sizeMm }
  }
  const short = shortened(name, room.alongMm - 2 * PAD_MM, LEAST_MM)
  const shorter = [
    [short, ...details],
    [short, details.join(', ')],
  ]
  const lines =
    [...short].length < LEAST_SIGNS ? undefined : shorter.find((wording) => fits(wording, LEAST_MM, room))
  return lines === undefined ? null : { lines, sizeMm: LEAST_MM }
}

/**
 * The words in a rectangle, and whether only its key had room.
 * @param wordsFor  the words, told whether they are written upwards: an arrow among them then points another way
 */
export function partLabel(
  area: Rectangle,
  name: string,
  wordsFor: (upright: boolean) => PartWords,
): { shapes: Shape[]; keyed: boolean } {
  const upright = area.widthMm > area.lengthMm && typeWidthMm(name, SIZES_MM[0]) > area.lengthMm - 2 * PAD_MM
  const room: Room = upright
    ? { alongMm: area.widthMm, acrossMm: area.lengthMm, upright }
    : { alongMm: area.lengthMm, acrossMm: area.widthMm, upright }
  const words = wordsFor(upright)
  const fit = fitOf(words, room)
  const { lines, sizeMm } = fit ?? { lines: [words.key], sizeMm: keySizeMm(words.key, area) }
  const middle = at(area.xMm + area.lengthMm / 2, area.yMm + area.widthMm / 2)
  const turned = upright && fit !== null
  const shapes = lines.map((line, index) => {
    const down = (index - (lines.length - 1) / 2) * LINE * sizeMm
    const place = turned ? at(middle.xMm + down, middle.yMm) : at(middle.xMm, middle.yMm - down)
    return textAround(place, line, { sizeMm, angleDeg: turned ? 90 : 0 })
  })
  return { shapes, keyed: fit === null }
}

/** As large as the part takes, down to what can just be read. */
const keySizeMm = (key: string, { lengthMm, widthMm }: Rectangle): number =>
  Math.max(1.5, Math.min(2.6, 0.8 * widthMm, (2.6 * 0.9 * lengthMm) / typeWidthMm(key, 2.6)))
