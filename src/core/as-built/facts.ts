import type { AsBuiltSections } from '../../schema/as-built.ts'
import { boxCompliance } from '../box/losses.ts'
import { endsTotalMm } from '../box/port-geometry.ts'
import { radiatorMassOffG } from './built-circuit.ts'
import type { Coverage } from './coverage.ts'
import { type Estimated, estimated } from './estimated.ts'
import { isExplained } from './explain.ts'
import type { StoryFit } from './fit-story.ts'
import { type FigureName, type Judged, judgedFigures } from './judged.ts'
import type { PlannedBox } from './planned-box.ts'

/** What the rules about a finished box look at. */
export interface AsBuiltFacts {
  planned: PlannedBox
  coverage: Coverage
  /** The likeliest story; null when the curve was not good enough to tell one, or none fits it. */
  best: StoryFit | null
  /** Another one that explains the curve about as well. */
  rival: StoryFit | null
  /** How far the readings are from the best curve, also when that is not good enough; null when none was sought. */
  misfit: number | null
  judged: ReadonlyMap<FigureName, Judged>
  lossesToldApart: boolean
  secondOpinion: AsBuiltSections['secondOpinion']
}

/** −2 log likelihood between stories that is no evidence yet: e³ to 1, about 20 to 1. Common practice, no source. */
const NEAR_RIVAL = 6

/** An interval this wide on leak less absorption leaves open which of them it is. Common practice, no source. */
const TOLD_APART = 0.06

const LOSSES_UNKNOWN = { judged: new Map<FigureName, Judged>(), lossesToldApart: false }

/** Gathers the facts; `stories` likeliest first, empty when the sweep was not good enough to fit anything. */
export function asBuiltFacts(
  planned: PlannedBox,
  coverage: Coverage,
  stories: readonly StoryFit[],
  worstMisfit: number,
  secondOpinion: AsBuiltSections['secondOpinion'],
): AsBuiltFacts {
  const [first, second] = stories
  const best = first !== undefined && first.misfit <= worstMisfit && isExplained(first) ? first : null
  const common = { planned, coverage, misfit: first?.misfit ?? null, secondOpinion }
  if (best === null) return { ...common, ...LOSSES_UNKNOWN, best, rival: null }
  const apart = estimated(best, (built) => built.leak - built.absorption)
  return {
    ...common,
    best,
    rival: second !== undefined && second.score - best.score < NEAR_RIVAL ? second : null,
    judged: new Map(judgedFigures(planned, best).map((figure) => [figure.name, figure])),
    lossesToldApart: best.story.free.includes('leak') && apart.to - apart.from < 2 * TOLD_APART,
  }
}

export const strengthOf = ({ judged }: AsBuiltFacts, name: FigureName): number =>
  judged.get(name)?.strength ?? 0

/**
 * What to cut off the port (above 0) or add to it, mm, for the planned tuning on the volume as built, with its 95 %
 * interval. Helmholtz resonance.
 */
export function trimMm({ planned, best }: AsBuiltFacts): Estimated | null {
  const { port } = planned.enclosure
  if (best === null || port === null) return null
  return estimated(
    best,
    (built) => (port.effectiveLengthMm / Math.exp(built.air)) * (Math.exp(-2 * built.tuning) - 1),
  )
}

/** Length of the port that gives the planned tuning on the volume as built, mm; not above 0 when none does. */
export function wantedTubeMm({ planned, best }: AsBuiltFacts): number | null {
  const { port } = planned.enclosure
  if (best === null || port === null) return null
  return port.effectiveLengthMm / Math.exp(best.built.air) - endsTotalMm(port.geometry)
}

/** Free air missing (below 0) or too much in the box, litres of real space. */
export const volumeOffL = ({ planned, best }: AsBuiltFacts): number =>
  best === null ? 0 : planned.speaker.netVolumeL * (Math.exp(best.built.air) - 1)

/** Mass too much (above 0) or missing on each passive radiator, g; null without one. */
export function radiatorOffG({ planned, best }: AsBuiltFacts): number | null {
  if (best === null) return null
  const { speaker } = planned
  const box = boxCompliance(speaker.acousticVolumeL * Math.exp(best.built.air), speaker.air)
  return radiatorMassOffG(speaker, speaker.boxHz * Math.exp(best.built.tuning), box)
}

/** Free-air resonance that would explain the fc of a closed box of the planned volume, Hz; null where none would. */
export function resonanceInsteadHz({ planned, judged }: AsBuiltFacts): number | null {
  const measured = judged.get('resonanceHz')?.row.measured ?? null
  if (measured === null) return null
  const { boxHz, driver } = planned.speaker
  const square = measured ** 2 - (boxHz ** 2 - driver.fsHz ** 2)
  return square > 0 ? Math.sqrt(square) : null
}
