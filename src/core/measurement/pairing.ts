import type { MeasuredResult, PairRow } from '../../schema/driver-measurement-sections.ts'
import { driverImpedance } from '../driver/impedance.ts'

/**
 * How far two drivers of a pair may be apart: resonance, total Q, resistance and compliance in percent, level in dB.
 * 1 dB is heard as a shift of the image. Common practice, no source.
 */
const STILL_GOOD = { fsHz: 10, qts: 15, reOhm: 7, vasL: 20, levelDb: 1 }

type Compared = 'fsHz' | 'qts' | 'reOhm' | 'vasL'

const rowOf = (result: MeasuredResult, name: Compared) => {
  const row = result.figures.find(({ figure }) => figure === name)
  if (row === undefined) throw new Error(`every measured driver has ${name}`)
  return row
}

/** Level at one voltage in the mid-band, dB, but for a constant: 20 log(Bl Sd/(Re Mms)). R. H. Small 1972. */
function levelDb({ parameters }: MeasuredResult): number {
  const { blTm = 1, sdCm2 = 1, reOhm = 1, mmsG = 1 } = parameters
  return 20 * Math.log10((blTm * sdCm2) / (reOhm * mmsG))
}

/** Difference in percent, and what of it is more than the two uncertainties together explain. */
function difference(a: MeasuredResult, b: MeasuredResult, name: Compared): { percent: number; sure: number } {
  const [first, second] = [rowOf(a, name), rowOf(b, name)]
  const percent = 100 * Math.abs(Math.log(second.value / first.value))
  const doubt = Math.hypot(first.uncertaintyPercent, second.uncertaintyPercent)
  return { percent, sure: Math.max(0, percent - doubt) }
}

const POINTS = 41

/** Typical distance of the two curves an octave about the resonances, percent; null when a curve has no figures. */
function curveDistance(a: MeasuredResult, b: MeasuredResult): number | null {
  const middle = Math.sqrt((a.parameters.fsHz ?? 0) * (b.parameters.fsHz ?? 0))
  const grid = Float64Array.from({ length: POINTS }, (_, i) => middle * 2 ** (i / (POINTS - 1) - 0.5))
  const [first, second] = [a, b].map(({ parameters }) => {
    const { reOhm = 0, leMh = 0, leExponent = 1, fsHz = 0, qms = 0, qes = 0 } = parameters
    const coil = { reOhm, leH: leMh * 1e-3, exponent: leExponent, leadOhm: 0 }
    const { re, im } = driverImpedance(coil, { fHz: fsHz, qms, qes }, grid)
    return re.map((value, i) => Math.log(Math.hypot(value, im[i]!)))
  })
  if (first === undefined || second === undefined) return null
  const squares = first.reduce((sum, value, i) => sum + (value - second[i]!) ** 2, 0)
  const distance = 100 * Math.sqrt(squares / POINTS)
  return Number.isFinite(distance) ? distance : null
}

function pairOf(a: MeasuredResult, b: MeasuredResult): PairRow {
  const [fs, qts, re, vas] = (['fsHz', 'qts', 'reOhm', 'vasL'] as const).map((name) => ({
    ...difference(a, b, name),
    good: STILL_GOOD[name],
  })) as [Difference, Difference, Difference, Difference]
  const level = Math.abs(levelDb(a) - levelDb(b))
  return {
    first: a.id,
    second: b.id,
    fsPercent: fs.percent,
    qtsPercent: qts.percent,
    rePercent: re.percent,
    vasPercent: vas.percent,
    levelDb: level,
    impedancePercent: curveDistance(a, b),
    score: Math.max(...[fs, qts, re, vas].map(({ sure, good }) => sure / good), levelScore(a, b, level)),
    chosen: false,
  }
}

type Difference = { percent: number; sure: number; good: number }

/** The level goes with area over mass: what is doubtful in both is no difference of the drivers. */
function levelScore(a: MeasuredResult, b: MeasuredResult, level: number): number {
  const doubt = [a, b].map((result) => {
    const row = result.figures.find(({ figure }) => figure === 'mmsG')
    return 20 * Math.log10(1 + (row?.uncertaintyPercent ?? 0) / 100)
  })
  return Math.max(0, level - Math.hypot(...doubt)) / STILL_GOOD.levelDb
}

/** Every two drivers, best match first, with the pairs chosen that leave the worst of them best. */
export function pairsOf(results: readonly MeasuredResult[]): PairRow[] {
  const rows = results.flatMap((a, i) => results.slice(i + 1).map((b) => pairOf(a, b)))
  const chosen = bestPairing(
    results.map(({ id }) => id),
    rows,
  )
  return rows
    .map((row) => ({ ...row, chosen: chosen.includes(row) }))
    .sort((a, b) => a.score - b.score || (a.impedancePercent ?? 0) - (b.impedancePercent ?? 0))
}

/** Sum of squares of scores, curves deciding between equal ones; eight drivers have 105 pairings. */
const costOf = ({ score, impedancePercent }: PairRow): number => score ** 2 + 1e-4 * (impedancePercent ?? 0)

function bestPairing(ids: readonly string[], rows: readonly PairRow[]): PairRow[] {
  const [first, ...others] = ids
  if (first === undefined || others.length === 0) return []
  const options = others.map((partner) => {
    const row = rows.find((pair) => pair.first === first && pair.second === partner)
    const left = others.filter((id) => id !== partner)
    return row === undefined ? [] : [row, ...bestPairing(left, rows)]
  })
  // An odd driver out: the first one may be it.
  if (ids.length % 2 === 1) options.push(bestPairing(others, rows))
  const total = (pairing: readonly PairRow[]) => pairing.reduce((sum, row) => sum + costOf(row), 0)
  return options.reduce((best, option) => (total(option) < total(best) ? option : best))
}
