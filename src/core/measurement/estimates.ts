import type { DriverDimensions } from '../../schema/driver-measurement.ts'
import type { Assumption } from '../../schema/frame.ts'
import { significant } from '../say.ts'
import { type FigureRow, figureRow } from './figures.ts'

/** A value that nobody measured, with the factor that its 95 % range spans either way. */
export interface Estimate {
  value: number
  factor: number
  why: string
}

const PLACE = 'common practice, no source'

/** Middle of the surround is read to a fiftieth; the area goes with its square. */
const SD_FACTOR = 1.04
const EXCURSION_FACTOR = 1.25
const POWER_FACTOR = 2
const MASS_FACTOR = 1.8
const RESONANCE_FACTOR = 2

/** Cone area in cm² from the diameter between the middles of the surround, mm: π d²/4, give or take 4 %. */
export const coneArea = (diameterMm: number): Estimate => ({
  value: (Math.PI / 4) * (diameterMm / 10) ** 2,
  factor: SD_FACTOR,
  why: `π d²/4 across the middle of the surround, ${significant(diameterMm, 3)} mm; ${PLACE}`,
})

/**
 * Clean excursion one way, mm: half of what the coil stands over the gap, or the gap over the coil; null where both are
 * as high. Source: J. Audio Eng. Soc. practice of Small's time, from memory.
 */
export function excursion(coilHeightMm: number, gapHeightMm: number): Estimate | null {
  const value = Math.abs(coilHeightMm - gapHeightMm) / 2
  return value < 0.05
    ? null
    : { value, factor: EXCURSION_FACTOR, why: `half of coil height less gap height; ${PLACE}` }
}

/** Power that a voice coil of a diameter in mm bears for long, W: 0.045 d², give or take a factor of two. */
export const coilPower = (diameterMm: number): Estimate => ({
  value: 0.045 * diameterMm ** 2,
  factor: POWER_FACTOR,
  why: `0.045 W times the square of the coil diameter in mm; ${PLACE}`,
})

/** Moving mass from the cone area in cm², g: about 0.1 g a square centimetre. */
export const usualMass = (sdCm2: number): Estimate => ({
  value: 0.1 * sdCm2,
  factor: MASS_FACTOR,
  why: `0.1 g for each cm2 of cone; ${PLACE}`,
})

/** Free-air resonance from the diameter of the cone in mm, Hz: about 8500 over it. */
export const usualResonance = (diameterMm: number): Estimate => ({
  value: 8500 / diameterMm,
  factor: RESONANCE_FACTOR,
  why: `8500 over the cone diameter in mm; ${PLACE}`,
})

/** An estimate as a row of the assumptions, its range in words. */
export const assumed = (at: string, unit: string, { value, factor, why }: Estimate): Assumption => ({
  at,
  value,
  unit,
  why: `${why}; between ${significant(value / factor, 2)} and ${significant(value * factor, 2)} ${unit}`,
})

/** Figures that only a rule tells: excursion and power, each with its range. */
export function ruleFigures(
  dimensions: DriverDimensions | undefined,
  at: string,
): { figures: FigureRow[]; assumptions: Assumption[] } {
  const { coilDiameterMm, coilHeightMm, gapHeightMm } = dimensions ?? {}
  const travel =
    coilHeightMm === undefined || gapHeightMm === undefined ? null : excursion(coilHeightMm, gapHeightMm)
  const power = coilDiameterMm === undefined ? null : coilPower(coilDiameterMm)
  const rows = [
    { figure: 'xmaxMm', unit: 'mm', estimate: travel },
    { figure: 'ratedPowerW', unit: 'W', estimate: power },
  ].flatMap(({ estimate, ...row }) => (estimate === null ? [] : [{ ...row, estimate }]))
  return {
    figures: rows.map(({ figure, unit, estimate }) =>
      figureRow(figure, estimate.value, unit, [
        { source: 'dimensions', square: Math.log(estimate.factor) ** 2 },
      ]),
    ),
    assumptions: rows.map(({ figure, unit, estimate }) => assumed(`${at}/${figure}`, unit, estimate)),
  }
}
