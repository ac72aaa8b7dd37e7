import type { WorkingStep } from '../schema/frame.ts'
import { mathEngine } from './math-engine.ts'
import type { Formula } from './working.ts'

/** Evaluates the printed formulas, so that what is printed cannot drift from what came out. */
export async function evaluateWorking(formulas: readonly Formula[]): Promise<WorkingStep[]> {
  const engine = await mathEngine()
  return formulas.map(({ quantity, formula, with: values, unit, source }) => ({
    quantity,
    formula,
    with: values,
    result: engine.evaluate(formula, values),
    unit,
    source,
  }))
}
