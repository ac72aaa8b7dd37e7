import { driverImpedance } from '../driver/impedance.ts'
import { kindsOf, problemOf, RESONANCES, type Task, UNKNOWNS_OF } from './fit-problem.ts'
import { type DriverSweeps, nudged, startOf } from './fit-start.ts'
import { type LeastSquaresFit, leastSquares, robustLeastSquares } from './least-squares.ts'
import type { MeasuredSweep } from './sweep.ts'
import { BOUNDS, coilOf, type Sought, soughtOf, toScale, type Unknown } from './unknowns.ts'

/** A driver that explains its sweeps, all of them at once. */
export interface DriverFit {
  names: readonly Unknown[]
  sought: Sought
  /** Of the values sought as logarithms (the exponent as it is), in the order of `names`. */
  covariance: readonly (readonly number[])[]
  freedom: number
  /** Root mean square over the degrees of freedom, as a share of the impedance; of the phases in radians. */
  misfit: number
  phaseMisfit: number | null
  readings: number
  converged: boolean
  parts: FittedPart[]
  /** Values that ended at the edge of what a driver can be. */
  atBounds: Unknown[]
}

/** One sweep beside the curve of the fitted driver. */
export interface FittedPart {
  sweep: keyof DriverSweeps
  measured: MeasuredSweep
  fittedOhm: Float64Array
  fittedPhaseDeg: Float64Array
  /** Places in the sweep whose impedance or phase was left out. */
  outliers: number[]
}

/** How sure a reading of a direct-current meter is, as a share. Common practice, no source. */
const METER_DEVIATION = 0.01
/** A lossy coil must explain this much more than a plain one, as −2 log likelihood. Akaike 1974 asks for 2; from memory. */
const LOSS_WORTH = 6
/** Readings without noise tell nothing of which scatter belongs to what. */
const NO_SCATTER = 1e-5

/**
 * Fits one driver to its sweeps: impedances as shares, phases in radians where they are there, outliers let go.
 * The coil is lossy where the readings ask for it. Null where a sweep shows no resonance to begin at.
 * Source: weights by 1/|Z| and start from the hand formulas, acoustics practice; the rest in least-squares.ts.
 */
export function fitDriver(sweeps: DriverSweeps, leadOhm: number, meterOhm: number | null): DriverFit | null {
  const parts = (['freeAir', 'withMass', 'inBox'] as const).flatMap((sweep) => {
    const measured = sweeps[sweep]
    return measured === null ? [] : [{ sweep, measured }]
  })
  const task = { parts, leadOhm, meterOhm }
  const plain = parts.flatMap(({ sweep }): Unknown[] => UNKNOWNS_OF[sweep])
  const scout = thinned(task)
  const from = (start: Sought) => fitted(scout, plain, start)
  const starts = startOf(sweeps, leadOhm, meterOhm).map((start) => ({ start, attempt: from(start) }))
  const [first] = starts.sort((a, b) => a.attempt.fit.misfit - b.attempt.fit.misfit)
  if (first === undefined) return null
  const others = isLost(first.attempt) ? nudged(first.start).map((start) => scouted(scout, plain, start)) : []
  const best = [first.attempt, ...others].reduce((a, b) => (b.fit.misfit < a.fit.misfit ? b : a))
  return finished(
    task,
    withLoss(task, scout === task && best === first.attempt ? best : fitted(task, plain, best.sought)),
  )
}

/** Enough readings of a sweep to find out where a fit leads. */
const SCOUTED = 60
const SCOUTING_STEPS = 15

/** The same with every so many readings of long sweeps; the task itself where none is long. */
function thinned(task: Task): Task {
  if (task.parts.every(({ measured }) => measured.ohm.length <= SCOUTED)) return task
  const parts = task.parts.map(({ sweep, measured }) => {
    const every = Math.ceil(measured.ohm.length / SCOUTED)
    const kept = (list: Float64Array) => list.filter((_, i) => i % every === 0)
    const { frequencyHz, ohm, phaseDeg } = measured
    const fewer = { frequencyHz: kept(frequencyHz), ohm: kept(ohm), phaseDeg: phaseDeg && kept(phaseDeg) }
    return { sweep, measured: fewer }
  })
  return { ...task, parts }
}

/** The fit with a lossy coil where the readings are clearly nearer to it, else the one with a plain coil. */
function withLoss(task: Task, plain: Attempt): Attempt {
  if (plain.fit.misfit < NO_SCATTER) return plain
  const names: readonly Unknown[] = [...plain.names, 'exponent']
  const problem = problemOf(task, names, { ...plain.sought, exponent: 0.85 })
  const trial = leastSquares({ ...problem, weights: plain.fit.weights, mostSteps: SCOUTING_STEPS })
  const worth = 2 * plain.readings * Math.log(plain.fit.misfit / Math.max(trial.misfit, NO_SCATTER))
  if (worth < LOSS_WORTH) return plain
  const lossy = fitted(task, names, soughtOf(names, trial.values))
  return lossy.fit.misfit < plain.fit.misfit ? lossy : plain
}

/** Whether a fit ran away or did not settle, as from a start on the wrong side of a peak. */
const isLost = ({ names, fit }: Attempt): boolean =>
  !fit.converged || names.some((name, i) => isAtBound(name, fit.values[i]!))

interface Attempt {
  names: readonly Unknown[]
  fit: LeastSquaresFit
  sought: Sought
  readings: number
}

/** Where a start leads, wrong readings and all. */
function scouted(task: Task, names: readonly Unknown[], start: Sought): Attempt {
  const problem = problemOf(task, names, start)
  const fit = leastSquares({ ...problem, mostSteps: SCOUTING_STEPS })
  return { names, fit, sought: soughtOf(names, fit.values), readings: problem.readings.length }
}

function fitted(task: Task, names: readonly Unknown[], start: Sought): Attempt {
  const problem = problemOf(task, names, start)
  const first = robustLeastSquares(problem)
  const weights = balanced(task, first)
  const fit = weights === null ? first : robustLeastSquares({ ...problem, start: first.values, weights })
  return { names, fit, sought: soughtOf(names, fit.values), readings: problem.readings.length }
}

const rms = (residuals: readonly number[]): number =>
  Math.sqrt(residuals.reduce((sum, value) => sum + value * value, 0) / Math.max(1, residuals.length))

function residualsOf(task: Task, fit: LeastSquaresFit, kind: 'ohm' | 'phase'): number[] {
  const kinds = kindsOf(task)
  return [...fit.residuals].filter((_, i) => kinds[i] === kind && fit.weights[i]! > 0)
}

/** Weights that give impedances, phases and the meter each the scatter they have; null where one fits all. */
function balanced(task: Task, fit: LeastSquaresFit): Float64Array | null {
  const ohm = rms(residualsOf(task, fit, 'ohm'))
  const phases = residualsOf(task, fit, 'phase')
  const phase = phases.length === 0 ? ohm : rms(phases)
  const alike = phase < 1.4 * ohm && ohm < 1.4 * phase
  if (ohm < NO_SCATTER || phase < NO_SCATTER || (alike && task.meterOhm === null)) return null
  const weight = { ohm: 1, phase: (ohm / phase) ** 2, meter: (ohm / METER_DEVIATION) ** 2 }
  return Float64Array.from(kindsOf(task), (kind) => weight[kind])
}

const DEG = 180 / Math.PI

function finished(task: Task, { names, fit, sought }: Attempt): DriverFit {
  const phases = residualsOf(task, fit, 'phase')
  const share = Math.sqrt((fit.freedom + names.length) / fit.freedom)
  let at = 0
  const parts = task.parts.map(({ sweep, measured }) => {
    const n = measured.ohm.length
    const width = measured.phaseDeg === null ? n : 2 * n
    const weights = fit.weights.subarray(at, at + width)
    at += width
    const { re, im } = driverImpedance(
      coilOf(sought, task.leadOhm),
      RESONANCES[sweep](sought),
      measured.frequencyHz,
    )
    return {
      sweep,
      measured,
      fittedOhm: re.map((value, i) => Math.hypot(value, im[i]!)),
      fittedPhaseDeg: re.map((value, i) => Math.atan2(im[i]!, value) * DEG),
      outliers: Array.from(measured.ohm, (_, i) => i).filter(
        (i) => weights[i] === 0 || (width > n && weights[n + i] === 0),
      ),
    }
  })
  return {
    names,
    sought,
    covariance: fit.covariance,
    freedom: fit.freedom,
    misfit: share * rms(residualsOf(task, fit, 'ohm')),
    phaseMisfit: phases.length === 0 ? null : share * rms(phases),
    readings: fit.weights.filter((weight) => weight > 0).length,
    converged: fit.converged,
    parts,
    atBounds: names.filter((name, i) => isAtBound(name, fit.values[i]!)),
  }
}

/** A coil without inductance, or one that is a pure inductance, is a driver all the same. */
function isAtBound(name: Unknown, value: number): boolean {
  if (name === 'le' || name === 'exponent') return false
  const [lowest, highest] = BOUNDS[name].map((bound) => toScale(name, bound)) as [number, number]
  return value <= lowest || value >= highest
}
