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

/** How a rectangle is written in: level or upwards. */
interface Room {
  alongMm: number
  acrossMm: number
  upright: boolean
}

interface Fit {
  lines: readonly string[]
  sizeMm: number
  upright: boolean
}

/** The words, told whether they are written upwards: an arrow among them then points another way. */
export type WordsFor = (upright: boolean) => PartWords

/** Level, and upwards too where there is more height than width. */
const roomsOf = ({ lengthMm, widthMm }: Rectangle): Room[] => [
  { alongMm: lengthMm, acrossMm: widthMm, upright: false },
  ...(widthMm > lengthMm ? [{ alongMm: widthMm, acrossMm: lengthMm, upright: true }] : []),
]

const fits = (lines: readonly string[], sizeMm: number, { alongMm, acrossMm }: Room): boolean =>
  lines.length * LINE * sizeMm + PAD_MM <= acrossMm &&
  lines.every((words) => typeWidthMm(words, sizeMm) + 2 * PAD_MM <= alongMm)

/** Wordings from the best to read on: in lines, in two, in one. */
const wordings = (name: string, details: readonly string[]): string[][] => [
  [name, ...details],
  [name, details.join(', ')],
  [[name, ...details].join(', ')],
]

/** The whole name in the largest type that fits. */
function wholeFit(rooms: readonly Room[], wordsFor: WordsFor): Fit | undefined {
  for (const sizeMm of SIZES_MM) {
    for (const room of rooms) {
      const { name, details } = wordsFor(room.upright)
      const lines = wordings(name, details).find((wording) => fits(wording, sizeMm, room))
      if (lines !== undefined) return { lines, sizeMm, upright: room.upright }
    }
  }
  return undefined
}

/** The name shortened, in the least type. */
function shortenedFit(rooms: readonly Room[], wordsFor: WordsFor): Fit | undefined {
  for (const room of [...rooms].reverse()) {
    const { name, details } = wordsFor(room.upright)
    const short = shortened(name, room.alongMm - 2 * PAD_MM, LEAST_MM)
    const lines = wordings(short, details).find((wording) => fits(wording, LEAST_MM, room))
    if (lines !== undefined && [...short].length >= LEAST_SIGNS)
      return { lines, sizeMm: LEAST_MM, upright: room.upright }
  }
  return undefined
}

/** As large as the part takes, down to what can just be read. */
const keySizeMm = (key: string, { lengthMm, widthMm }: Rectangle): number =>
  Math.max(1.5, Math.min(2.6, 0.8 * widthMm, (2.6 * 0.9 * lengthMm) / typeWidthMm(key, 2.6)))

/** The words in a rectangle, and whether only their key had room. */
export function partLabel(area: Rectangle, wordsFor: WordsFor): { shapes: Shape[]; keyed: boolean } {
  const rooms = roomsOf(area)
  const { key } = wordsFor(false)
  const fit = wholeFit(rooms, wordsFor) ?? shortenedFit(rooms, wordsFor)
  const { lines, sizeMm, upright } = fit ?? { lines: [key], sizeMm: keySizeMm(key, area), upright: false }
  const middle = at(area.xMm + area.lengthMm / 2, area.yMm + area.widthMm / 2)
  const shapes = lines.map((line, index) => {
    const down = (index - (lines.length - 1) / 2) * LINE * sizeMm
    const place = upright ? at(middle.xMm + down, middle.yMm) : at(middle.xMm, middle.yMm - down)
    return textAround(place, line, { sizeMm, angleDeg: upright ? 90 : 0 })
  })
  return { shapes, keyed: fit === undefined }
}
