import type { Assumption } from '../../schema/frame.ts'
import type { PowerBudgetRequest, PowerBudgetSections } from '../../schema/power-budget.ts'
import { driverPowerRules, powerRules } from '../findings/power.ts'
import type { DriverHeat, PowerFacts } from '../findings/power-facts.ts'
import { reservoirRules } from '../findings/reservoir.ts'
import { apply, cautionsOf } from '../findings/rule.ts'
import { signalRules } from '../findings/signal.ts'
import { socketRules } from '../findings/socket.ts'
import { supplyRules } from '../findings/supply.ts'
import { lowestOfRatedOhm } from '../load/rated-impedance.ts'
import type { Outcome, Refusal } from '../outcome.ts'
import { assumedWhen, type BudgetInput, budgetInput, type KnownOfBuild } from './budget-input.ts'
import { NEGLIGIBLE_OHM } from './cable.ts'
import { hottestVolume } from './full-volume.ts'
import { CONSUMER_LINE_V } from './gain.ts'
import { gainAssumptions, gainSection, inputResistanceOhmOf } from './gain-section.ts'
import { indicatorSection } from './indicator-section.ts'
import { loudnessSection } from './loudness-section.ts'
import { powerCautions } from './power-cautions.ts'
import { powerWorking } from './power-working.ts'
import { reservoirSection, reservoirUfOf, USUAL_ESR_OHM } from './reservoir-section.ts'
import {
  sharedGroundError,
  supplyGroundOhm,
  USUAL_SHIELD_OHM,
  USUAL_SUPPLY_GROUND_OHM,
} from './shared-ground.ts'
import { powerSection, supplySection } from './supply-section.ts'

const RULES = [...powerRules, ...supplyRules, ...socketRules, ...reservoirRules, ...signalRules]

/**
 * What a chain of source, amplifier and supply can give and what it draws.
 * @param request  amplifier, load on one channel, supply, signal, programme
 * @param known    what other calculations know of the same build; it goes before the request
 */
export function powerBudget(
  request: PowerBudgetRequest,
  known: KnownOfBuild = {},
): Outcome<PowerBudgetSections> | Refusal {
  const filled = budgetInput(request, known)
  if ('faults' in filled) return filled
  const { input } = filled
  const build = withRequest(known, request)
  const sections = sectionsOf(input, request, build)
  const facts = factsOf(input, request, build, sections)
  return {
    sections,
    findings: [
      ...apply(RULES, facts),
      ...heatsOf(input, build, sections.gain).flatMap((heat) => apply(driverPowerRules, heat)),
    ],
    assumptions: [
      ...filled.assumptions,
      ...gainAssumptions(request.amplifier, request.signal),
      ...sharedGroundAssumptions(request, input.cableOhm),
      ...assumedWhen(
        sections.reservoir !== null && request.supply.reservoirEsrOhm === undefined,
        '/supply/reservoirEsrOhm',
        USUAL_ESR_OHM,
        'ohm',
        'resistance of the reservoir itself, usual for an electrolytic capacitor',
      ),
      ...assumedWhen(
        sections.loudness !== null && request.wants?.listeningDistanceM === undefined,
        '/wants/listeningDistanceM',
        1,
        'm',
        'the distance that levels are stated at',
      ),
      ...assumedWhen(
        sections.loudness === null && request.wants?.loudnessDb !== undefined,
        '/sensitivity1WDb',
        'unknown',
        '',
        'without it the loudness that is wanted cannot be judged',
      ),
    ],
    cautions: [...powerCautions(facts), ...cautionsOf(RULES, facts)],
    working: powerWorking(input, sections, request),
  }
}

/** What was filled in to reckon the hum of a shared supply. */
function sharedGroundAssumptions({ supply, signal }: PowerBudgetRequest, cableOhm: number): Assumption[] {
  if (supply.sharedWithSource !== true) return []
  return [
    ...assumedWhen(
      cableOhm <= NEGLIGIBLE_OHM,
      '/supply/cable',
      USUAL_SUPPLY_GROUND_OHM,
      'ohm',
      'a supply ground without any resistance does not exist; this is taken for the hum',
    ),
    ...assumedWhen(
      signal?.shieldResistanceOhm === undefined,
      '/signal/shieldResistanceOhm',
      USUAL_SHIELD_OHM,
      'ohm',
      'usual shield of an audio lead',
    ),
    ...assumedWhen(
      signal === undefined,
      '/signal/sourceLevelV',
      CONSUMER_LINE_V,
      'V',
      'consumer line level, -10 dBV',
    ),
  ]
}

function withRequest(
  known: KnownOfBuild,
  { driverRatedPowerW, driverPowerShare = 1, sensitivity1WDb }: PowerBudgetRequest,
): KnownOfBuild {
  const given = { at: '/driverRatedPowerW', id: null, ratedPowerW: driverRatedPowerW }
  return {
    drivers: [{ ...given, powerShare: driverPowerShare }],
    ...(sensitivity1WDb === undefined ? {} : { sensitivity1W1mDb: sensitivity1WDb }),
    ...known,
  }
}

/** What each driver of which the rating is known gets at full volume, from a full pack where there is one. */
function heatsOf(
  input: BudgetInput,
  { drivers = [] }: KnownOfBuild,
  gain: PowerBudgetSections['gain'],
): DriverHeat[] {
  const { peakW, programmeW } = hottestVolume(input, gain?.overdriveDb ?? null)
  const isFullPack = input.source.highestVoltageV > input.source.voltageV
  return drivers.flatMap(({ at, id, ratedPowerW, powerShare }) =>
    ratedPowerW === undefined
      ? []
      : [
          {
            at,
            id,
            ratedPowerW,
            sineW: peakW * powerShare,
            programmeW: programmeW * powerShare,
            isFullPack,
          },
        ],
  )
}

function sectionsOf(
  input: BudgetInput,
  { supply, signal, wants }: PowerBudgetRequest,
  build: KnownOfBuild,
): PowerBudgetSections {
  const gain = gainSection(input, signal)
  const power = powerSection(input, build, gain?.overdriveDb ?? null)
  const supplied = supplySection(input, supply, power)
  const reservoir = reservoirSection(input, supply, supplied)
  return {
    power,
    supply: reservoir === null ? supplied : behindReservoir(supplied, reservoir, input),
    reservoir,
    indicator: indicatorSection(supply, input.source),
    gain,
    loudness: loudnessSection(input, power, wants, build.sensitivity1W1mDb),
  }
}

/** A reservoir holds the board up in the peak of a bass note. */
function behindReservoir(
  supply: PowerBudgetSections['supply'],
  { lowestBurstV }: NonNullable<PowerBudgetSections['reservoir']>,
  { boardMinimumV }: BudgetInput,
): PowerBudgetSections['supply'] {
  return { ...supply, brownOutMarginV: lowestBurstV === null ? null : lowestBurstV - boardMinimumV }
}

function factsOf(
  input: BudgetInput,
  request: PowerBudgetRequest,
  build: KnownOfBuild,
  sections: PowerBudgetSections,
): PowerFacts {
  const { supply, signal, wants } = request
  return {
    sections,
    isLoadJudged: build.minimumOhm !== undefined,
    loadAt: request.minimumOhm === undefined ? '/loadOhm' : '/minimumOhm',
    blocksDirectCurrent: build.blocksDirectCurrent ?? false,
    allowedMinimumOhm: lowestOfRatedOhm(input.amplifier.minimumLoadOhm),
    sineDrawW: sections.supply.sineA * input.source.voltageV,
    supply,
    reservoirUf: reservoirUfOf(supply),
    signal,
    inputResistanceOhm: inputResistanceOhmOf(input.amplifier),
    groundError:
      supply.sharedWithSource === true && sections.supply.programmeA > 0
        ? sharedGroundError(
            sections.supply.programmeA,
            supplyGroundOhm(input.cableOhm),
            signal?.shieldResistanceOhm ?? USUAL_SHIELD_OHM,
            signal?.sourceLevelV ?? CONSUMER_LINE_V,
          )
        : null,
    lowestWantedHz: wants?.lowestHz,
    // Not in front: to add members to a copied object takes as long as all the rest of the calculation.
    ...input,
  }
}
