import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import type { Formula } from '../working.ts'
import type { BudgetInput } from './budget-input.ts'
import { CREST_DB } from './supply-current.ts'

/** The printed working of the power budget. */
export function powerWorking(
  { amplifier, source, cableOhm, loadOhm, programme, indicatorMa }: BudgetInput,
  { power, supply, gain }: PowerBudgetSections,
): Formula[] {
  const swing = amplifier.output === 'bridge' ? 1 : 0.5
  return [
    {
      quantity: 'clean power a channel',
      formula: '(s * M * Vs * R / (R + Rout))^2 / (2 * R)',
      with: {
        s: swing,
        M: amplifier.largestDuty,
        Vs: source.voltageV,
        R: loadOhm,
        Rout: amplifier.outputResistanceOhm,
      },
      unit: 'W',
      source: 'Widder & Brugora, EE Times, 18 June 2008',
    },
    {
      quantity: 'average supply current on the programme',
      formula: 'n * P / 10^((crest - 20 * log10(sqrt(2))) / 10) / (eta * Vs) + Iq',
      with: {
        n: amplifier.channels,
        P: power.cleanPowerW,
        crest: CREST_DB[programme],
        eta: amplifier.efficiency,
        Vs: source.voltageV,
        Iq: (amplifier.quiescentCurrentMa + indicatorMa) / 1000,
      },
      unit: 'A',
      source: 'energy balance with the crest factor of the programme',
    },
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
    ...(gain === null
      ? []
      : [
          {
            quantity: 'level of the source over the clip point, knob open',
            formula: '20 * log10(Vout / (s * M * Vs / sqrt(2)))',
            with: { Vout: gain.outputV, s: swing, M: amplifier.largestDuty, Vs: source.voltageV },
            unit: 'dB',
            source: 'RMS of a sine that touches the supply; derived',
          },
        ]),
  ]
}
