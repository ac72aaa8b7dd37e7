import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import PDFDocument from 'pdfkit'
import type { Drawing, Layer, LineRole, Point, Shape, Text, TextRole } from './drawing.ts'
import { BLACK, INKS } from './ink.ts'

export type Document = InstanceType<typeof PDFDocument>

/** A point of type is 1/72 of an inch. */
export const POINTS_PER_MM = 72 / 25.4

/** The same drawing gives the same bytes, so the day is always the same one. */
const NO_DAY = new Date(0)

const require = createRequire(import.meta.url)

/** Faces that hold the signs of ohm, mu and diameter, which those built into every reader do not. */
const FACES = {
  text: readFileSync(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf')),
  heading: readFileSync(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf')),
} satisfies Record<TextRole, Buffer>

function strokeAndFill(document: Document, role: LineRole): void {
  const { strokeMm, dashMm, stroke, fill } = INKS[role]
  if (strokeMm === null) {
    document.fill(fill ?? BLACK)
    return
  }
  document.lineWidth(strokeMm).strokeColor(stroke)
  if (dashMm !== null) document.dash(dashMm[0], { space: dashMm[1] })
  if (fill === null) document.stroke()
  else document.fillAndStroke(fill, stroke)
  if (dashMm !== null) document.undash()
}

function write(document: Document, { role, at, text, sizeMm, anchor, angleDeg }: Text, heightMm: number) {
  document.font(role).fontSize(sizeMm).fillColor(BLACK)
  const width = document.widthOfString(text)
  const back = { start: 0, middle: width / 2, end: width }[anchor]
  document
    .save()
    .translate(at.xMm, heightMm - at.yMm)
    .rotate(-angleDeg)
  document.text(text, -back, 0, { baseline: 'alphabetic', lineBreak: false }).restore()
}

function draw(document: Document, shape: Shape, heightMm: number): void {
  const place = ({ xMm, yMm }: Point): [number, number] => [xMm, heightMm - yMm]
  switch (shape.kind) {
    case 'segments':
      for (const [from, to] of shape.segments) document.moveTo(...place(from)).lineTo(...place(to))
      strokeAndFill(document, shape.role)
      return
    case 'polygon':
      document.polygon(...shape.points.map(place))
      strokeAndFill(document, shape.role)
      return
    case 'circle':
      document.circle(...place(shape.at), shape.radiusMm)
      strokeAndFill(document, shape.role)
      return
    case 'text':
      write(document, shape, heightMm)
  }
}

function drawLayer(document: Document, { shapes, window }: Layer, heightMm: number): void {
  document.save()
  if (window !== undefined) {
    const { xMm, yMm, lengthMm, widthMm } = window
    document.rect(xMm, heightMm - yMm - widthMm, lengthMm, widthMm).clip()
  }
  for (const shape of shapes) draw(document, shape, heightMm)
  document.restore()
}

/** Where a drawing stands on a page, in points from its upper left corner, and how large. */
export interface Stand {
  xPt: number
  yPt: number
  /** 1 is true size. */
  scale: number
}

/** A drawing on the page that is open. */
export function drawOn(document: Document, { heightMm, layers }: Drawing, { xPt, yPt, scale }: Stand): void {
  document
    .save()
    .translate(xPt, yPt)
    .scale(POINTS_PER_MM * scale)
  for (const layer of layers) drawLayer(document, layer, heightMm)
  document.restore()
}

/** A drawing as a page of its own, at true size. */
export function addDrawing(document: Document, drawing: Drawing): void {
  const { widthMm, heightMm } = drawing
  document.addPage({ size: [widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM], margin: 0 })
  drawOn(document, drawing, { xPt: 0, yPt: 0, scale: 1 })
}

/** A document with the faces of the drawings, filled by the caller, and its bytes. */
export async function pdfBytes(title: string, fill: (document: Document) => void): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    lang: 'en',
    displayTitle: true,
    info: { Title: title, CreationDate: NO_DAY, ModDate: NO_DAY },
  })
  for (const [name, face] of Object.entries(FACES)) document.registerFont(name, face)
  const chunks: Uint8Array[] = []
  const whole = new Promise<Uint8Array>((done, failed) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    document.on('end', () => done(Buffer.concat(chunks)))
    document.on('error', failed)
  })
  fill(document)
  document.end()
  return whole
}

/** Drawings as the pages of one document, at true size. */
export const pdfOf = (pages: readonly Drawing[], title: string): Promise<Uint8Array> =>
  pdfBytes(title, (document) => {
    for (const page of pages) addDrawing(document, page)
  })
