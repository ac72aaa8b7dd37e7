import { type Document, POINTS_PER_MM } from '../../drawing/pdf.ts'
import type { TextColumn } from './column.ts'
import type { Piece } from './flow.ts'
import { type Element, type Look, looksBy, readChart } from './read-chart.ts'

/** Charts are laid out for usual faces; this one runs wider by about a tenth. */
const NARROWER = 0.91
/** Two of them and their words on a page. */
const WIDTH_MM = 150

const numberOf = (element: Element, name: string): number => Number(element.attributes[name] ?? 0)
const pxOf = (value: string | undefined, usual: number): number =>
  value === undefined ? usual : Number.parseFloat(value)

/** Paints the path that is open. */
function paint(document: Document, { stroke = 'none', fill = '#000000', ...look }: Look): void {
  document.lineWidth(pxOf(look['stroke-width'], 1))
  document.lineCap(look['stroke-linecap'] === 'round' ? 'round' : 'butt')
  document.lineJoin(look['stroke-linejoin'] === 'round' ? 'round' : 'miter')
  // The types of the library know one dash and one gap; a line of dash and dot has four lengths.
  const dashes = look['stroke-dasharray'] ?? ''
  if (dashes !== '') document.addContent(`[${dashes}] 0 d`)
  if (fill !== 'none' && stroke !== 'none') document.fillAndStroke(fill, stroke)
  else if (stroke !== 'none') document.stroke(stroke)
  else if (fill !== 'none') document.fill(fill)
  if (dashes !== '') document.undash()
}

function words(document: Document, element: Element, { stroke, fill = '#000000', ...look }: Look): void {
  const [x, y] = [numberOf(element, 'x'), numberOf(element, 'y')]
  document.font(look['font-weight'] === 'bold' ? 'heading' : 'text', NARROWER * pxOf(look['font-size'], 12))
  const width = document.widthOfString(element.text)
  const back = { middle: width / 2, end: width }[element.attributes['text-anchor'] ?? ''] ?? 0
  const put = (options: { stroke?: boolean; fill?: boolean }) =>
    document.text(element.text, -back, 0, { baseline: 'alphabetic', lineBreak: false, ...options })
  document.save().translate(x, y)
  if (element.attributes['transform'] !== undefined) document.rotate(-90)
  if (stroke !== undefined) {
    document.lineWidth(pxOf(look['stroke-width'], 1)).lineJoin('round').strokeColor(stroke)
    put({ stroke: true, fill: false })
  }
  document.fillColor(fill)
  put({})
  document.restore()
}

type Drawer = (document: Document, element: Element) => void

const SHAPES: Readonly<Record<string, Drawer>> = {
  rect: (document, element) => {
    const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((name) => numberOf(element, name))
    document.rect(x ?? 0, y ?? 0, width ?? 0, height ?? 0)
  },
  line: (document, element) => {
    document
      .moveTo(numberOf(element, 'x1'), numberOf(element, 'y1'))
      .lineTo(numberOf(element, 'x2'), numberOf(element, 'y2'))
  },
  path: (document, element) => {
    document.path(element.attributes['d'] ?? '')
  },
  circle: (document, element) => {
    document.circle(numberOf(element, 'cx'), numberOf(element, 'cy'), numberOf(element, 'r'))
  },
}

const UNSEEN = new Set(['title', 'desc', 'style', 'clipPath'])

/** Draws the elements of a chart, one upon the other. */
function drawAll(document: Document, chart: Element): void {
  const styles = chart.children.filter(({ name }) => name === 'style').map(({ text }) => text)
  const lookOf = looksBy(styles.join(''))
  const clips = new Map(
    chart.children.flatMap((element) =>
      element.name === 'clipPath' ? [[element.attributes['id'] ?? '', element.children] as const] : [],
    ),
  )
  const drawGroup = (group: Element): void => {
    document.save()
    const window = clips.get(/#([^)]*)/.exec(group.attributes['clip-path'] ?? '')?.[1] ?? '') ?? []
    for (const edge of window) SHAPES[edge.name]?.(document, edge)
    if (window.length > 0) document.clip()
    for (const child of group.children) draw(child)
    document.restore()
  }
  const drawShape = (element: Element): void => {
    const shape = SHAPES[element.name]
    if (shape === undefined) throw new Error(`a chart with a <${element.name}>, which paper does not know`)
    // A path without points would leave the one before it open.
    if (element.name === 'path' && (element.attributes['d'] ?? '') === '') return
    shape(document, element)
    paint(document, lookOf(element))
  }
  const draw = (element: Element): void => {
    if (UNSEEN.has(element.name)) return
    if (element.name === 'g') drawGroup(element)
    else if (element.name === 'text') words(document, element, lookOf(element))
    else drawShape(element)
  }
  for (const element of chart.children) draw(element)
}

/** A chart as it stands on a page of the web, in the middle of the column. */
export function chartPiece({ document, leftPt, topPt, widthPt }: TextColumn, svg: string): Piece {
  const chart = readChart(svg)
  const [, , width = 1, height = 1] = (chart.attributes['viewBox'] ?? '').split(' ').map(Number)
  const scale = Math.min(widthPt, WIDTH_MM * POINTS_PER_MM) / width
  return {
    gapPt: 6,
    heightPt: scale * height,
    draw: (yPt) => {
      document
        .save()
        .translate(leftPt + (widthPt - scale * width) / 2, topPt + yPt)
        .scale(scale)
      drawAll(document, chart)
      document.restore()
    },
  }
}
