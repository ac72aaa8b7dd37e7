import { Type } from 'typebox'
import { maybeOf, outputOf } from './quantity.ts'

/** What `/v1/power-budget` says of the power indicator. */
export const indicator = Type.Object(
  {
    resistorOhm: maybeOf(
      'ohm',
      'Series resistor of the E12 series; null when the supply is too low for the lamp',
    ),
    e24Ohm: maybeOf('ohm', 'The same of the E24 series; null when the supply is too low for the lamp'),
    currentMa: maybeOf('mA', 'Current with the E12 resistor; null when the supply is too low for the lamp'),
    dissipationMw: maybeOf(
      'mW',
      'Heat in that resistor, at the highest voltage of the source; null when the supply is too low for the lamp',
    ),
    resistorRatingW: maybeOf(
      'W',
      'Rating to buy: the next usual one that is loaded to half; null when the supply is too low for the lamp',
    ),
    brightness: Type.String({ description: 'How bright it is then, in words' }),
    holeMm: outputOf('mm', 'Hole the lamp wants'),
  },
  { additionalProperties: false, description: 'The power indicator' },
)
