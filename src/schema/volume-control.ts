import { Type } from 'typebox'
import { oneOf } from './one-of.ts'
import { quantity } from './quantity.ts'
import { share } from './shared.ts'

export const VolumeControl = share(
  'VolumeControl',
  Type.Object(
    {
      resistanceKohm: quantity('kohm', 'Resistance of the track', {
        minimum: 0.1,
        maximum: 10_000,
        examples: [50],
      }),
      taper: Type.Optional(oneOf(['linear', 'audio'], 'Law of the track; audio when left out')),
      shaftDiameterMm: Type.Optional(
        quantity('mm', 'Hole the bush needs; 7 when left out', { minimum: 2, maximum: 30 }),
      ),
      bushLengthMm: Type.Optional(
        quantity('mm', 'Length of the threaded bush; 7 when left out', { minimum: 1, maximum: 50 }),
      ),
      shaftLengthMm: Type.Optional(
        quantity(
          'mm',
          'Length of shaft and bush from the face that lies on the panel; its reach is not judged when left out',
          {
            minimum: 1,
            maximum: 200,
          },
        ),
      ),
      bodyDiameterMm: Type.Optional(
        quantity('mm', 'Diameter of its body, for the pocket in a thick panel; 17 when left out', {
          minimum: 5,
          maximum: 60,
        }),
      ),
    },
    { additionalProperties: false, description: 'The volume control' },
  ),
)
