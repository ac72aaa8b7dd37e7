import { xmlText } from '../chart/xml-text.ts'
import type { Drawing, Layer, LineRole, Point, Rectangle, Shape, Text } from './drawing.ts'
import { BLACK, INKS } from './ink.ts'

/** Measured and drawn in the same type where it is there, else in one of about its width. */
const FACE = "'DejaVu Sans', Verdana, sans-serif"

/** A number to a thousandth of a millimetre. */
const number = (value: number): string => String(Number(value.toFixed(3)))

function rule(role: LineRole): string {
  const { strokeMm, dashMm, stroke, fill } = INKS[role]
  const dash = dashMm === null ? '' : ` stroke-dasharray: ${dashMm.join(' ')};`
  const drawn = strokeMm === null ? 'stroke: none;' : `stroke: ${stroke}; stroke-width: ${strokeMm};`
  return `.drawing .${role} { fill: ${fill ?? 'none'}; ${drawn}${dash} }`
}

const rolesOf = (layers: readonly Layer[]): LineRole[] => {
  const used = new Set(layers.flatMap(({ shapes }) => shapes.map(({ role }) => role)))
  return Object.keys(INKS).filter((role): role is LineRole => used.has(role as LineRole))
}

type Place = (point: Point) => string

function written({ role, at, text, sizeMm, anchor, angleDeg }: Text, heightMm: number): string {
  const [x, y] = [number(at.xMm), number(heightMm - at.yMm)]
  const turned = angleDeg === 0 ? '' : ` transform="rotate(${-angleDeg} ${x} ${y})"`
  const weight = role === 'heading' ? ' font-weight="bold"' : ''
  return `<text x="${x}" y="${y}" font-size="${number(sizeMm)}" text-anchor="${anchor}"${weight}${turned}>${xmlText(text)}</text>`
}

function drawn(shape: Shape, heightMm: number): string {
  const place: Place = ({ xMm, yMm }) => `${number(xMm)} ${number(heightMm - yMm)}`
  switch (shape.kind) {
    case 'segments': {
      const path = shape.segments.map(([from, to]) => `M${place(from)}L${place(to)}`).join('')
      return `<path class="${shape.role}" d="${path}"/>`
    }
    case 'polygon':
      return `<path class="${shape.role}" d="M${shape.points.map(place).join('L')}Z"/>`
    case 'circle':
      return `<circle class="${shape.role}" cx="${number(shape.at.xMm)}" cy="${number(heightMm - shape.at.yMm)}" r="${number(shape.radiusMm)}"/>`
    case 'text':
      return written(shape, heightMm)
  }
}

const windowOf = ({ xMm, yMm, lengthMm, widthMm }: Rectangle, heightMm: number): string =>
  `<rect x="${number(xMm)}" y="${number(heightMm - yMm - widthMm)}" width="${number(lengthMm)}" height="${number(widthMm)}"/>`

function layerOf({ shapes, window }: Layer, name: string, heightMm: number): string {
  const inside = shapes.map((shape) => drawn(shape, heightMm)).join('\n')
  return window === undefined
    ? `<g>\n${inside}\n</g>`
    : `<clipPath id="${name}">${windowOf(window, heightMm)}</clipPath>\n<g clip-path="url(#${name})">\n${inside}\n</g>`
}

/**
 * A drawing for a page or a browser: titled and described for those who hear it, in millimetres so that it prints
 * at its size.
 * @param id  name of the picture, which a page holds once
 */
export function svgOf({ title, says, widthMm, heightMm, layers }: Drawing, id: string): string {
  const size = `width="${number(widthMm)}mm" height="${number(heightMm)}mm"`
  return `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" role="img" aria-labelledby="${id}-title ${id}-desc" lang="en" viewBox="0 0 ${number(widthMm)} ${number(heightMm)}" ${size} font-family="${FACE}" fill="${BLACK}">
<title id="${id}-title">${xmlText(title)}</title>
<desc id="${id}-desc">${xmlText(says)}</desc>
<style>
${rolesOf(layers).map(rule).join('\n')}
</style>
<rect width="100%" height="100%" fill="#ffffff"/>
${layers.map((layer, index) => layerOf(layer, `${id}-window-${index}`, heightMm)).join('\n')}
</svg>
`
}
