import { type Static, Type } from 'typebox'
import { quantity } from './quantity.ts'
import { share } from './shared.ts'

export const Air = share(
  'Air',
  Type.Object(
    {
      temperatureC: Type.Optional(
        quantity('degC', 'Temperature; 20 when left out', { minimum: -30, maximum: 60, examples: [20] }),
      ),
      pressureKpa: Type.Optional(
        quantity('kPa', 'Air pressure; 101.325 when left out', {
          minimum: 50,
          maximum: 110,
          examples: [101.325],
        }),
      ),
      humidityPct: Type.Optional(
        quantity('percent', 'Relative humidity; 50 when left out', {
          minimum: 0,
          maximum: 100,
          examples: [50],
        }),
      ),
      speedMPerS: Type.Optional(
        quantity('m/s', 'Speed of sound outright', { minimum: 250, maximum: 450, examples: [343.994] }),
      ),
      densityKgPerM3: Type.Optional(
        quantity('kg/m3', 'Density outright', { minimum: 0.4, maximum: 2, examples: [1.19931] }),
      ),
    },
    {
      additionalProperties: false,
      description: 'The air on the day of use; driver data hold at 20 °C, 101.325 kPa, 50%',
    },
  ),
)
export type Air = Static<typeof Air>
