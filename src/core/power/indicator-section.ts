import type { Supply } from '../../schema/power.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { FORWARD_V, indicatorCurrentMa, indicatorDissipationMw, indicatorResistor } from './indicator.ts'

/** Usual current of an indicator, mA, and its diameter, mm. Common practice, no source. */
const USUAL_MA = 3
const USUAL_DIAMETER_MM = 3

/** Resistor and hole of the power indicator; null without one. */
export function indicatorSection({ indicator }: Supply, supplyV: number): PowerBudgetSections['indicator'] {
  if (indicator === undefined) return null
  const forwardV = indicator.forwardV ?? FORWARD_V[indicator.colour ?? 'red']
  const resistor = indicatorResistor(supplyV, forwardV, indicator.currentMa ?? USUAL_MA)
  const holeMm = indicator.diameterMm ?? USUAL_DIAMETER_MM
  if (resistor === null)
    return { resistorOhm: null, e24Ohm: null, currentMa: null, dissipationMw: null, holeMm }
  return {
    resistorOhm: resistor.e12Ohm,
    e24Ohm: resistor.e24Ohm,
    currentMa: indicatorCurrentMa(supplyV, forwardV, resistor.e12Ohm),
    dissipationMw: indicatorDissipationMw(supplyV, forwardV, resistor.e12Ohm),
    holeMm,
  }
}
