import type { AsBuiltSections } from '../../schema/as-built.ts'
import type { Estimated } from './estimated.ts'
import { FIGURES, type FigureRow, inner, outer, plannedFigure } from './figures.ts'
import type { StoryFit } from './fit-story.ts'
import type { PlannedBox } from './planned-box.ts'

type ComparisonRow = AsBuiltSections['comparison'][number]
export type FigureName = FigureRow['name']

/** A figure of the built box beside the one of the plan. */
export interface Judged {
  name: FigureName
  row: ComparisonRow
  /** Difference in multiples of what is still good, above 0 for more than planned; 0 when it may as well be none. */
  strength: number
}

/** So much more loss, as 1/Q, is plainly heard and worth a repair: QL 7 instead of 12. Common practice, no source. */
export const LOSS_EXCESS = 0.06

/** Step that still counts as good: of a loss as 1/Q, of a scale in its logarithm, else in the figure itself. */
function goodStep(row: FigureRow, planned: PlannedBox, plan: number): number {
  if (row.tolerancePercent === null) return LOSS_EXCESS
  const share = row.tolerancePercent(planned) / 100
  return row.kind === 'scale' ? Math.log(1 + share) : share * Math.abs(plan)
}

function strengthOf(row: FigureRow, planned: PlannedBox, plan: number, found: Estimated): number {
  const meant = row.kind === 'scale' ? Math.log(plan) : plan
  const isSure = meant < found.from || meant > found.to
  return isSure ? (found.value - meant) / goodStep(row, planned, plan) : 0
}

/** The figure of the plan as it is shown: a loss 1/Q as Q. */
function shownPlan(row: FigureRow, plan: number | null): number | null {
  if (row.kind !== 'loss' || plan === null) return plan
  return plan > 0 ? 1 / plan : null
}

function judgedFigure(row: FigureRow, planned: PlannedBox, fit: StoryFit): Judged {
  const found = inner(row, planned, fit)
  const { value, from, to } = outer(row, found)
  const plan = plannedFigure(row, planned, fit)
  const strength = plan === null ? 0 : strengthOf(row, planned, plan, found)
  const shown = shownPlan(row, plan)
  return {
    name: row.name,
    strength,
    row: {
      figure: row.name,
      planned: shown,
      measured: value,
      from,
      to,
      unit: row.unit,
      differencePercent: shown === null || value === null ? null : 100 * (value / shown - 1),
      tolerancePercent: row.tolerancePercent === null ? null : row.tolerancePercent(planned),
      // Less loss than planned is no fault.
      within: row.kind === 'loss' ? strength <= 1 : Math.abs(strength) <= 1,
    },
  }
}

/** Every figure that the fit tells, beside the plan. */
export const judgedFigures = (planned: PlannedBox, fit: StoryFit): Judged[] =>
  FIGURES.filter((row) => row.known(planned, fit)).map((row) => judgedFigure(row, planned, fit))
