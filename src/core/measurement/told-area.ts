import type { MeasuredDriver } from '../../schema/driver-measurement.ts'
import { coneArea } from './estimates.ts'
import type { Measured } from './measure-driver.ts'

/** More than rule, scale and box are off together. Common practice, no source. */
const APART_PERCENT = 10

/** The cone area that was told, by data or by rule, cm²; undefined without either. */
export function toldAreaCm2({ sdCm2, dimensions }: MeasuredDriver): number | undefined {
  const diameter = dimensions?.surroundDiameterMm
  return sdCm2 ?? (diameter === undefined ? undefined : coneArea(diameter).value)
}

const found = ({ result }: Measured) => result.figures.find(({ figure }) => figure === 'sdCm2')

/**
 * How far the cone that an added mass and a test box make together is from the told one, percent of the ratio's
 * logarithm; 0 where only one of them was used, or nothing was told. Vas = ρ c² Sd² Cms, Small 1972.
 */
export function areaApartPercent(facts: Measured): number {
  const { driver } = facts
  const told = toldAreaCm2(driver)
  const both = driver.withMass !== undefined && driver.inBox !== undefined
  const area = found(facts)
  return told === undefined || !both || area === undefined ? 0 : 100 * Math.abs(Math.log(area.value / told))
}

/** How far they may be apart, percent: the usual, and what the readings leave open. */
export const areaApartLimitPercent = (facts: Measured): number =>
  APART_PERCENT + (found(facts)?.uncertaintyPercent ?? 0)
