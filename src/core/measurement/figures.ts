import type { DriverParameters } from '../../schema/driver.ts'
import type { MeasuredResult } from '../../schema/driver-measurement-sections.ts'
import { type Known, spread } from '../driver/relations.ts'
import type { DriverFit } from './fit-driver.ts'
import { studentPoint } from './student.ts'
import { soughtOf, toScale } from './unknowns.ts'

export type FigureRow = MeasuredResult['figures'][number]
export type Source = FigureRow['mainSource']

/** What the sweeps are converted with. All in the units of the names; null for what is not there. */
export interface Conversion {
  massG: number | null
  volumeL: number | null
  /** Only without mass and volume. */
  mmsG: number | null
  /** Null where mass and volume together give it. */
  sdCm2: number | null
}

/** How sure a value of a conversion is: half of its 95 % range, as a logarithm. */
export interface Doubt {
  of: keyof Conversion
  source: Source
  halfRange: number
}

const UNITS = {
  fsHz: 'Hz',
  qms: '',
  qes: '',
  qts: '',
  reOhm: 'ohm',
  leMh: 'mH',
  leExponent: '',
  vasL: 'L',
  sdCm2: 'cm2',
  mmsG: 'g',
  cmsMmPerN: 'mm/N',
  rmsKgPerS: 'kg/s',
  blTm: 'T.m',
} as const satisfies Partial<Record<keyof DriverParameters, string>>

export type MeasuredFigure = keyof typeof UNITS
type Values = Partial<Record<MeasuredFigure, number>>

/** Beyond a factor of a thousand an interval says only that nothing is known. */
const WIDEST = Math.log(1000)
const STEP = 1e-4

/**
 * Parameters from what was fitted. Mass: Mms = m/(m/Mms). Volume: Vas = Vt · Vas/Vt. Both give the cone area as well.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 and 798 (1972), from memory.
 */
function parametersOf(fit: DriverFit, values: readonly number[], conversion: Conversion): Values {
  const s = soughtOf(fit.names, values)
  const { massG, volumeL, mmsG, sdCm2 } = conversion
  const known: Known = { fsHz: s.fs, qms: s.qms, qes: s.qes, reOhm: s.re }
  if (sdCm2 !== null) known.sdCm2 = sdCm2
  if (volumeL !== null) known.vasL = volumeL * s.stiffness
  if (massG !== null) known.mmsG = massG / s.mass
  else if (mmsG !== null) known.mmsG = mmsG
  const lossy = fit.names.includes('exponent') ? { leExponent: s.exponent } : {}
  return { ...spread(known), leMh: s.le * 1e3, ...lossy }
}

/**
 * Every parameter with its 95 % interval: scatter of the readings by Student's distribution, beside it what is doubtful
 * in mass, volume and cone area. Gaussian propagation on logarithms, so that an interval never holds a negative value.
 */
export function figuresOf(fit: DriverFit, conversion: Conversion, doubts: readonly Doubt[]): FigureRow[] {
  const values = fit.names.map((name) => toScale(name, fit.sought[name]))
  const here = parametersOf(fit, values, conversion)
  const alongValues = values.map((value, i) =>
    slopes(
      parametersOf(fit, values.with(i, value + STEP), conversion),
      parametersOf(fit, values.with(i, value - STEP), conversion),
    ),
  )
  const alongDoubts = doubts.map(({ of }) => {
    const scaled = (by: number): Conversion => ({ ...conversion, [of]: (conversion[of] ?? 0) * Math.exp(by) })
    return slopes(parametersOf(fit, values, scaled(STEP)), parametersOf(fit, values, scaled(-STEP)))
  })
  const reach = studentPoint(fit.freedom)
  return figureNames(here).map((figure) => {
    const along = alongValues.map((slope) => slope(figure))
    const scatter = along.reduce(
      (sum, a, i) => sum + along.reduce((inner, b, j) => inner + a * b * (fit.covariance[i]?.[j] ?? 0), 0),
      0,
    )
    const parts: { source: Source; square: number }[] = [
      { source: 'readings', square: reach ** 2 * Math.max(0, scatter) },
      ...doubts.map(({ source, halfRange }, i) => ({
        source,
        square: ((alongDoubts[i]?.(figure) ?? 0) * halfRange) ** 2,
      })),
    ]
    return figureRow(figure, here[figure] ?? 0, UNITS[figure], parts)
  })
}

const figureNames = (values: Values): MeasuredFigure[] =>
  (Object.keys(UNITS) as MeasuredFigure[]).filter((name) => values[name] !== undefined)

const slopes =
  (above: Values, below: Values) =>
  (figure: MeasuredFigure): number =>
    Math.log((above[figure] ?? 1) / (below[figure] ?? 1)) / (2 * STEP)

/** A row from a value and the squares of what its logarithm may be off, source by source. */
export function figureRow(
  figure: string,
  value: number,
  unit: string,
  parts: readonly { source: Source; square: number }[],
): FigureRow {
  const total = parts.reduce((sum, { square }) => sum + square, 0)
  const half = Math.min(WIDEST, Math.sqrt(total))
  const main = parts.reduce((most, part) => (part.square > most.square ? part : most))
  return {
    figure,
    value,
    from: value * Math.exp(-half),
    to: value * Math.exp(half),
    unit,
    uncertaintyPercent: 50 * (Math.exp(half) - Math.exp(-half)),
    mainSource: main.source,
    mainSourceShare: total > 0 ? main.square / total : 1,
  }
}
