import type { MeasuredDriver } from '../../schema/driver-measurement.ts'
import type { MeasuredResult } from '../../schema/driver-measurement-sections.ts'
import type { Assumption } from '../../schema/frame.ts'
import { type Fault, isRefusal } from '../outcome.ts'
import { converterOf } from './conversion.ts'
import { effectsOf, exampleVolumeL } from './effects.ts'
import { ruleFigures } from './estimates.ts'
import { type FigureRow, figuresOf } from './figures.ts'
import { type DriverFit, fitDriver } from './fit-driver.ts'
import { dwarfFaults, fitFaults, leadFaults, peakFaults } from './fit-faults.ts'
import type { DriverSweeps } from './fit-start.ts'
import { nextOf } from './next.ts'
import { peakBand } from './peak-band.ts'
import { secondOpinion } from './second-opinion.ts'
import { readSweep } from './sweep.ts'
import { freeAirOf } from './unknowns.ts'
import { parametersFrom, unusableFaults } from './usable.ts'

/** One driver with all that the rules look at. */
export interface Measured {
  at: string
  driver: MeasuredDriver
  sweeps: DriverSweeps
  fit: DriverFit
  result: MeasuredResult
  /** Whether the moving mass is a guess, so that everything in grams and litres is. */
  guessed: boolean
  /** Free-air readings between the two frequencies that the hand formulas take. */
  readingsOnPeak: number
  assumptions: Assumption[]
}

const SWEEP_NAMES = {
  freeAir: 'free-air',
  withMass: 'added-mass',
  inBox: 'known-volume',
} as const satisfies Record<keyof DriverSweeps, MeasuredResult['curves'][number]['sweep']>

/** Measures one driver from its sweeps; refuses sweeps, figures and fits that no driver has. */
export function measureDriver(
  driver: MeasuredDriver,
  at: string,
  boxVolumeL: number | null,
): Measured | { faults: Fault[] } {
  const sweeps = sweepsOf(driver, at)
  const converter = converterOf(driver, at)
  if (isRefusal(sweeps) || isRefusal(converter))
    return { faults: [sweeps, converter].flatMap((part) => (isRefusal(part) ? part.faults : [])) }
  const { leadOhm = 0, meterOhm = null } = driver
  const tooLow = dwarfFaults(sweeps, at)
  if (tooLow.length > 0) return { faults: tooLow }
  const tooMuchLead = leadFaults(sweeps, leadOhm, at)
  if (tooMuchLead.length > 0) return { faults: tooMuchLead }
  const pale = peakFaults(sweeps, leadOhm, meterOhm, at)
  if (pale.length > 0) return { faults: pale }
  const fit = fitDriver(sweeps, leadOhm, meterOhm)
  const wrong = fit === null ? [] : fitFaults(fit, at)
  if (fit === null || wrong.length > 0) return { faults: wrong }
  const measured = figuresOf(fit, converter.conversion, converter.doubts)
  const rules = ruleFigures(driver.dimensions, at)
  const figures = [...measured, ...rules.figures]
  const unusable = unusableFaults(figures, `${at}/freeAir`)
  if (unusable.length > 0) return { faults: unusable }
  const { massG, volumeL } = converter.conversion
  const exampleL = boxVolumeL ?? exampleVolumeL(decidingOf(figures))
  const result: MeasuredResult = {
    id: driver.id,
    parameters: parametersFrom(figures, driver.ratedImpedanceOhm),
    figures,
    fit: fitSection(fit),
    outliers: outliersOf(fit),
    curves: curvesOf(fit),
    secondOpinion: secondOpinion(sweeps, leadOhm, meterOhm, converter.conversion),
    effects: effectsOf(figures, exampleL),
    next: nextOf(figures, { fit, massG, volumeL, mmsG: valueIn(figures, 'mmsG'), meterOhm }),
  }
  return {
    at,
    driver,
    sweeps,
    fit,
    result,
    guessed: converter.guessed,
    readingsOnPeak: readingsOnPeak(fit),
    assumptions: [
      ...(driver.leadOhm === undefined
        ? [
            {
              at: `${at}/leadOhm`,
              value: 0,
              unit: 'ohm',
              why: 'the readings are taken as free of leads and clips',
            },
          ]
        : []),
      ...converter.assumptions,
      ...rules.assumptions,
      ...(boxVolumeL === null
        ? [
            {
              at: '/boxVolumeL',
              value: exampleL,
              unit: 'L',
              why: `for the effects on a box: the closed one of total Q 0.707 for ${driver.id}, or as large as its Vas where there is none`,
            },
          ]
        : []),
    ],
  }
}

function sweepsOf(driver: MeasuredDriver, at: string): DriverSweeps | { faults: Fault[] } {
  const { freeAir, withMass, inBox } = driver
  const free = readSweep(freeAir ?? {}, `${at}/freeAir`)
  const mass = withMass === undefined ? null : readSweep(withMass.sweep, `${at}/withMass/sweep`)
  const box = inBox === undefined ? null : readSweep(inBox.sweep, `${at}/inBox/sweep`)
  const faults = [free, mass, box].flatMap((part) => (part !== null && isRefusal(part) ? part.faults : []))
  if (isRefusal(free) || (mass !== null && isRefusal(mass)) || (box !== null && isRefusal(box)))
    return { faults }
  return { freeAir: free, withMass: mass, inBox: box }
}

const valueIn = (figures: readonly FigureRow[], name: string): number =>
  figures.find(({ figure }) => figure === name)?.value ?? 0

const decidingOf = (figures: readonly FigureRow[]) => ({
  fsHz: valueIn(figures, 'fsHz'),
  qts: valueIn(figures, 'qts'),
  vasL: valueIn(figures, 'vasL'),
})

function readingsOnPeak(fit: DriverFit): number {
  const { lowerHz, upperHz } = peakBand(freeAirOf(fit.sought))
  const free = fit.parts.find(({ sweep }) => sweep === 'freeAir')
  return free?.measured.frequencyHz.filter((hz) => hz >= lowerHz && hz <= upperHz).length ?? 0
}

const DEG = 180 / Math.PI

const fitSection = (fit: DriverFit): MeasuredResult['fit'] => ({
  misfitPercent: 100 * fit.misfit,
  phaseMisfitDeg: fit.phaseMisfit === null ? null : fit.phaseMisfit * DEG,
  readings: fit.readings,
  unknowns: fit.names.length,
  converged: fit.converged,
  coil: fit.names.includes('exponent') ? 'lossy' : 'plain',
})

const outliersOf = ({ parts }: DriverFit): MeasuredResult['outliers'] =>
  parts.flatMap(({ sweep, measured, fittedOhm, outliers }) =>
    outliers.map((i) => ({
      sweep: SWEEP_NAMES[sweep],
      frequencyHz: measured.frequencyHz[i]!,
      measuredOhm: measured.ohm[i]!,
      fittedOhm: fittedOhm[i]!,
    })),
  )

const curvesOf = ({ parts }: DriverFit): MeasuredResult['curves'] =>
  parts.map(({ sweep, measured, fittedOhm, fittedPhaseDeg }) => ({
    sweep: SWEEP_NAMES[sweep],
    frequencyHz: [...measured.frequencyHz],
    measuredOhm: [...measured.ohm],
    measuredPhaseDeg: measured.phaseDeg === null ? [] : [...measured.phaseDeg],
    fittedOhm: [...fittedOhm],
    fittedPhaseDeg: [...fittedPhaseDeg],
  }))
