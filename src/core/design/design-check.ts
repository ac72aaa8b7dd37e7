import type { CutListSections } from '../../schema/cut-list.ts'
import type { Design } from '../../schema/design.ts'
import type { DesignCheckSections } from '../../schema/design-check.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { PowerBudgetRequest, PowerBudgetSections } from '../../schema/power-budget.ts'
import { analyse } from '../box/analyse.ts'
import { type Assembled, assemble, type BoxInput } from '../box/assemble.ts'
import { impedanceInBox } from '../box/driver-impedance.ts'
import { reachMm } from '../box/elbows.ts'
import type { Loudspeaker } from '../box/loudspeaker.ts'
import { midBandSplDb } from '../box/system-figures.ts'
import { designRules, type WholeDesignFacts } from '../findings/design.ts'
import { apply } from '../findings/rule.ts'
import { judgingGrid } from '../load/judging-grid.ts'
import { loadCurve, loadImpedance } from '../load/load-impedance.ts'
import { eachOnce, isRefusal, type Outcome, type Refusal } from '../outcome.ts'
import { powerBudget } from '../power/power-budget.ts'
import { boxInput } from './box-input.ts'
import { type ChannelPlan, channelPlan } from './channel-plan.ts'
import { cutListOf, hasSides } from './cut-list-of.ts'
import { fittingProportions } from './fitting-proportions.ts'
import { guessedFindings } from './guessed-drivers.ts'
import { LOAD_GRID } from './load-in-box.ts'
import { materialsOf } from './materials.ts'
import { ownImpedances } from './other-drivers.ts'
import { readingsOf } from './readings.ts'

function loadOf(design: Design, plan: ChannelPlan, speaker: Loudspeaker) {
  const others = design.drivers.filter((driver) => driver !== plan.main)
  const impedancesOn = (grid: Float64Array) =>
    ownImpedances(others, grid).set(plan.main.id, impedanceInBox(speaker, grid))
  const request = {
    drivers: design.drivers,
    wiring: plan.wiring,
    amplifier: { ...design.amplifier, channels: plan.channels },
  }
  const judged = judgingGrid(LOAD_GRID, plan.wiring)
  const load = loadImpedance(request, impedancesOn(judged), judged, plan.channelsPerBox)
  if (judged === LOAD_GRID || isRefusal(load)) return load
  const curve = loadCurve(request, impedancesOn(LOAD_GRID), LOAD_GRID)
  return isRefusal(curve) ? curve : { ...load, sections: { ...load.sections, loadCurve: curve } }
}

function budgetRequest(design: Design, channels: number): PowerBudgetRequest {
  const { amplifier, supply, signal, programme, wants } = design
  return {
    amplifier: { ...amplifier, channels },
    supply,
    ...(signal && { signal }),
    ...(programme && { programme }),
    ...(wants && { wants }),
  }
}

/** Level of one channel with 1 W into its rated load at 1 m: the voltage for it, through the circuit's mid-band. */
function sensitivityDb(
  speaker: Loudspeaker,
  ratedOhm: number,
  channelsPerBox: number,
  space: Design['space'],
): number {
  // Above the step of its front panel a box radiates as into half space.
  const step = space === 'baffle' ? 20 * Math.log10(2) : 0
  return midBandSplDb(speaker, Math.sqrt(ratedOhm)) + step - 20 * Math.log10(channelsPerBox)
}

// Load, power and cut list fill in some of the same fields, by the same rules.
const onceEach = (assumptions: readonly Assumption[]): Assumption[] =>
  assumptions.filter(
    (row, i) => assumptions.findIndex((other) => other.at === row.at && other.unit === row.unit) === i,
  )

/** Every reason why a design cannot be calculated, from all its parts. */
function refusalOf(parts: readonly object[]): Refusal {
  return { faults: eachOnce(parts.flatMap((part) => (isRefusal(part) ? part.faults : []))) }
}

interface Electrics {
  load: Outcome<LoadImpedanceSections>
  power: Outcome<PowerBudgetSections>
}

function electricsOf(design: Design, plan: ChannelPlan, speaker: Loudspeaker): Electrics | Refusal {
  const load = loadOf(design, plan, speaker)
  const request = budgetRequest(design, plan.channels)
  if (isRefusal(load)) return refusalOf([load, powerBudget(request)])
  const { shares } = load.sections
  const { ratedOhm, minimumOhm, meterOhm } = load.sections.load
  const power = powerBudget(request, {
    ratedOhm,
    minimumOhm,
    sensitivity1W1mDb: sensitivityDb(speaker, ratedOhm, plan.channelsPerBox, design.space),
    blocksDirectCurrent: meterOhm === null,
    drivers: design.drivers.map(({ id, parameters }, i) => ({
      at: `/drivers/${i}/parameters/ratedPowerW`,
      id,
      ratedPowerW: parameters.ratedPowerW,
      // Of the clean power, which is that into the rated load: behind a filter the load is another in every band.
      powerShare:
        ratedOhm * Math.max(0, ...shares.flatMap((row) => (row.driver === id ? [row.powerAtVoltW] : []))),
    })),
  })
  return isRefusal(power) ? power : { load, power }
}

/** How deep the port goes, which is what has to fit: its length, unless it turns away behind the panel; null without one. */
function portReachMm({ port, box }: BoxInput, { enclosure }: Assembled): number | null {
  const lengthMm = enclosure.port?.lengthMm ?? null
  return port === undefined || lengthMm === null ? null : reachMm(port, lengthMm, box.panelThicknessMm ?? 0)
}

/** Distance of the two drivers next to each other on the front, as the cut list placed them; null with one driver. */
function spacingMm({ panels }: CutListSections): number | null {
  const holes =
    panels.find((panel) => panel.id === 'front')?.holes.filter((hole) => hole.kind === 'driver') ?? []
  const gaps = holes.slice(1).map((hole, i) => Math.hypot(hole.xMm - holes[i]!.xMm, hole.yMm - holes[i]!.yMm))
  return gaps.length === 0 ? null : Math.min(...gaps)
}

/**
 * `/v1/design-check`: one design document in, every section and one verdict out.
 * Refuses, with every fault of every part at once, what cannot be calculated; a design that cannot work is a finding.
 */
export function designCheck(design: Design): Outcome<DesignCheckSections> | Refusal {
  const plan = channelPlan(design)
  const input = boxInput(design, isRefusal(plan) ? null : plan)
  const assembled = assemble(input)
  const reachesMm = isRefusal(assembled) ? null : portReachMm(input, assembled)
  const cut = cutListOf(design, reachesMm)
  const electrics =
    isRefusal(plan) || isRefusal(assembled)
      ? refusalOf([powerBudget(budgetRequest(design, design.amplifier.channels ?? 1))])
      : electricsOf(design, plan, assembled.speaker)
  if (isRefusal(plan) || isRefusal(assembled) || isRefusal(electrics) || isRefusal(cut))
    return refusalOf([plan, assembled, electrics, cut])
  const { load, power } = electrics
  const box = analyse(input, assembled, {
    voltageV: power.sections.power.cleanVoltageV,
    drive: null,
    lowestHz: design.wants?.lowestHz ?? null,
    curve: undefined,
    tubes: [],
    wantedQtc: null,
    spacingMm: spacingMm(cut.sections),
    fitJudged: cut.sections.panels.length > 0,
    powerJudged: true,
  })
  const facts = { design, plan, ...assembled, load: load.sections, power: power.sections, cut: cut.sections }
  const parts = [load, power, box, cut]
  const whole: WholeDesignFacts = {
    hasSides: hasSides(design),
    proportions: hasSides(design) ? null : fittingProportions(design, reachesMm),
    ownBacks: design.drivers.flatMap((driver) => (driver === plan.main ? [] : [driver.id])),
  }
  return {
    sections: {
      ...box.sections,
      ...load.sections,
      ...power.sections,
      ...cut.sections,
      materials: materialsOf(facts),
      readings: readingsOf(facts),
    },
    findings: [
      ...parts.flatMap((part) => part.findings),
      ...guessedFindings(design, plan, assembled.speaker),
      ...apply(designRules, whole),
    ],
    assumptions: onceEach([...plan.assumptions, ...parts.flatMap((part) => part.assumptions)]),
    cautions: parts.flatMap((part) => part.cautions),
    working: parts.flatMap((part) => part.working),
  }
}
