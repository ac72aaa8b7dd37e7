import type { Supply } from '../../schema/power.ts'
import { E12, E24, nextNotBelow } from './preferred-values.ts'

type Colour = NonNullable<NonNullable<Supply['indicator']>['colour']>

/** Forward voltage of a lamp, V: red 1.8–2.1, yellow and green 2.0–2.2, blue and white 2.8–3.3. Common practice. */
export const FORWARD_V = { red: 2, yellow: 2.1, green: 2.2, blue: 3.1, white: 3.1 } satisfies Record<
  Colour,
  number
>

/** Forward voltage of an indicator as given, else by its colour; red when left out. */
export const forwardVOf = ({ forwardV, colour = 'red' }: NonNullable<Supply['indicator']>): number =>
  forwardV ?? FORWARD_V[colour]

/** Usual current of an indicator, mA, and its diameter, mm. Common practice, no source. */
export const USUAL_INDICATOR_MA = 3
export const USUAL_DIAMETER_MM = 3

/** Series resistor of an indicator. */
export interface IndicatorResistor {
  exactOhm: number
  e12Ohm: number
  e24Ohm: number
}

/**
 * Resistor that lets an indicator have its current, ohm: (Vs − Vf)/I, then the next preferred value not below.
 * @returns null when the supply does not exceed the forward voltage
 */
export function indicatorResistor(
  supplyV: number,
  forwardV: number,
  currentMa: number,
): IndicatorResistor | null {
  if (supplyV <= forwardV) return null
  const exactOhm = (supplyV - forwardV) / (currentMa * 1e-3)
  return { exactOhm, e12Ohm: nextNotBelow(exactOhm, E12), e24Ohm: nextNotBelow(exactOhm, E24) }
}

/** Current through an indicator with a given resistor, mA. Ohm's law. */
export const indicatorCurrentMa = (supplyV: number, forwardV: number, resistorOhm: number): number =>
  (1e3 * (supplyV - forwardV)) / resistorOhm

/** Heat in that resistor, mW. */
export const indicatorDissipationMw = (supplyV: number, forwardV: number, resistorOhm: number): number =>
  (1e3 * (supplyV - forwardV) ** 2) / resistorOhm

/** How bright an indicator is by its current, mA, brightest first. Common practice, no source. */
const BRIGHTNESS = [
  { fromMa: 10, says: 'dazzling in a dark room' },
  { fromMa: 4, says: 'bright' },
  { fromMa: 1, says: 'clear indoors' },
  { fromMa: 0, says: 'faint' },
] as const

/** Brightness of an indicator in words. */
export const brightnessOf = (currentMa: number): string =>
  BRIGHTNESS.find(({ fromMa }) => currentMa >= fromMa)?.says ?? 'faint'
