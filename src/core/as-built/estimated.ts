import { studentPoint } from '../measurement/student.ts'
import type { Deviations } from './deviations.ts'
import type { StoryFit } from './fit-story.ts'

/** A value with the ends of its 95 % interval. */
export interface Estimated {
  value: number
  from: number
  to: number
}

const STEP = 1e-4

/**
 * Any figure of the built box with its 95 % interval, by the slopes of the figure along the free deviations.
 * Gaussian propagation; the figure should be about straight in the deviations (a logarithm, a loss 1/Q).
 */
export function estimated(fit: StoryFit, figure: (built: Deviations) => number): Estimated {
  const { story, built, covariance, freedom } = fit
  const value = figure(built)
  const slopes = story.free.map((name) => {
    const at = (step: number) => figure({ ...built, [name]: built[name] + step })
    return (at(STEP) - at(-STEP)) / (2 * STEP)
  })
  const variance = slopes.reduce(
    (sum, a, i) => sum + slopes.reduce((inner, b, j) => inner + a * b * (covariance[i]?.[j] ?? 0), 0),
    0,
  )
  const reach = studentPoint(freedom) * Math.sqrt(Math.max(0, variance))
  return { value, from: value - reach, to: value + reach }
}
