import {
  type LeastSquaresFit,
  type LeastSquaresProblem,
  leastSquares,
  robustLeastSquares,
} from '../measurement/least-squares.ts'
import type { MeasuredSweep } from '../measurement/sweep.ts'
import { asPlanned } from './built-circuit.ts'
import { type Deviation, type Deviations, RANGES } from './deviations.ts'
import type { PlannedBox } from './planned-box.ts'
import type { Story } from './stories.ts'
import { terminalImpedance, terminalMeterOhm } from './terminals.ts'

/** A story with the deviations that explain a measured curve best, and how well they do. */
export interface StoryFit {
  story: Story
  built: Deviations
  /** Covariance of the free deviations, in the order of `story.free`. */
  covariance: readonly (readonly number[])[]
  /** Readings less sought deviations. */
  freedom: number
  /** Typical distance of the readings from the curve, as a share of the impedance and in radians. */
  misfit: number
  /** Readings that were fitted. */
  readings: number
  /** Moduli and phases, counted each, that lie so far off that they were left out. */
  leftOut: number
  /** Where the readings are that have one of these. */
  outliersHz: readonly number[]
  /** Lower is likelier: how badly the curve fits and how unusual the deviations are, as −2 log likelihood. */
  score: number
}

/** Below this a misfit is no evidence: the circuit itself is no nearer to a real box. Common practice, no source. */
const CIRCUIT_MISFIT = 0.005
/** What a fault must explain before it is believed rather than a plain deviation. Common practice, no source. */
const FAULT_PENALTY = 4

/** Logarithms of the moduli, then the phases in radians: errors of both are then shares of the impedance. */
function vectorOf(re: Float64Array, im: Float64Array, withPhase: boolean): Float64Array {
  const n = re.length
  const vector = new Float64Array(withPhase ? 2 * n : n)
  for (let i = 0; i < n; i++) {
    vector[i] = Math.log(Math.hypot(re[i]!, im[i]!))
    if (withPhase) vector[n + i] = Math.atan2(im[i]!, re[i]!)
  }
  return vector
}

function readingsOf({ ohm, phaseDeg }: MeasuredSweep): Float64Array {
  const phases = phaseDeg === null ? [] : Array.from(phaseDeg, (deg) => (deg * Math.PI) / 180)
  return Float64Array.from([...Array.from(ohm, Math.log), ...phases])
}

const withValues = (plan: Deviations, free: readonly Deviation[], values: readonly number[]): Deviations => ({
  ...plan,
  ...Object.fromEntries(free.map((name, i) => [name, values[i]])),
})

/** As far below the wiring of the story as below that of the plan, or less than no resistance would be left of it. */
function leastSeries(planned: PlannedBox, story: Story): number {
  const meterOhm = terminalMeterOhm(planned, story, 0) ?? planned.referenceOhm
  return RANGES.series.from * Math.min(1, meterOhm / planned.referenceOhm)
}

function problemOf(
  planned: PlannedBox,
  story: Story,
  curve: MeasuredSweep,
  leadOhm: number,
): LeastSquaresProblem {
  const plan = asPlanned(planned.speaker)
  const { free } = story
  return {
    model: (values) => {
      const built = withValues(plan, free, values)
      const { re, im } = terminalImpedance(planned, story, built, curve.frequencyHz, leadOhm)
      return vectorOf(re, im, curve.phaseDeg !== null)
    },
    readings: readingsOf(curve),
    start: free.map((name) => plan[name]),
    lowest: free.map((name) => (name === 'series' ? leastSeries(planned, story) : RANGES[name].from)),
    highest: free.map((name) => RANGES[name].to),
  }
}

function scoreOf(fit: LeastSquaresFit, { free, fault }: Story, plan: Deviations, built: Deviations): number {
  const unusual = free.reduce((sum, name) => sum + ((built[name] - plan[name]) / RANGES[name].usual) ** 2, 0)
  const far = fit.residuals.length * Math.log(fit.misfit ** 2 + CIRCUIT_MISFIT ** 2)
  return far + unusual + (fault === 'none' ? 0 : FAULT_PENALTY)
}

/**
 * Fits the free deviations of a story to a curve, starting at the plan. Every reading counts, or a wrong story would
 * win by leaving out what it does not explain. Least squares, see measurement/least-squares.ts.
 */
export function fitStory(planned: PlannedBox, story: Story, curve: MeasuredSweep, leadOhm: number): StoryFit {
  const fit = leastSquares(problemOf(planned, story, curve, leadOhm))
  const plan = asPlanned(planned.speaker)
  const built = withValues(plan, story.free, fit.values)
  return {
    story,
    built,
    covariance: fit.covariance,
    freedom: fit.residuals.length - story.free.length,
    misfit: fit.misfit,
    readings: curve.frequencyHz.length,
    leftOut: 0,
    outliersHz: [],
    score: scoreOf(fit, story, plan, built),
  }
}

/** The fit of a story without the readings that lie far off its curve; the score stays, it is that of all readings. */
export function withoutOutliers(
  planned: PlannedBox,
  fitted: StoryFit,
  curve: MeasuredSweep,
  leadOhm: number,
): StoryFit {
  const { story } = fitted
  const start = story.free.map((name) => fitted.built[name])
  const fit = robustLeastSquares({ ...problemOf(planned, story, curve, leadOhm), start })
  const isOut = (place: number) => fit.weights[place] === 0
  const leftOut = fit.weights.filter((weight) => weight === 0).length
  if (leftOut === 0) return fitted
  return {
    ...fitted,
    built: withValues(asPlanned(planned.speaker), story.free, fit.values),
    covariance: fit.covariance,
    freedom: fit.weights.length - leftOut - start.length,
    misfit: fit.misfit,
    leftOut,
    outliersHz: Array.from(curve.frequencyHz).filter(
      (_, i) => isOut(i) || isOut(curve.frequencyHz.length + i),
    ),
  }
}
