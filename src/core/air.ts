import type { Air } from '../schema/air.ts'
import type { Assumption } from '../schema/frame.ts'

/** The air as the circuit needs it: speed of sound in m/s, density in kg/m³. */
export interface AirState {
  speedMPerS: number
  densityKgPerM3: number
}

const CO2_CRAMER = 0.000314
const ZERO_C = 273.15

interface WeatherSi {
  temperatureC: number
  pressurePa: number
  humidity: number
}

// Both papers take the vapour pressure by the same form with slightly different constants.
const vapourShare = (w: WeatherSi, [a, b, c, d]: readonly [number, number, number, number]): number => {
  const t = w.temperatureC + ZERO_C
  const enhancement = 1.00062 + 3.14e-8 * w.pressurePa + 5.6e-7 * w.temperatureC ** 2
  return (w.humidity * enhancement * Math.exp(a * t * t + b * t + c + d / t)) / w.pressurePa
}

/**
 * Speed of sound in humid air, m/s, for 0…30 °C and 75…102 kPa; a few parts in ten thousand beyond.
 * Source: O. Cramer, J. Acoust. Soc. Am. 93(5), 2510 (1993), formula on p. 2514.
 */
export function speedOfSoundMPerS(temperatureC: number, pressureKpa: number, humidityPct: number): number {
  const t = temperatureC
  const p = pressureKpa * 1000
  const xw = vapourShare(
    { temperatureC, pressurePa: p, humidity: humidityPct / 100 },
    [1.2811805e-5, -1.9509874e-2, 34.04926034, -6353.6311],
  )
  const xc = CO2_CRAMER
  return (
    331.5024 +
    0.603055 * t -
    0.000528 * t * t +
    (51.471935 + 0.1495874 * t - 0.000782 * t * t) * xw +
    (-1.82e-7 + 3.73e-8 * t - 2.93e-10 * t * t) * p +
    (-85.20931 - 0.228525 * t + 5.91e-5 * t * t) * xc -
    2.835149 * xw * xw -
    2.15e-13 * p * p +
    29.179762 * xc * xc +
    0.000486 * xw * p * xc
  )
}

/**
 * Speed of sound in dry air by temperature alone, m/s; for weather outside the humid-air formula.
 * Source: ISO 9613-1:1993, from memory.
 */
export const dryAirSpeedMPerS = (temperatureC: number): number =>
  343.2 * Math.sqrt((temperatureC + ZERO_C) / 293.15)

/**
 * Density of humid air, kg/m³, for 15…27 °C and 60…110 kPa; fine for this job from 0 to 40 °C.
 * Source: A. Picard et al., Metrologia 45, 149 (2008), "CIPM-2007".
 */
export function airDensityKgPerM3(temperatureC: number, pressureKpa: number, humidityPct: number): number {
  const t = temperatureC
  const kelvin = t + ZERO_C
  const p = pressureKpa * 1000
  const xw = vapourShare(
    { temperatureC, pressurePa: p, humidity: humidityPct / 100 },
    [1.2378847e-5, -1.9121316e-2, 33.93711047, -6343.1645],
  )
  const molarDry = 0.02896546
  const compressibility =
    1 -
    (p / kelvin) *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t * t +
        (5.707e-6 - 2.051e-8 * t) * xw +
        (1.9898e-4 - 2.376e-6 * t) * xw * xw) +
    (p / kelvin) ** 2 * (1.83e-11 - 0.765e-8 * xw * xw)
  return ((p * molarDry) / (compressibility * 8.314472 * kelvin)) * (1 - xw * (1 - 0.01801528 / molarDry))
}

/** Kinematic viscosity of air, m²/s, near room temperature. Rough fit, from memory. */
export const kinematicViscosityM2PerS = (temperatureC: number): number => 1.33e-5 * (1 + temperatureC / 150)

const fromWeather = (temperatureC: number, pressureKpa: number, humidityPct: number): AirState => ({
  // The fit by Cramer holds from 0 to 30 °C; outside it the dry form has the right slope.
  speedMPerS:
    temperatureC < 0 || temperatureC > 30
      ? dryAirSpeedMPerS(temperatureC)
      : speedOfSoundMPerS(temperatureC, pressureKpa, humidityPct),
  densityKgPerM3: airDensityKgPerM3(temperatureC, pressureKpa, humidityPct),
})

/** The air at which driver data hold: 20 °C, 101.325 kPa, 50% relative humidity. */
export const REFERENCE_AIR: AirState = fromWeather(20, 101.325, 50)

/** The air of a request: reference air for what is left out, given speed or density as they stand. */
export function airOf(air: Air | undefined): AirState {
  const weather = fromWeather(air?.temperatureC ?? 20, air?.pressureKpa ?? 101.325, air?.humidityPct ?? 50)
  return {
    speedMPerS: air?.speedMPerS ?? weather.speedMPerS,
    densityKgPerM3: air?.densityKgPerM3 ?? weather.densityKgPerM3,
  }
}

// Cramer's formula for humid air ends there.
const isHumidRange = (temperatureC: number): boolean => temperatureC >= 0 && temperatureC <= 30

/** What was filled in of the air when a request speaks of it at all; without a word it is the reference air. */
export function airAssumptions(air: Air | undefined): Assumption[] {
  if (air === undefined) return []
  const { speedMPerS, densityKgPerM3 } = airOf(air)
  const dry = isHumidRange(air.temperatureC ?? 20)
    ? ''
    : '; outside 0 to 30 °C as in dry air (ISO 9613-1, from memory)'
  const rows: (Assumption & { given: boolean })[] = [
    {
      given: air.speedMPerS !== undefined,
      at: '/air/speedMPerS',
      value: speedMPerS,
      unit: 'm/s',
      why: `from temperature, pressure and humidity${dry}`,
    },
    {
      given: air.densityKgPerM3 !== undefined,
      at: '/air/densityKgPerM3',
      value: densityKgPerM3,
      unit: 'kg/m3',
      why: 'from temperature, pressure and humidity',
    },
  ]
  return rows.flatMap(({ given, ...row }) => (given ? [] : [row]))
}
