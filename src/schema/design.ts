import { type Static, Type } from 'typebox'
import { Air } from './air.ts'
import { Box } from './box.ts'
import { Driver } from './driver.ts'
import { oneOf } from './one-of.ts'
import { PassiveRadiator, Port } from './port.ts'
import { Amplifier, Programme, Signal, Supply } from './power.ts'
import { quantity } from './quantity.ts'
import { ref, share } from './shared.ts'
import { Stock, Workshop } from './shop.ts'
import { Wiring } from './wiring.ts'

export const Wants = share(
  'Wants',
  Type.Object(
    {
      lowestHz: Type.Optional(
        quantity('Hz', 'Lowest note that should still be there', {
          minimum: 5,
          maximum: 2000,
          examples: [105],
        }),
      ),
      loudnessDb: Type.Optional(
        quantity('dB', 'Level wanted at the listener', { minimum: 30, maximum: 140, examples: [88] }),
      ),
      listeningDistanceM: Type.Optional(
        quantity('m', 'Distance to the listener; 1 when left out', {
          minimum: 0.1,
          maximum: 100,
          examples: [1.5],
        }),
      ),
    },
    { additionalProperties: false, description: 'What the maker hopes for' },
  ),
)
export type Wants = Static<typeof Wants>

export const Space = oneOf(
  ['half', 'full', 'baffle'],
  'What the box radiates into; half when left out; baffle needs the outer sides',
)
export type Space = Static<typeof Space>

export const Design = share(
  'Design',
  Type.Object(
    {
      name: Type.Optional(
        Type.String({
          description: 'What the maker calls it',
          maxLength: 200,
          examples: ['shelf pair for the repair café'],
        }),
      ),
      boxes: Type.Optional(
        Type.Integer({
          description: 'Identical boxes in the set; 1 when left out',
          minimum: 1,
          maximum: 16,
          examples: [2],
        }),
      ),
      drivers: Type.Array(ref(Driver), {
        description: 'Kinds of driver in each box',
        minItems: 1,
        maxItems: 8,
      }),
      wiring: Type.Optional(ref(Wiring)),
      box: ref(Box),
      port: Type.Optional(ref(Port)),
      passiveRadiator: Type.Optional(ref(PassiveRadiator)),
      amplifier: ref(Amplifier),
      supply: ref(Supply),
      signal: Type.Optional(ref(Signal)),
      programme: Type.Optional(Programme),
      stock: Type.Optional(Type.Array(ref(Stock), { description: 'Boards on hand', maxItems: 50 })),
      workshop: Type.Optional(ref(Workshop)),
      wants: Type.Optional(ref(Wants)),
      air: Type.Optional(ref(Air)),
      space: Type.Optional(Space),
    },
    { additionalProperties: false, description: 'One build, whole' },
  ),
)
export type Design = Static<typeof Design>
