import type { MeasuredDriver } from '../../schema/driver-measurement.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Fault } from '../outcome.ts'
import { assumed, coneArea, type Estimate, usualMass } from './estimates.ts'
import type { Conversion, Doubt } from './figures.ts'

/** What turns a fit into grams and litres, how doubtful it is, and what of it was filled in. */
export interface Converter {
  conversion: Conversion
  doubts: Doubt[]
  assumptions: Assumption[]
  /** Whether the moving mass is a guess. */
  guessed: boolean
}

const USUAL_MASS_PERCENT = 2
const USUAL_VOLUME_PERCENT = 3
/** A printed cone area is rounded, and the surround counted in or out. Common practice, no source. */
const GIVEN_AREA_FACTOR = 1.03

const logRange = (percent: number): number => Math.log(1 + percent / 100)

/** What is known besides the sweeps; null for what is not there or not needed. */
interface Given {
  driver: MeasuredDriver
  at: string
  area: Estimate | null
  mass: Estimate | null
}

/** Reads mass, volume, area and, where neither mass nor box was used, a range of the moving mass. */
export function converterOf(driver: MeasuredDriver, at: string): Converter | { faults: Fault[] } {
  const { withMass, inBox } = driver
  // Mass and volume together give the area as well.
  const needsArea = withMass === undefined || inBox === undefined
  const area = needsArea ? areaOf(driver) : null
  if (needsArea && area === null)
    return {
      faults: [
        {
          at: `${at}/dimensions/surroundDiameterMm`,
          message:
            'the cone area is needed; give the diameter across the cone from the middle of the surround to its middle opposite, or sdCm2',
        },
      ],
    }
  const guessed = withMass === undefined && inBox === undefined
  const mass = guessed ? massOf(driver, area?.value ?? 0, at) : null
  if (mass !== null && 'faults' in mass) return mass
  const given = { driver, at, area, mass }
  return { conversion: valuesOf(given), doubts: doubtsOf(given), assumptions: assumptionsOf(given), guessed }
}

const valuesOf = ({ driver, area, mass }: Given): Conversion => ({
  massG: driver.withMass?.massG ?? null,
  volumeL: driver.inBox?.volumeL ?? null,
  mmsG: mass?.value ?? null,
  sdCm2: area?.value ?? null,
})

function doubtsOf({ driver: { withMass, inBox }, area, mass }: Given): Doubt[] {
  const ofMass = withMass && logRange(withMass.tolerancePercent ?? USUAL_MASS_PERCENT)
  const ofVolume = inBox && logRange(inBox.tolerancePercent ?? USUAL_VOLUME_PERCENT)
  return [
    ...doubt('massG', 'added-mass', ofMass),
    ...doubt('volumeL', 'test-volume', ofVolume),
    ...doubt('mmsG', 'assumed-mass', mass === null ? undefined : Math.log(mass.factor)),
    ...doubt('sdCm2', 'cone-area', area === null ? undefined : Math.log(area.factor)),
  ]
}

function assumptionsOf({ driver, at, area, mass }: Given): Assumption[] {
  const { withMass, inBox } = driver
  const rows: (Assumption | false)[] = [
    withMass !== undefined &&
      withMass.tolerancePercent === undefined &&
      tolerance(`${at}/withMass/tolerancePercent`, USUAL_MASS_PERCENT, 'letter scales and putty'),
    inBox !== undefined &&
      inBox.tolerancePercent === undefined &&
      tolerance(`${at}/inBox/tolerancePercent`, USUAL_VOLUME_PERCENT, 'rule and calculator'),
    area !== null && driver.sdCm2 === undefined && assumed(`${at}/sdCm2`, 'cm2', area),
    mass !== null && driver.mmsG === undefined && assumed(`${at}/mmsG`, 'g', mass),
  ]
  return rows.filter((row) => row !== false)
}

const doubt = (of: Doubt['of'], source: Doubt['source'], halfRange: number | undefined): Doubt[] =>
  halfRange === undefined ? [] : [{ of, source, halfRange }]

const tolerance = (at: string, value: number, what: string): Assumption => ({
  at,
  value,
  unit: 'percent',
  why: `usual for ${what}; common practice, no source`,
})

function areaOf({ sdCm2, dimensions }: MeasuredDriver): Estimate | null {
  if (sdCm2 !== undefined) return { value: sdCm2, factor: GIVEN_AREA_FACTOR, why: 'given' }
  const diameter = dimensions?.surroundDiameterMm
  return diameter === undefined ? null : coneArea(diameter)
}

function massOf({ mmsG }: MeasuredDriver, sdCm2: number, at: string): Estimate | { faults: Fault[] } {
  if (mmsG === undefined) return usualMass(sdCm2)
  const { fromG, toG } = mmsG
  if (fromG > toG) return { faults: [{ at: `${at}/mmsG`, message: 'fromG must not be above toG' }] }
  // Middle and reach on a logarithmic scale: half as much is as likely as twice as much.
  return { value: Math.sqrt(fromG * toG), factor: Math.sqrt(toG / fromG), why: 'middle of the range given' }
}
