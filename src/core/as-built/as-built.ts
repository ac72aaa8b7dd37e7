import type { AsBuiltRequest, AsBuiltSections } from '../../schema/as-built.ts'
import { rankedCauses } from '../findings/as-built.ts'
import { asBuiltBoxRules } from '../findings/as-built-box.ts'
import { asBuiltDriverRules } from '../findings/as-built-driver.ts'
import { asBuiltOpeningRules } from '../findings/as-built-opening.ts'
import { asBuiltRestRules, asBuiltSweepRules, canBeExplained } from '../findings/as-built-sweep.ts'
import { asBuiltWiringRules } from '../findings/as-built-wiring.ts'
import { apply, cautionsOf } from '../findings/rule.ts'
import { type MeasuredSweep, readSweep } from '../measurement/sweep.ts'
import { type Fault, isRefusal, type Outcome, type Refusal } from '../outcome.ts'
import { hertz, ohm } from '../say.ts'
import { builtSection } from './built-section.ts'
import { secondOpinion } from './classic.ts'
import { between, condensed, filtered } from './condensed.ts'
import { type Coverage, coverageOf, FEWEST_READINGS } from './coverage.ts'
import { curvesOf } from './curves.ts'
import { explain } from './explain.ts'
import { type AsBuiltFacts, asBuiltFacts } from './facts.ts'
import { keptFromPlan } from './kept-from-plan.ts'
import { type PlannedBox, plannedBox } from './planned-box.ts'
import { withoutSlips } from './slips.ts'
import { terminalMeterOhm } from './terminals.ts'
import { scatterOf, turningPoints } from './turning-points.ts'
import { asBuiltWorking } from './working.ts'

const CAUSES = [...asBuiltWiringRules, ...asBuiltBoxRules, ...asBuiltOpeningRules, ...asBuiltDriverRules]

/** Readings this far from every curve, beyond their own scatter, are those of another box. Common practice, no source. */
const WORST_MISFIT = 0.06

/** Readings beyond these cost time and tell nothing new: more of them are averaged. */
const MOST_FITTED = 200

const sparse = ({ readings, wantedFromHz, wantedToHz }: Coverage): Fault[] =>
  readings >= FEWEST_READINGS
    ? []
    : [
        {
          at: '/measured/sweep',
          message: `holds ${readings} readings about the resonances of this box; give at least ${FEWEST_READINGS} (better 40) between ${hertz(wantedFromHz)} and ${hertz(wantedToHz)}`,
        },
      ]

/** Lead and clips of more than this are doubted where they make up half of a reading. Common practice, no source. */
const USUAL_LEAD_OHM = 1

/** So much of the planned resistance that is left is no sign of a wrong lead. Common practice, no source. */
const ENOUGH_LEFT = 0.6

/** A lead is part of every reading; one that is none would leave less than a coil, and that would be explained. */
function leadFaults({ referenceOhm }: PlannedBox, curve: MeasuredSweep, leadOhm: number): Fault[] {
  const lowest = Math.min(...curve.ohm)
  const left = lowest - leadOhm
  const isDoubtful = leadOhm > USUAL_LEAD_OHM && leadOhm > left && left < ENOUGH_LEFT * referenceOhm
  return left > 0 && !isDoubtful
    ? []
    : [
        {
          at: '/measured/leadOhm',
          message: `is ${ohm(leadOhm)}, and the lowest reading of the sweep is ${ohm(lowest)}, lead included; give the resistance of lead and clips alone, the probes held together`,
        },
      ]
}

/**
 * Facts of a sweep before anything is fitted decide whether anything is. Only what lies about the resonances is: above
 * them a coil is seldom what the plan has it.
 */
function factsOf(
  planned: PlannedBox,
  curve: MeasuredSweep,
  coverage: Coverage,
  leadOhm: number,
): AsBuiltFacts {
  const scatter = scatterOf(curve)
  const worst = Math.max(WORST_MISFIT, 2 * scatter)
  const bare = asBuiltFacts(planned, coverage, [], worst, null)
  const about = condensed(between(curve, 0, coverage.wantedToHz), MOST_FITTED)
  const stories = canBeExplained(bare) ? explain(planned, about, leadOhm, scatter) : []
  const [first] = stories
  // What the fit leaves out is no peak for the formulas either.
  const trusted =
    first === undefined || first.leftOut === 0
      ? curve
      : filtered(about, ({ hz }) => !first.outliersHz.includes(hz))
  // The formulas know a box that works, not one with a dead or reversed driver in it.
  const opinion =
    first?.story.fault === 'none'
      ? secondOpinion(
          planned,
          turningPoints(trusted),
          terminalMeterOhm(planned, first.story, first.built.series),
          leadOhm,
        )
      : null
  return asBuiltFacts(planned, coverage, stories, worst, opinion)
}

/**
 * `/v1/as-built`: the plan and the measured impedance of one finished box; its real tuning, volume and losses, and what
 * most likely causes the differences. Refuses designs and sweeps that cannot be read, every fault at once.
 */
export function asBuilt({ design, measured }: AsBuiltRequest): Outcome<AsBuiltSections> | Refusal {
  const planned = plannedBox(design)
  const curve = readSweep(measured.sweep, '/measured/sweep')
  if (isRefusal(planned) || isRefusal(curve))
    return { faults: [planned, curve].flatMap((part) => (isRefusal(part) ? part.faults : [])) }
  const leadOhm = measured.leadOhm ?? 0
  const { kept, slips } = withoutSlips(planned, curve, leadOhm)
  const tooMuchLead = leadFaults(planned, kept, leadOhm)
  if (tooMuchLead.length > 0) return { faults: tooMuchLead }
  const coverage = coverageOf(planned, kept, turningPoints(kept), leadOhm, slips)
  const few = sparse(coverage)
  if (few.length > 0) return { faults: few }
  const facts = factsOf(planned, kept, coverage, leadOhm)
  const { causes, findings } = rankedCauses(CAUSES, facts)
  return {
    sections: {
      built: builtSection(facts, measured.box ?? ''),
      comparison: [...facts.judged.values()].map(({ row }) => row),
      causes,
      secondOpinion: facts.secondOpinion,
      impedance: curvesOf(planned, curve, facts.best, leadOhm),
    },
    findings: [
      ...findings,
      ...apply(asBuiltSweepRules, facts),
      ...apply(asBuiltRestRules, { ...facts, causes: causes.length }),
    ],
    assumptions: [...planned.assumptions, ...(facts.best === null ? [] : keptFromPlan(planned))],
    cautions: cautionsOf(CAUSES, facts),
    working: asBuiltWorking(facts),
  }
}
