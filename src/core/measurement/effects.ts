import type { MeasuredResult } from '../../schema/driver-measurement-sections.ts'
import { worthwhileVented } from '../box/alignment.ts'
import { closedAlpha } from '../box/suited-boxes.ts'
import type { FigureRow } from './figures.ts'

type Effect = MeasuredResult['effects'][number]

/** The three figures that decide a box. */
interface Deciding {
  fsHz: number
  qts: number
  vasL: number
}

/** Usual losses of a vented box, as leakage. R. H. Small 1973. */
const USUAL_LEAKAGE_Q = 7
/** A driver of higher Q has no box of that shape: it is then said for one as large as its compliance. */
const MAXIMALLY_FLAT = Math.SQRT1_2

/** Box for which effects are said when none is given, L: closed, total Q 0.707, else as large as Vas. */
export function exampleVolumeL({ qts, vasL }: Deciding): number {
  const alpha = closedAlpha(qts, MAXIMALLY_FLAT, 0)
  return alpha === null ? vasL : vasL / alpha
}

/** Closed box without losses: Qtc = Qts√(1 + Vas/V), fc = fs√(1 + Vas/V). R. H. Small, J. Audio Eng. Soc. 20, 798 (1972). */
function closed({ fsHz, qts, vasL }: Deciding, volumeL: number): { qtc: number; fcHz: number } {
  const root = Math.sqrt(1 + vasL / volumeL)
  return { qtc: qts * root, fcHz: fsHz * root }
}

function vented({ fsHz, qts, vasL }: Deciding): { volumeL: number; tuningHz: number } | null {
  const classic = worthwhileVented(qts, USUAL_LEAKAGE_Q)
  return classic === null ? null : { volumeL: vasL / classic.alpha, tuningHz: classic.h * fsHz }
}

/** What each deciding figure at an end of its interval, the others as measured, does to a closed and a vented box. */
export function effectsOf(figures: readonly FigureRow[], volumeL: number): Effect[] {
  const rows = (['fsHz', 'qts', 'vasL'] as const).flatMap((name) => {
    const row = figures.find(({ figure }) => figure === name)
    return row === undefined ? [] : [{ name, row }]
  })
  const measured = (name: keyof Deciding) => rows.find((entry) => entry.name === name)?.row.value ?? 1
  const best: Deciding = { fsHz: measured('fsHz'), qts: measured('qts'), vasL: measured('vasL') }
  return rows.map(({ name, row }) => {
    const [low, high] = [row.from, row.to].map((value) => ({ ...best, [name]: value })) as [
      Deciding,
      Deciding,
    ]
    const [closedLow, closedHigh] = [closed(low, volumeL), closed(high, volumeL)]
    const [ventedLow, ventedHigh] = [vented(low), vented(high)]
    const change = (of: 'volumeL' | 'tuningHz') =>
      ventedLow === null || ventedHigh === null ? null : halfPercent(ventedLow[of], ventedHigh[of])
    return {
      figure: name,
      uncertaintyPercent: row.uncertaintyPercent,
      qtcChange: Math.abs(closedHigh.qtc - closedLow.qtc) / 2,
      fcChangeHz: Math.abs(closedHigh.fcHz - closedLow.fcHz) / 2,
      ventedVolumeChangePercent: change('volumeL'),
      ventedTuningChangePercent: change('tuningHz'),
    }
  })
}

/** Half the way between two values over their geometric mean. */
const halfPercent = (low: number, high: number): number => (50 * Math.abs(high - low)) / Math.sqrt(high * low)
