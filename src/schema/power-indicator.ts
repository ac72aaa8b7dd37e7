import { Type } from 'typebox'
import { oneOf } from './one-of.ts'
import { quantity } from './quantity.ts'
import { share } from './shared.ts'

export const Indicator = share(
  'Indicator',
  Type.Object(
    {
      colour: Type.Optional(
        oneOf(['red', 'yellow', 'green', 'blue', 'white'], 'Colour of the lamp; red when left out'),
      ),
      currentMa: Type.Optional(
        quantity('mA', 'Current wanted; 3 when left out', { minimum: 0.05, maximum: 100, examples: [3] }),
      ),
      forwardV: Type.Optional(
        quantity('V', 'Forward voltage; follows from the colour when left out', {
          minimum: 0.5,
          maximum: 10,
        }),
      ),
      diameterMm: Type.Optional(
        quantity('mm', 'Diameter of the lamp; 3 when left out', { minimum: 1, maximum: 30 }),
      ),
    },
    { additionalProperties: false, description: 'The power indicator' },
  ),
)
