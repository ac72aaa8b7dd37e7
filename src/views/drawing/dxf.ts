import { Colors, DxfWriter, point3d, Units } from '@tarikjabiri/dxf'
import type { Point, Shape } from './drawing.ts'

/** What a program for a laser or a router treats alike. */
export const DXF_LAYERS = {
  OUTLINE: Colors.White,
  HOLES: Colors.Red,
  /** Holes that stop in the board: to be drilled, never cut through. */
  BLIND: Colors.Blue,
  ENGRAVE: Colors.Green,
} as const
export type DxfLayer = keyof typeof DXF_LAYERS

export interface DxfShape {
  layer: DxfLayer
  shape: Shape
}

/** Height of capitals, which the format measures, over the size of the type. */
const CAPITAL = 0.73

/** A sign by its number, which has four digits in the format. */
const escaped = (sign: string): string =>
  sign.length > 1 ? '?' : `\\U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`

/** Text of the format ends at a line end, and signs beyond ASCII depend on the program that reads it. */
const plain = (text: string): string =>
  text
    .replaceAll('×', 'x')
    .replaceAll('⌀', 'dia ')
    .replace(/[^ -~]/gu, escaped)

function add(writer: DxfWriter, { layer, shape }: DxfShape): void {
  const options = { layerName: layer }
  const place = ({ xMm, yMm }: Point) => point3d(xMm, yMm)
  switch (shape.kind) {
    case 'segments':
      for (const [from, to] of shape.segments) writer.addLine(place(from), place(to), options)
      return
    case 'polygon':
      for (const [index, from] of shape.points.entries()) {
        const to = shape.points[(index + 1) % shape.points.length] ?? from
        writer.addLine(place(from), place(to), options)
      }
      return
    case 'circle':
      writer.addCircle(place(shape.at), shape.radiusMm, options)
      return
    case 'text':
      writer.addText(place(shape.at), CAPITAL * shape.sizeMm, plain(shape.text), {
        ...options,
        rotation: shape.angleDeg,
      })
  }
}

/** Shapes at true size in millimetres, as lines, circles and texts alone: what every reader of the format knows. */
export function dxfOf(shapes: readonly DxfShape[]): string {
  const writer = new DxfWriter()
  writer.setUnits(Units.Millimeters)
  for (const [name, colour] of Object.entries(DXF_LAYERS)) writer.addLayer(name, colour)
  for (const shape of shapes) add(writer, shape)
  return writer.stringify()
}
