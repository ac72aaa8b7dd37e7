import { CholeskyDecomposition, Matrix } from 'ml-matrix'

/** What is fitted: a model with unknown values, and the readings it shall come near to. */
export interface LeastSquaresProblem {
  /** Predicted readings for values; as long as `readings`, in the same order. */
  model: (values: readonly number[]) => Float64Array
  readings: Float64Array
  start: readonly number[]
  lowest: readonly number[]
  highest: readonly number[]
  /** Weight of each reading, 0 to 1; 1 for all when left out. */
  weights?: Float64Array
}

export interface LeastSquaresFit {
  values: number[]
  /** Of the values, from the scatter of the readings about the model; rows and columns in the order of the values. */
  covariance: number[][]
  /** Readings less model. */
  residuals: Float64Array
  /** Root of the mean squared residual over the degrees of freedom, in the unit of the readings. */
  misfit: number
  /** Share that each reading counts with: 1, or 0 for an outlier. */
  weights: Float64Array
  /** false when the steps ran out before they became small. */
  converged: boolean
}

const MOST_STEPS = 60
const MOST_TRIES = 12
/** Relative step of the numerical slopes, and the improvement below which a fit is done. */
const SLOPE_STEP = 1e-5
const SMALL = 1e-10
/** Added to a diagonal so that a value the readings say nothing of keeps its start, with a huge variance. */
const RIDGE = 1e-12

/**
 * Nonlinear least squares within bounds by damped Gauss-Newton steps.
 * Values should be of the order of 1 (logarithms, ratios). A value at its bound stays in the covariance.
 * Source: K. Levenberg, Quart. Appl. Math. 2 (1944); D. W. Marquardt, J. SIAM 11 (1963), both from memory;
 * covariance s²(JᵀWJ)⁻¹, textbook.
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  const { model, readings, lowest, highest } = problem
  const weights = problem.weights ?? new Float64Array(readings.length).fill(1)
  let values = problem.start.map((value, i) => within(value, lowest[i]!, highest[i]!))
  let predicted = model(values)
  let sum = weightedSquares(readings, predicted, weights)
  let damping = 1e-3
  let converged = false
  for (let step = 0; step < MOST_STEPS && !converged; step++) {
    const slopes = slopesAt(problem, values)
    const before = sum
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const moved = stepFrom(problem, values, slopes, residualsOf(readings, predicted), weights, damping)
      const there = model(moved)
      const squares = weightedSquares(readings, there, weights)
      if (squares < sum) {
        values = moved
        predicted = there
        sum = squares
        damping = Math.max(SMALL, damping / 5)
        break
      }
      damping *= 4
    }
    converged = before - sum <= SMALL * before
  }
  const freedom = Math.max(1, total(weights) - values.length)
  const variance = sum / freedom
  return {
    values,
    covariance: inverse(normalMatrix(slopesAt(problem, values), weights, 0))
      .mul(variance)
      .to2DArray(),
    residuals: residualsOf(readings, predicted),
    misfit: Math.sqrt(variance),
    weights,
    converged,
  }
}

/** Rounds of reweighting; the weights settle within a few. */
const MOST_ROUNDS = 12
/** Tukey's constant: 95 % efficiency on normal errors. P. J. Huber, Robust Statistics (1981), from memory. */
const TUKEY = 4.685
/** Median deviation of normal errors over their standard deviation. */
const NORMAL_MEDIAN = 0.6745
/** Less than this apart is no outlier, whatever the rest does, in the unit of the readings. */
const LEAST_SCALE = 1e-4

/**
 * The same without outliers: readings far from the rest lose their weight step by step, and what has none in the end
 * is left out of a last fit of all others, so that the covariance is that of plain least squares.
 * Source: bisquare weights of J. W. Tukey, with the median deviation as scale; P. J. Huber (1981), from memory.
 */
export function robustLeastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  let fit = leastSquares(problem)
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const scale = Math.max(LEAST_SCALE, medianOf(fit.residuals.map(Math.abs)) / NORMAL_MEDIAN)
    const weights = fit.residuals.map((residual) => bisquare(residual / (TUKEY * scale)))
    const change = Math.max(...weights.map((weight, i) => Math.abs(weight - fit.weights[i]!)))
    fit = leastSquares({ ...problem, start: fit.values, weights })
    if (change < 0.01) break
  }
  const kept = fit.weights.map((weight) => (weight > 0 ? 1 : 0))
  return leastSquares({ ...problem, start: fit.values, weights: kept })
}

const bisquare = (u: number): number => (Math.abs(u) < 1 ? (1 - u * u) ** 2 : 0)

function medianOf(list: Float64Array): number {
  const sorted = Float64Array.from(list).sort()
  const middle = Math.floor(sorted.length / 2)
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

const within = (value: number, lowest: number, highest: number): number =>
  Math.min(highest, Math.max(lowest, value))

const total = (list: Float64Array): number => list.reduce((sum, value) => sum + value, 0)

const residualsOf = (readings: Float64Array, predicted: Float64Array): Float64Array =>
  readings.map((reading, i) => reading - predicted[i]!)

function weightedSquares(readings: Float64Array, predicted: Float64Array, weights: Float64Array): number {
  let sum = 0
  for (let i = 0; i < readings.length; i++) sum += weights[i]! * (readings[i]! - predicted[i]!) ** 2
  return Number.isNaN(sum) ? Number.POSITIVE_INFINITY : sum
}

/** Slope of every predicted reading along every value, by central differences. */
function slopesAt({ model, readings }: LeastSquaresProblem, values: readonly number[]): Matrix {
  const slopes = new Matrix(readings.length, values.length)
  values.forEach((value, column) => {
    const step = SLOPE_STEP * Math.max(1, Math.abs(value))
    const above = model(values.with(column, value + step))
    const below = model(values.with(column, value - step))
    for (let row = 0; row < readings.length; row++)
      slopes.set(row, column, (above[row]! - below[row]!) / (2 * step))
  })
  return slopes
}

function normalMatrix(slopes: Matrix, weights: Float64Array, damping: number): Matrix {
  const normal = slopes.transpose().mmul(slopes.clone().mulColumnVector([...weights]))
  for (let i = 0; i < normal.rows; i++) {
    normal.set(i, i, normal.get(i, i) * (1 + damping) + RIDGE)
    // Rounding differs on the two sides of the diagonal.
    for (let j = 0; j < i; j++) normal.set(i, j, normal.get(j, i))
  }
  return normal
}

function stepFrom(
  { lowest, highest }: LeastSquaresProblem,
  values: readonly number[],
  slopes: Matrix,
  residuals: Float64Array,
  weights: Float64Array,
  damping: number,
): number[] {
  const pull = slopes.transpose().mmul(Matrix.columnVector(residuals.map((value, i) => value * weights[i]!)))
  const step = inverse(normalMatrix(slopes, weights, damping)).mmul(pull)
  return values.map((value, i) => within(value + step.get(i, 0), lowest[i]!, highest[i]!))
}

const inverse = (matrix: Matrix): Matrix =>
  new CholeskyDecomposition(matrix).solve(Matrix.eye(matrix.rows, matrix.columns))
