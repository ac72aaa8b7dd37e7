import type { DriverParameters } from '../../schema/driver.ts'
import { coneArea, type Estimate, usualMass, usualResonance } from '../measurement/estimates.ts'
import { USUAL_QMS } from './implied.ts'
import { spread } from './relations.ts'

/** One guessed figure with the ends between which most drivers of that size lie. */
export interface GuessedRange {
  figure: string
  value: number
  from: number
  to: number
  unit: string
}

/** A driver that nobody measured, as its size and a meter let one guess it. */
export interface DriverGuess {
  parameters: DriverParameters
  ranges: GuessedRange[]
  why: string
}

/** What is known of such a driver. */
export interface KnownOfDriver {
  /** Between the middles of the surround, mm. */
  surroundDiameterMm?: number | undefined
  sdCm2?: number | undefined
  meterOhm?: number | undefined
  ratedImpedanceOhm?: number | undefined
}

/** Smaller and larger cones than these are no small full-range drivers and woofers. Common practice, no source. */
const CONES_MM = [20, 400] as const
/** A meter reads about this share of the rated impedance, and mostly between these. Common practice, no source. */
const RE_SHARE = { usual: 0.85, least: 0.7, most: 0.92 }
/** Read by a meter: its scale and its leads. Common practice, no source. */
const METER_FACTOR = 1.05
const USUAL_RE_OHM = 6

/** How far most drivers lie from the guess either way, as a factor. Common practice, no source. */
export const GUESS_FACTOR = {
  fsHz: 1.5,
  vasL: 2.5,
  qts: 1.9,
  qes: 2.2,
  qms: 1.7,
  xmaxMm: 1.8,
  leMh: 2.5,
} as const
/** Electrical Q of a small magnet: total Qs of 0.35 to 1.2 are usual in salvaged equipment. Common practice, no source. */
const USUAL_QES = 0.8
/** Clean travel over the diameter of the cone, and inductance over resistance and square of it. Common practice, no source. */
const XMAX_OVER_CONE = 0.025
const LE_MH_PER_OHM_MM2 = 6e-6

/** Diameter of a round cone of an area, mm. */
const diameterMm = (sdCm2: number): number => 10 * Math.sqrt((4 / Math.PI) * sdCm2)

function resistanceOf({ meterOhm, ratedImpedanceOhm }: KnownOfDriver): GuessedRange {
  const row = (value: number, from: number, to: number) => ({ figure: 'reOhm', value, from, to, unit: 'ohm' })
  if (meterOhm !== undefined) return row(meterOhm, meterOhm / METER_FACTOR, meterOhm * METER_FACTOR)
  if (ratedImpedanceOhm === undefined) return row(USUAL_RE_OHM, USUAL_RE_OHM / 2, 2 * USUAL_RE_OHM)
  const { usual, least, most } = RE_SHARE
  return row(usual * ratedImpedanceOhm, least * ratedImpedanceOhm, most * ratedImpedanceOhm)
}

function areaOf({ sdCm2, surroundDiameterMm }: KnownOfDriver): Estimate | null {
  if (sdCm2 !== undefined) return { value: sdCm2, factor: 1, why: 'as given' }
  return surroundDiameterMm === undefined ? null : coneArea(surroundDiameterMm)
}

const rangeOf = (figure: keyof typeof GUESS_FACTOR, value: number, unit: string): GuessedRange => ({
  figure,
  value,
  from: value / GUESS_FACTOR[figure],
  to: value * GUESS_FACTOR[figure],
  unit,
})

/**
 * Parameters of a small full-range driver or woofer of salvaged equipment from its size and its resistance; null without
 * a size, or with a cone beyond 20 to 400 mm. Consistent by definition: Vas = ρc² Sd² Cms with fs and the moving mass.
 * Sources: Sd = π d²/4 exact; the minimum impedance is not below 80 % of the rated one, IEC 60268-5, from memory; the
 * power laws (fs 8500/d, 0.1 g/cm², xmax d/40, Le by Re d²) and all ranges are common practice, no source.
 */
export function typicalDriver(known: KnownOfDriver): DriverGuess | null {
  const area = areaOf(known)
  if (area === null) return null
  const coneMm = diameterMm(area.value)
  if (coneMm < CONES_MM[0] || coneMm > CONES_MM[1]) return null
  const re = resistanceOf(known)
  const fsHz = usualResonance(coneMm).value
  const vasL = spread({ fsHz, mmsG: usualMass(area.value).value, sdCm2: area.value }).vasL ?? 0
  const xmaxMm = XMAX_OVER_CONE * coneMm
  const leMh = LE_MH_PER_OHM_MM2 * re.value * coneMm ** 2
  const { ratedImpedanceOhm } = known
  return {
    parameters: {
      fsHz,
      qms: USUAL_QMS,
      qes: USUAL_QES,
      vasL,
      sdCm2: area.value,
      reOhm: re.value,
      leMh,
      xmaxMm,
      ...(ratedImpedanceOhm !== undefined && { ratedImpedanceOhm }),
    },
    ranges: [
      rangeOf('fsHz', fsHz, 'Hz'),
      rangeOf('qts', (USUAL_QES * USUAL_QMS) / (USUAL_QES + USUAL_QMS), ''),
      rangeOf('qes', USUAL_QES, ''),
      rangeOf('qms', USUAL_QMS, ''),
      rangeOf('vasL', vasL, 'L'),
      {
        figure: 'sdCm2',
        value: area.value,
        from: area.value / area.factor,
        to: area.value * area.factor,
        unit: 'cm2',
      },
      re,
      rangeOf('leMh', leMh, 'mH'),
      rangeOf('xmaxMm', xmaxMm, 'mm'),
    ],
    why: 'guessed from size and resistance as salvaged full-range drivers and woofers mostly are; common practice, no source: plan with it, set guessed at the driver, and measure before the first cut',
  }
}
