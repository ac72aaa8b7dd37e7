import type { MeasuredSweep } from '../measurement/sweep.ts'
import { asPlanned } from './built-circuit.ts'
import { condensed } from './condensed.ts'
import { RANGES } from './deviations.ts'
import { fitStory, type StoryFit, withoutOutliers } from './fit-story.ts'
import type { PlannedBox } from './planned-box.ts'
import { storiesOf } from './stories.ts'

/** A plain box this near to the readings, and no deviation this far off, needs no other story. Common practice, no source. */
const NEAR_MISFIT = 0.02
const USUAL = 2
/** More readings left out than this share are no outliers, but a curve that the story does not explain. Common practice, no source. */
const MOST_LEFT_OUT = 0.2

export const isExplained = ({ leftOut, freedom }: StoryFit): boolean =>
  leftOut < MOST_LEFT_OUT * (freedom + leftOut)

function isOrdinary(fit: StoryFit, planned: PlannedBox, scatter: number): boolean {
  const { story, built, misfit } = fit
  const plan = asPlanned(planned.speaker)
  const near = isExplained(fit) && misfit < Math.max(NEAR_MISFIT, 1.5 * scatter)
  return near && story.free.every((name) => Math.abs(built[name] - plan[name]) < USUAL * RANGES[name].usual)
}

/** Readings by which stories are told apart before the likeliest are fitted to all. */
const SCREENED = 48
/** A story that scores this much worse on those does not come back on all. */
const HOPELESS = 20

/**
 * The stories that may explain a measured curve, likeliest first. Others are tried only where the plain one is not
 * enough: readings off the curve, or a deviation that is rare.
 * @param scatter  of the readings about a smooth curve, as a share
 */
export function explain(
  planned: PlannedBox,
  curve: MeasuredSweep,
  leadOhm: number,
  scatter: number,
): StoryFit[] {
  const stories = storiesOf(planned)
  const plain = withoutOutliers(planned, fitStory(planned, stories[0], curve, leadOhm), curve, leadOhm)
  if (isOrdinary(plain, planned, scatter)) return [plain]
  const few = condensed(curve, SCREENED)
  const screened = stories.map((story) => fitStory(planned, story, few, leadOhm))
  const least = Math.min(...screened.map(({ score }) => score))
  const [best, ...rivals] = screened
    .filter(({ score }) => score < least + HOPELESS)
    .map(({ story }) => fitStory(planned, story, curve, leadOhm))
    .sort((a, b) => a.score - b.score)
  return best === undefined ? [] : [withoutOutliers(planned, best, curve, leadOhm), ...rivals]
}
