import { STYLE } from './style.ts'
import { shortened, wrapped } from './text-width.ts'
import { xmlText } from './xml-text.ts'

/** Four units of a picture are a millimetre on paper, so that type of 12 units is 3 mm high. */
const UNITS_PER_MM = 4
export const PICTURE_WIDTH = 640
export const TEXT_SIZE = 12
const TITLE_SIZE = 15
const SIDE = 16

/** What a picture is called and what it shows, in words. */
export interface Heading {
  /** Name of the picture, which its parts are called after; a page holds it once. */
  id: string
  title: string
  /** The finding in plain sentences; the first stands in the picture, all are read out. */
  says: readonly [string, ...string[]]
}

/** What a request says of a picture. */
export interface Named {
  /** What the maker calls the design or the driver. */
  name?: string | undefined
}

export const titled = (title: string, { name }: Named): string =>
  name === undefined ? title : `${title}: ${name}`

interface TextOptions {
  kind: string
  anchor?: 'start' | 'middle' | 'end'
  turned?: boolean
}

/** A number of a drawing, to a hundredth of a unit. */
export const place = (value: number): string => String(Number(value.toFixed(2)))

export function textAt(
  x: number,
  y: number,
  text: string,
  { kind, anchor = 'start', turned = false }: TextOptions,
) {
  const turn = turned ? ` transform="rotate(-90 ${place(x)} ${place(y)})"` : ''
  return `<text class="${kind}" x="${place(x)}" y="${place(y)}" text-anchor="${anchor}"${turn}>${xmlText(text)}</text>`
}

/** Title and finding as they stand at the head of a picture, and where they end. */
export function headOf({ title, says }: Heading): { drawn: string; bottom: number } {
  const width = PICTURE_WIDTH - 2 * SIDE
  const lines = wrapped(says[0], width, TEXT_SIZE)
  return {
    drawn: [
      textAt(SIDE, 26, shortened(title, width, TITLE_SIZE), { kind: 'title' }),
      ...lines.map((line, index) => textAt(SIDE, 45 + 16 * index, line, { kind: 'quiet' })),
    ].join('\n'),
    bottom: 45 + 16 * (lines.length - 1) + 6,
  }
}

/** The whole picture: titled and described for those who hear it, sized for paper, dark where the screen is. */
export function picture({ id, title, says }: Heading, height: number, drawn: readonly string[]): string {
  const size = `width="${PICTURE_WIDTH / UNITS_PER_MM}mm" height="${place(height / UNITS_PER_MM)}mm"`
  return `<svg xmlns="http://www.w3.org/2000/svg" class="chart" role="img" aria-labelledby="${id}-title ${id}-desc" lang="en" viewBox="0 0 ${PICTURE_WIDTH} ${place(height)}" ${size} font-family="sans-serif">
<title id="${id}-title">${xmlText(title)}</title>
<desc id="${id}-desc">${xmlText(says.join(' '))}</desc>
<style>${STYLE}</style>
<rect class="paper" width="${PICTURE_WIDTH}" height="${place(height)}"/>
${drawn.filter((part) => part !== '').join('\n')}
</svg>
`
}
