import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { medianOf } from './median.ts'

/** What is fitted: a model with unknown values, and the readings it shall come near to. */
export interface LeastSquaresProblem {
  /** Predicted readings for values; as long as `readings`, in the same order. */
  model: (values: readonly number[]) => Float64Array
  readings: Float64Array
  start: readonly number[]
  lowest: readonly number[]
  highest: readonly number[]
  /** Weight of each reading, one over its relative variance; 0 leaves it out; 1 for all when left out. */
  weights?: Float64Array
  /** When to give up; 60 when left out. */
  mostSteps?: number
  /** What each reading is: those of one kind scatter alike, and outliers are told within it; all one kind when left out. */
  kinds?: readonly string[]
}

export interface LeastSquaresFit {
  values: number[]
  /** Of the values, from the scatter of the readings about the model; rows and columns in the order of the values. */
  covariance: number[][]
  /** Readings less model. */
  residuals: Float64Array
  /** Root of the mean squared weighted residual over the degrees of freedom, in the unit of the readings. */
  misfit: number
  /** Weight that each reading counts with: as given, or 0 for an outlier. */
  weights: Float64Array
  /** Readings that count less values sought, at least 1. */
  freedom: number
  /** false when the steps ran out before they became small. */
  converged: boolean
}

const MOST_STEPS = 60
/** Within a round of reweighting, which begins near its end. */
const STEPS_A_ROUND = 6
const MOST_TRIES = 12
/** Step of the numerical slopes; values are of the order of 1. */
const SLOPE_STEP = 1e-5
/** Gain still to be had, as a share of the variance, below which no value moves by more than a hair of its deviation. */
const SMALL_GAIN = 1e-14
/** Improvement, as a share of the sum of squares, below which a fit is done. */
const SMALL = 1e-10
/** Mean square below which readings without noise are met. */
const NO_NOISE = 1e-22
/** Added to a diagonal so that a value the readings say nothing of keeps its start, with a huge variance. */
const RIDGE = 1e-12

/**
 * Nonlinear least squares within bounds by damped Gauss-Newton steps.
 * Values should be of the order of 1 (logarithms, ratios). A value at its bound stays in the covariance.
 * Source: K. Levenberg, Quart. Appl. Math. 2 (1944); D. W. Marquardt, J. SIAM 11 (1963), both from memory;
 * covariance s²(JᵀWJ)⁻¹, textbook.
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  const { readings, lowest, highest, mostSteps = MOST_STEPS } = problem
  const weights = problem.weights ?? new Float64Array(readings.length).fill(1)
  const counted = weights.reduce((count, weight) => count + (weight > 0 ? 1 : 0), 0)
  const freedom = Math.max(1, counted - problem.start.length)
  let values = problem.start.map((value, i) => within(value, lowest[i]!, highest[i]!))
  let here = surroundings(problem, values, residualsAt(problem, values), weights)
  let damping = 1e-3
  let converged = false
  for (let step = 0; step < mostSteps && !converged; step++) {
    const before = here.sum
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const moved = stepFrom(problem, values, here, damping)
      const residuals = residualsAt(problem, moved)
      if (weightedSquares(residuals, weights) < here.sum) {
        values = moved
        here = surroundings(problem, values, residuals, weights)
        damping = Math.max(SMALL, damping / 10)
        break
      }
      damping *= 4
    }
    converged = before - here.sum <= SMALL * before || isDone(here, freedom)
  }
  const variance = here.sum / freedom
  return {
    values,
    covariance: inverse(here.normal).mul(variance).to2DArray(),
    residuals: here.residuals,
    misfit: Math.sqrt(variance),
    weights,
    freedom,
    converged,
  }
}

/** Rounds of reweighting; the weights settle within a few. */
const MOST_ROUNDS = 12
/** Huber's and Tukey's constants: 95 % efficiency on normal errors. P. J. Huber, Robust Statistics (1981), from memory. */
const HUBER = 1.345
const TUKEY = 4.685
/** Rounds in which nothing is thrown out yet: from a curve that outliers have spoiled, too much would be. */
const GENTLE_ROUNDS = 3
/** Median deviation of normal errors over their standard deviation. */
const NORMAL_MEDIAN = 0.6745
/** Less than this apart is no outlier, whatever the rest does, in the unit of the readings. */
const LEAST_SCALE = 1e-4

/**
 * The same without outliers: readings far from the rest lose their weight step by step, and what has none in the end
 * is left out of a last fit of all others, so that the covariance is that of plain least squares.
 * Source: weights of P. J. Huber, then bisquare weights of J. W. Tukey, with the median deviation as scale;
 * P. J. Huber (1981), from memory.
 */
export function robustLeastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  const given = problem.weights ?? new Float64Array(problem.readings.length).fill(1)
  let fit = leastSquares(problem)
  let shares = new Float64Array(given.length).fill(1)
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const apart = distances(fit.residuals, given, problem)
    // With no reading apart the plain fit is the answer.
    if (round === 0 && apart.every((distance) => distance < TUKEY)) return fit
    const next = apart.map(round < GENTLE_ROUNDS ? huber : bisquare)
    const moved = next.some((share, i) => Math.abs(share - shares[i]!) > 0.05)
    if (!moved && round > GENTLE_ROUNDS) break
    shares = next
    const weights = given.map((w, i) => w * shares[i]!)
    fit = leastSquares({ ...problem, start: fit.values, weights, mostSteps: STEPS_A_ROUND })
  }
  const kept = given.map((weight, i) => (shares[i]! > 0 ? weight : 0))
  return leastSquares({ ...problem, start: fit.values, weights: kept })
}

const huber = (distance: number): number => (distance <= HUBER ? 1 : HUBER / distance)
const bisquare = (distance: number): number => (distance < TUKEY ? (1 - (distance / TUKEY) ** 2) ** 2 : 0)

/** How far each reading lies from the curve, in typical distances of readings of its kind. */
function distances(
  residuals: Float64Array,
  weights: Float64Array,
  { start, kinds }: LeastSquaresProblem,
): Float64Array {
  const scaled = residuals.map((residual, i) => Math.abs(residual) * Math.sqrt(weights[i]!))
  // Each value sought draws the curve nearer to the readings than the truth is.
  const all = weights.filter((weight) => weight > 0).length
  const nearness = Math.sqrt(all / Math.max(1, all - start.length))
  const kindOf = (i: number) => kinds?.[i] ?? ''
  const scales = new Map<string, number>()
  for (const kind of new Set(kinds ?? [''])) {
    const counted = scaled.filter((_, i) => weights[i]! > 0 && kindOf(i) === kind)
    const typical = counted.length === 0 ? 0 : (nearness * medianOf(counted)) / NORMAL_MEDIAN
    scales.set(kind, Math.max(LEAST_SCALE, typical))
  }
  return scaled.map((distance, i) => distance / (scales.get(kindOf(i)) ?? LEAST_SCALE))
}

const within = (value: number, lowest: number, highest: number): number =>
  Math.min(highest, Math.max(lowest, value))

/** What a step needs to know of where it begins. */
interface Surroundings {
  residuals: Float64Array
  sum: number
  /** JᵀWJ; the same with every value that its bound holds cut off from the others; JᵀWr of those not held. */
  normal: Matrix
  free: Matrix
  pull: number[]
}

function residualsAt({ model, readings }: LeastSquaresProblem, values: readonly number[]): Float64Array {
  const predicted = model(values)
  return readings.map((reading, i) => reading - predicted[i]!)
}

function surroundings(
  problem: LeastSquaresProblem,
  values: readonly number[],
  residuals: Float64Array,
  weights: Float64Array,
): Surroundings {
  const slopes = values.map((_, k) => slopeAlong(problem, values, k))
  const normal = Matrix.zeros(values.length, values.length)
  for (let j = 0; j < values.length; j++)
    for (let k = 0; k <= j; k++) {
      const product = weightedProduct(slopes[j]!, slopes[k]!, weights)
      normal.set(j, k, product)
      normal.set(k, j, product)
    }
  // A pull against a bound leads nowhere.
  const force = slopes.map((slope) => weightedProduct(slope, residuals, weights))
  const held = force.map((along, k) =>
    along > 0 ? values[k]! >= problem.highest[k]! : values[k]! <= problem.lowest[k]!,
  )
  const pull = force.map((along, k) => (held[k] ? 0 : along))
  return { residuals, sum: weightedSquares(residuals, weights), normal, free: released(normal, held), pull }
}

/** Without the coupling to values that their bounds hold: the others would step as if those moved too, and never arrive. */
function released(normal: Matrix, held: readonly boolean[]): Matrix {
  const free = normal.clone()
  for (let j = 0; j < free.rows; j++)
    for (let k = 0; k < free.columns; k++) if (j !== k && (held[j] || held[k])) free.set(j, k, 0)
  return free
}

/** Slope of every predicted reading along one value, by central differences. */
function slopeAlong({ model }: LeastSquaresProblem, values: readonly number[], k: number): Float64Array {
  const above = model(values.with(k, values[k]! + SLOPE_STEP))
  const below = model(values.with(k, values[k]! - SLOPE_STEP))
  return above.map((high, i) => (high - below[i]!) / (2 * SLOPE_STEP))
}

function weightedProduct(a: Float64Array, b: Float64Array, weights: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += weights[i]! * a[i]! * b[i]!
  return sum
}

function weightedSquares(residuals: Float64Array, weights: Float64Array): number {
  const sum = weightedProduct(residuals, residuals, weights)
  return Number.isNaN(sum) ? Number.POSITIVE_INFINITY : sum
}

/** Whether the fall that the slopes promise is nothing against the scatter of the readings. */
function isDone({ sum, free, pull, residuals }: Surroundings, freedom: number): boolean {
  if (sum < NO_NOISE * residuals.length) return true
  const step = inverse(free).mmul(Matrix.columnVector(pull))
  const gain = pull.reduce((total, force, k) => total + force * step.get(k, 0), 0)
  return gain < (SMALL_GAIN * sum) / freedom
}

function stepFrom(
  { lowest, highest }: LeastSquaresProblem,
  values: readonly number[],
  { free, pull }: Surroundings,
  damping: number,
): number[] {
  const damped = free.clone()
  for (let i = 0; i < damped.rows; i++) damped.set(i, i, damped.get(i, i) * (1 + damping))
  const step = inverse(damped).mmul(Matrix.columnVector(pull))
  return values.map((value, i) => within(value + step.get(i, 0), lowest[i]!, highest[i]!))
}

function inverse(matrix: Matrix): Matrix {
  const raised = Matrix.add(matrix, Matrix.eye(matrix.rows, matrix.columns, RIDGE))
  return new CholeskyDecomposition(raised).solve(Matrix.eye(matrix.rows, matrix.columns))
}
