import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'

/** A page as a PDF reader of others (poppler) sees it: 254 dots an inch are 10 a millimetre. */
export interface Seen {
  widthPx: number
  heightPx: number
  /** Grey of every dot, row by row from above. */
  grey: Uint8Array
  /** Left edges and right edges of the dark runs on a line so many millimetres above the lower edge, mm. */
  runsAt: (yMm: number) => { from: number; to: number }[]
}

export const PX_PER_MM = 10
const DARK = 128

export function see(file: string, page: number): Seen {
  const one = `${page}`
  const name = `${file}-${page}`
  execFileSync('pdftoppm', ['-gray', '-r', '254', '-f', one, '-l', one, '-singlefile', file, name])
  const bytes = readFileSync(`${name}.pgm`)
  const [head, width = '', height = ''] =
    /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 40)) ?? []
  if (head === undefined) throw new Error('no grey picture')
  const [widthPx, heightPx] = [Number(width), Number(height)]
  const runsAt = (yMm: number) => {
    const row = heightPx - 1 - Math.round(yMm * PX_PER_MM)
    const start = head.length + row * widthPx
    const dark = [...bytes.subarray(start, start + widthPx)].map((grey) => grey < DARK)
    return dark.flatMap((here, x) => {
      if (!here || dark[x - 1] === true) return []
      const end = dark.indexOf(false, x)
      return [{ from: x / PX_PER_MM, to: (end < 0 ? widthPx : end) / PX_PER_MM }]
    })
  }
  return { widthPx, heightPx, grey: bytes.subarray(head.length), runsAt }
}

export const middle = ({ from, to }: { from: number; to: number }): number => (from + to) / 2

/** Text of every page, by the same reader. */
export const textOf = (file: string): string[] =>
  execFileSync('pdftotext', ['-layout', file, '-']).toString().split('\f').slice(0, -1)

/** Width of the panel: the distance that most lines with nothing but two thin edges on them have. */
export function panelMm({ heightPx, runsAt }: Seen): number {
  const counts = new Map<number, number>()
  for (let yMm = 20; yMm < heightPx / PX_PER_MM - 20; yMm += 0.5) {
    const runs = runsAt(yMm)
    if (runs.length !== 2 || runs.some(({ from, to }) => to - from >= 0.6)) continue
    const apart = Math.round(10 * (middle(runs[1]!) - middle(runs[0]!))) / 10
    counts.set(apart, (counts.get(apart) ?? 0) + 1)
  }
  const [most] = [...counts].sort(([, a], [, b]) => b - a)
  if (most === undefined || most[1] < 10) throw new Error('no panel')
  return most[0]
}
