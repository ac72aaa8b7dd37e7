import type { Assumption } from '../../schema/frame.ts'
import type { Programme } from '../../schema/power.ts'
import type { PowerBudgetRequest } from '../../schema/power-budget.ts'
import { lowestOfRatedOhm } from '../load/rated-impedance.ts'
import { isRefusal, type Refusal } from '../outcome.ts'
import { type CompleteAmplifier, completeAmplifier } from './amplifier-defaults.ts'
import { amplifierFaults, supplyFaults } from './contradictions.ts'
import { forwardVOf, USUAL_DIAMETER_MM, USUAL_INDICATOR_MA } from './indicator.ts'
import { USUAL_LOWEST_HZ } from './output-capacitor.ts'
import { type Source, sourceOf } from './source-of.ts'
import { supplyLead } from './supply-lead.ts'

/** A kind of driver, how strong it is and what it gets. */
export interface DriverOfBuild {
  /** Where its rated power is, or would be, written. */
  at: string
  /** null when the request names no driver. */
  id: string | null
  ratedPowerW: number | undefined
  /** What one such driver takes over the power into the rated load; above 1 where its impedance is lower. */
  powerShare: number
}

/** What other calculations know of the same build better than the request. */
export interface KnownOfBuild {
  ratedOhm?: number
  /** Lowest impedance, already held against the amplifier by the rules about the load. */
  minimumOhm?: number
  /** Whether a capacitor in the wiring keeps direct current from every driver. */
  blocksDirectCurrent?: boolean
  /** Level of one box with 1 W into its load at 1 m, dB. */
  sensitivity1W1mDb?: number
  drivers?: readonly DriverOfBuild[]
}

/** Everything the power budget starts from, nothing left open. */
export interface BudgetInput {
  amplifier: CompleteAmplifier
  source: Source
  cableOhm: number
  /** What the board works down to, V: its own limit, else the share of its voltage that boards usually stand. */
  boardMinimumV: number
  loadOhm: number
  minimumOhm: number
  programme: Programme
  /** Lowest note that shall get through a capacitor at the output, Hz. */
  lowestNoteHz: number
  /** Current of the indicator, mA, as wanted; 0 without one. */
  indicatorMa: number
  /** Current below which a power bank switches itself off, mA; null for other sources. */
  cutoffMa: number | null
}

/** Share of its voltage that a board usually still works on: 4 V of 5. Common practice, no source. */
const USUAL_MINIMUM_SHARE = 0.8

/** Usual cut-off of a power bank, mA. Common practice, no source. */
const USUAL_CUTOFF_MA = 50

/** Fills the request up, with one assumption for each value that was not given. */
export function budgetInput(
  request: PowerBudgetRequest,
  known: KnownOfBuild,
): { input: BudgetInput; assumptions: Assumption[] } | Refusal {
  const { amplifier, assumptions } = completeAmplifier(request.amplifier)
  const resolved = soundSource(request)
  if (isRefusal(resolved)) return resolved
  const lead = supplyLead(request.supply)
  const loadOhm = known.ratedOhm ?? request.loadOhm
  const rated = loadOhm ?? amplifier.minimumLoadOhm
  const minimumOhm = known.minimumOhm ?? request.minimumOhm
  const { indicator } = request.supply
  return {
    input: {
      amplifier,
      source: resolved.source,
      cableOhm: lead.cableOhm,
      boardMinimumV: amplifier.minimumSupplyV ?? USUAL_MINIMUM_SHARE * resolved.source.voltageV,
      loadOhm: rated,
      minimumOhm: minimumOhm ?? lowestOfRatedOhm(rated),
      programme: request.programme ?? 'music',
      lowestNoteHz: request.wants?.lowestHz ?? USUAL_LOWEST_HZ,
      indicatorMa: indicator === undefined ? 0 : (indicator.currentMa ?? USUAL_INDICATOR_MA),
      cutoffMa: cutoffMaOf(request.supply),
    },
    assumptions: [
      ...assumptions,
      ...resolved.assumptions,
      ...lead.assumptions,
      ...assumedWhen(
        amplifier.minimumSupplyV === undefined,
        '/amplifier/minimumSupplyV',
        USUAL_MINIMUM_SHARE * resolved.source.voltageV,
        'V',
        'boards usually work down to 80 % of their voltage, common practice',
      ),
      ...assumedWhen(
        loadOhm === undefined,
        '/loadOhm',
        rated,
        'ohm',
        'the lowest rated load of the amplifier',
      ),
      ...assumedWhen(
        minimumOhm === undefined,
        '/minimumOhm',
        lowestOfRatedOhm(rated),
        'ohm',
        'a load may dip to 80 % of its rated impedance',
      ),
      ...assumedWhen(request.programme === undefined, '/programme', 'music', '', 'usual programme'),
      ...lowestNoteAssumption(amplifier, request.wants),
      ...indicatorAssumptions(indicator),
      ...cutoffAssumption(request.supply),
    ],
  }
}

/** The source of a request in which nothing contradicts, else everything that does. */
function soundSource({ amplifier, supply }: PowerBudgetRequest): ReturnType<typeof sourceOf> {
  const resolved = sourceOf(supply, amplifier)
  const faults = [
    ...amplifierFaults(amplifier),
    ...supplyFaults(supply),
    ...(isRefusal(resolved) ? resolved.faults : []),
  ]
  return faults.length > 0 ? { faults } : resolved
}

/** One assumption, when the value was indeed not given. */
export const assumedWhen = (
  notGiven: boolean,
  at: string,
  value: number | string,
  unit: string,
  why: string,
): Assumption[] => (notGiven ? [{ at, value, unit, why }] : [])

const cutoffMaOf = ({ kind, cutoffCurrentMa }: PowerBudgetRequest['supply']): number | null =>
  kind === 'power-bank' ? (cutoffCurrentMa ?? USUAL_CUTOFF_MA) : null

const cutoffAssumption = ({ kind, cutoffCurrentMa }: PowerBudgetRequest['supply']): Assumption[] =>
  assumedWhen(
    kind === 'power-bank' && cutoffCurrentMa === undefined,
    '/supply/cutoffCurrentMa',
    USUAL_CUTOFF_MA,
    'mA',
    'power banks switch off below 50 to 100 mA, common practice',
  )

const lowestNoteAssumption = (
  { output }: CompleteAmplifier,
  wants: PowerBudgetRequest['wants'],
): Assumption[] =>
  assumedWhen(
    output === 'single-ended' && wants?.lowestHz === undefined,
    '/wants/lowestHz',
    USUAL_LOWEST_HZ,
    'Hz',
    'lowest note that the capacitor at the output lets through',
  )

function indicatorAssumptions(indicator: PowerBudgetRequest['supply']['indicator']): Assumption[] {
  if (indicator === undefined) return []
  const colour = indicator.colour ?? 'red'
  const at = '/supply/indicator'
  return [
    ...assumedWhen(indicator.colour === undefined, `${at}/colour`, 'red', '', 'usual indicator'),
    ...assumedWhen(
      indicator.currentMa === undefined,
      `${at}/currentMa`,
      USUAL_INDICATOR_MA,
      'mA',
      'bright enough',
    ),
    ...assumedWhen(
      indicator.forwardV === undefined,
      `${at}/forwardV`,
      forwardVOf(indicator),
      'V',
      `usual for ${colour}`,
    ),
    ...assumedWhen(
      indicator.diameterMm === undefined,
      `${at}/diameterMm`,
      USUAL_DIAMETER_MM,
      'mm',
      'usual lamp',
    ),
  ]
}
