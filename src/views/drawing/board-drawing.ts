import type { Cut, Sheet } from '../../schema/cut-list.ts'
import type { Panel } from '../../schema/panel.ts'
import { cutNumbers } from './cut-numbers.ts'
import type { Rectangle, Shape } from './drawing.ts'
import { sizeSaid } from './figures.ts'
import { hatch } from './hatch.ts'
import { boxOf, type Taken } from './labels.ts'
import { partLabel } from './part-label.ts'
import { onPaper, type Placement } from './placed.ts'
import { rectangle } from './shapes.ts'

/** Distances of hatching on the paper: close for waste, wide for what is worth keeping. */
const WASTE_STEP_MM = 1.8
const OFFCUT_STEP_MM = 6
/** A kerf is drawn at least this wide. */
const LEAST_KERF_MM = 0.3

export interface BoardPlan {
  sheet: Sheet
  cuts: readonly Cut[]
  panels: readonly Panel[]
  kerfMm: number
}

const scaled = ({ xMm, yMm, lengthMm, widthMm }: Rectangle, placement: Placement): Rectangle => ({
  ...onPaper({ xMm, yMm }, placement),
  lengthMm: placement.scale * lengthMm,
  widthMm: placement.scale * widthMm,
})

/** What a part takes up on the board: turned parts lie across it. */
const lying = ({ turned, lengthMm, widthMm, xMm, yMm }: Sheet['parts'][number]): Rectangle =>
  turned ? { xMm, yMm, lengthMm: widthMm, widthMm: lengthMm } : { xMm, yMm, lengthMm, widthMm }

/** The strip that a cut turns into dust, narrower than the kerf where hardly anything is left beyond it. */
function kerfStrip({ direction, atMm, piece }: Cut, kerfMm: number): Rectangle {
  return direction === 'across'
    ? { ...piece, xMm: atMm, lengthMm: Math.min(kerfMm, piece.xMm + piece.lengthMm - atMm) }
    : { ...piece, yMm: atMm, widthMm: Math.min(kerfMm, piece.yMm + piece.widthMm - atMm) }
}

function widened(strip: Rectangle): Rectangle {
  const [x, y] = [LEAST_KERF_MM - strip.lengthMm, LEAST_KERF_MM - strip.widthMm].map((less) =>
    Math.max(0, less),
  )
  return {
    xMm: strip.xMm - x! / 2,
    yMm: strip.yMm - y! / 2,
    lengthMm: strip.lengthMm + x!,
    widthMm: strip.widthMm + y!,
  }
}

/** An arrow for the side of a part that follows the grain of the board; nothing where any does. */
function grainMark(grain: Panel['grain'], turned: boolean, upright: boolean): string {
  if (grain === 'any') return ''
  const level = (grain === 'length') !== turned
  return level === upright ? ' ↕' : ' ↔'
}

/** A letter with the name and the size of the part it stands for. */
export type Key = readonly [letter: string, name: string, size: string]

interface DrawnParts {
  shapes: Shape[]
  /** What the letters in parts too small for words stand for. */
  keys: Key[]
}

const ALPHABET = 'abcdefghijklmnopqrstuvwxyz'
const letterOf = (place: number): string =>
  `${ALPHABET[place % ALPHABET.length]}${place < ALPHABET.length ? '' : Math.floor(place / ALPHABET.length)}`

/** The letter that equal parts have already, or the next one. */
function keyFor(name: string, size: string, keys: readonly Key[]): Key {
  const same = keys.find((key) => key[1] === name && key[2] === size)
  return same ?? [letterOf(keys.length), name, size]
}

function partShapes({ sheet, panels }: BoardPlan, placement: Placement, taken: Taken): DrawnParts {
  const shapes: Shape[] = []
  const keys: Key[] = []
  for (const part of sheet.parts) {
    const area = scaled(lying(part), placement)
    const grain = panels.find(({ id }) => id === part.id)?.grain ?? 'any'
    const detailsFor = (upright: boolean) => [
      `${sizeSaid(part)}${grainMark(grain, part.turned, upright)}`,
      ...(part.turned ? ['turned'] : []),
    ]
    const key = keyFor(part.id, detailsFor(false).join(', '), keys)
    const label = partLabel(area, (upright) => ({ name: part.id, details: detailsFor(upright), key: key[0] }))
    if (label.keyed && !keys.includes(key)) keys.push(key)
    shapes.push(rectangle('face', area), ...label.shapes)
    taken.boxes.push(...label.shapes.flatMap(textBox))
  }
  return { shapes, keys }
}

/** What a line of text takes up, roughly. */
function textBox(shape: Shape): ReturnType<typeof boxOf>[] {
  if (shape.kind !== 'text') return []
  const { at: place, sizeMm, text, angleDeg } = shape
  const half = 0.31 * sizeMm * text.length
  return angleDeg === 0
    ? [boxOf({ xMm: place.xMm - half, yMm: place.yMm - 0.3, lengthMm: 2 * half, widthMm: sizeMm })]
    : [boxOf({ xMm: place.xMm - sizeMm, yMm: place.yMm - half, lengthMm: sizeMm + 0.3, widthMm: 2 * half })]
}

/** Offcuts named by their size, largest first, where the words have room. */
function offcutShapes({ sheet }: BoardPlan, placement: Placement, taken: Taken): Shape[] {
  return sheet.offcuts.flatMap((offcut) => {
    const area = scaled(offcut, placement)
    const { shapes, keyed } = partLabel(area, () => ({
      name: 'offcut',
      details: [sizeSaid(offcut)],
      key: '',
    }))
    const ground = [rectangle('face', area), hatch(area, OFFCUT_STEP_MM, true)]
    if (keyed) return ground
    const boxes = shapes.flatMap(textBox)
    taken.boxes.push(...boxes)
    const patches = boxes.map(({ left, right, top, bottom }) =>
      rectangle('paper', {
        xMm: left - 0.8,
        yMm: top - 0.6,
        lengthMm: right - left + 1.6,
        widthMm: bottom - top + 0.8,
      }),
    )
    return [...ground, ...patches, ...shapes]
  })
}

/** A board with its parts, its offcuts, and the cuts numbered in sawing order. */
export function boardDrawing(plan: BoardPlan, placement: Placement): DrawnParts {
  const { sheet, cuts, kerfMm } = plan
  const board = scaled({ xMm: 0, yMm: 0, lengthMm: sheet.lengthMm, widthMm: sheet.widthMm }, placement)
  const taken: Taken = { boxes: [] }
  const parts = partShapes(plan, placement, taken)
  const offcuts = offcutShapes(plan, placement, taken)
  const kerfs = cuts.map((cut) => rectangle('kerf', widened(scaled(kerfStrip(cut, kerfMm), placement))))
  return {
    shapes: [
      rectangle('face', board),
      hatch(board, WASTE_STEP_MM),
      ...offcuts,
      ...parts.shapes,
      ...kerfs,
      rectangle('outline', board),
      ...cutNumbers(cuts, kerfMm, placement, taken),
    ],
    keys: parts.keys,
  }
}
