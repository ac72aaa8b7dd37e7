import type { Supply } from '../../schema/power.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import {
  brightnessOf,
  forwardVOf,
  indicatorCurrentMa,
  indicatorDissipationMw,
  indicatorResistor,
  USUAL_DIAMETER_MM,
  USUAL_INDICATOR_MA,
} from './indicator.ts'
import { resistorRatingW } from './resistor-rating.ts'
import type { Source } from './source-of.ts'

/** Resistor and hole of the power indicator; null without one. */
export function indicatorSection(
  { indicator }: Supply,
  { voltageV: supplyV, highestVoltageV }: Source,
): PowerBudgetSections['indicator'] {
  if (indicator === undefined) return null
  const forwardV = forwardVOf(indicator)
  const resistor = indicatorResistor(supplyV, forwardV, indicator.currentMa ?? USUAL_INDICATOR_MA)
  const holeMm = indicator.diameterMm ?? USUAL_DIAMETER_MM
  if (resistor === null)
    return {
      resistorOhm: null,
      e24Ohm: null,
      currentMa: null,
      dissipationMw: null,
      resistorRatingW: null,
      brightness: 'dark',
      holeMm,
    }
  const currentMa = indicatorCurrentMa(supplyV, forwardV, resistor.e12Ohm)
  const dissipationMw = indicatorDissipationMw(highestVoltageV, forwardV, resistor.e12Ohm)
  return {
    resistorOhm: resistor.e12Ohm,
    e24Ohm: resistor.e24Ohm,
    currentMa,
    dissipationMw,
    resistorRatingW: resistorRatingW(dissipationMw * 1e-3),
    brightness: brightnessOf(currentMa),
    holeMm,
  }
}
