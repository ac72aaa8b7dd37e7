import type { Signal, Supply } from '../../schema/power.ts'
import type { PowerBudgetRequest, PowerBudgetSections } from '../../schema/power-budget.ts'
import type { Formula } from '../working.ts'
import { SWING } from './amplifier.ts'
import type { BudgetInput } from './budget-input.ts'
import { cableOhmPerKm, contactsOhm } from './cable.ts'
import { couplingOhmOf } from './gain-section.ts'
import { forwardVOf } from './indicator.ts'
import { CREST_DB } from './supply-current.ts'

/** The printed working of the power budget. */
export function powerWorking(
  input: BudgetInput,
  sections: PowerBudgetSections,
  request: PowerBudgetRequest,
): Formula[] {
  return [
    ...amplifierWorking(input, sections),
    ...leadWorking(input, sections, request.supply),
    ...indicatorWorking(input, request.supply),
    ...signalWorking(input, sections, request.signal),
  ]
}

function amplifierWorking(
  { amplifier, source, loadOhm, lowestNoteHz, programme, indicatorMa }: BudgetInput,
  { power }: PowerBudgetSections,
): Formula[] {
  return [
    {
      quantity: 'clean power a channel',
      formula: '(s * M * Vs * R / (R + Rout))^2 / (2 * R)',
      with: {
        s: SWING[amplifier.output],
        M: amplifier.largestDuty,
        Vs: source.voltageV,
        R: loadOhm,
        Rout: amplifier.outputResistanceOhm,
      },
      unit: 'W',
      source: 'Widder & Brugora, EE Times, 18 June 2008',
    },
    ...(power.outputCapacitorUf === null
      ? []
      : [
          {
            quantity: 'capacitor at a single-ended output',
            formula: '1e6 / (2 * pi * R * f)',
            with: { R: loadOhm, f: lowestNoteHz },
            unit: 'uF',
            source: 'first-order high-pass, 3 dB down at the lowest note',
          },
        ]),
    {
      quantity: 'average supply current on the programme',
      formula: 'n * P / 10^((crest - 20 * log10(sqrt(2))) / 10) / (eta * Vs) + Iq',
      with: {
        n: amplifier.channels,
        P: power.reachedPowerW,
        crest: CREST_DB[programme],
        eta: amplifier.efficiency,
        Vs: source.voltageV,
        Iq: (amplifier.quiescentCurrentMa + indicatorMa) / 1000,
      },
      unit: 'A',
      source: 'energy balance with the crest factor of the programme',
    },
  ]
}

function leadWorking(
  { source, cableOhm }: BudgetInput,
  { supply }: PowerBudgetSections,
  { cable }: Supply,
): Formula[] {
  return [
    ...(cable === undefined
      ? []
      : [
          {
            quantity: 'supply lead, out and back',
            formula: '2 * L * r / 1000 + Rk',
            with: { L: cable.lengthM, r: cableOhmPerKm(cable), Rk: contactsOhm(cable) },
            unit: 'ohm',
            source: 'r in ohm/km by IEC 60228, or copper of that gauge (ASTM B258, from memory)',
          },
        ]),
    ...(supply.boardVoltageV === null
      ? []
      : [
          {
            quantity: 'voltage left at the board on the programme',
            formula: '(Vs + sqrt(Vs^2 - 4 * Rlead * I * Vs)) / 2',
            with: { Vs: source.voltageV, Rlead: cableOhm, I: supply.programmeA },
            unit: 'V',
            source: 'constant power through a resistance; derived',
          },
        ]),
  ]
}

function indicatorWorking({ source, indicatorMa }: BudgetInput, { indicator }: Supply): Formula[] {
  if (indicator === undefined) return []
  return [
    {
      quantity: 'exact resistor of the indicator',
      formula: '(Vs - Vf) / (I / 1000)',
      with: { Vs: source.voltageV, Vf: forwardVOf(indicator), I: indicatorMa },
      unit: 'ohm',
      source: "Ohm's law; then the next value of IEC 60063 not below",
    },
  ]
}

function signalWorking(
  { amplifier, source }: BudgetInput,
  { gain }: PowerBudgetSections,
  signal: Signal | undefined,
): Formula[] {
  if (gain === null) return []
  return [
    {
      quantity: 'level of the source over the clip point, knob open',
      formula: '20 * log10(Vout / (s * M * Vs / sqrt(2)))',
      with: {
        Vout: gain.outputV,
        s: SWING[amplifier.output],
        M: amplifier.largestDuty,
        Vs: source.voltageV,
      },
      unit: 'dB',
      source: 'RMS of a sine that touches the supply; derived',
    },
    ...(gain.couplingCornerHz === null || signal?.inputCapacitorUf === undefined
      ? []
      : [
          {
            quantity: 'corner of the coupling capacitor, knob open',
            formula: '1 / (2 * pi * R * C * 1e-6)',
            with: { R: couplingOhmOf(amplifier, signal), C: signal.inputCapacitorUf },
            unit: 'Hz',
            source: 'first-order high-pass',
          },
        ]),
  ]
}
