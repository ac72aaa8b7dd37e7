import { type Static, Type } from 'typebox'
import { oneOf } from './one-of.ts'
import { quantity } from './quantity.ts'
import { share } from './shared.ts'

export const Brace = share(
  'Brace',
  Type.Object(
    {
      lies: oneOf(
        ['level', 'upright', 'behind-front'],
        'level: like a shelf; upright: like a wall between left and right; behind-front: parallel to the front',
      ),
      atMm: Type.Optional(
        quantity(
          'mm',
          'Middle of the board from the inner floor, the inner left wall or the inside of the front; when left out, level ones go into the widest gaps between what stands behind the front, all others are spread evenly',
          { minimum: 0, maximum: 5000, examples: [108] },
        ),
      ),
      openShare: Type.Optional(
        Type.Number({
          description: 'Share of the board that is cut out as a window; 0.5 when left out, 0 for a divider',
          minimum: 0,
          maximum: 0.9,
          examples: [0.5],
        }),
      ),
    },
    { additionalProperties: false, description: 'A board across the inside' },
  ),
)
export type Brace = Static<typeof Brace>

const Cutout = Type.Object(
  {
    widthMm: quantity('mm', 'Width', { minimum: 1, maximum: 1000, examples: [28] }),
    heightMm: quantity('mm', 'Height', { minimum: 1, maximum: 1000, examples: [20] }),
  },
  { additionalProperties: false, description: 'A rectangular opening' },
)

const Board = Type.Object(
  {
    widthMm: quantity('mm', 'Width as it is mounted', { minimum: 5, maximum: 1000, examples: [60] }),
    heightMm: quantity('mm', 'Height as it is mounted', { minimum: 5, maximum: 1000, examples: [40] }),
    screwDiameterMm: Type.Optional(
      quantity('mm', 'Hole for a screw at each corner; 3 when left out', { minimum: 1, maximum: 8 }),
    ),
    screwInsetMm: Type.Optional(
      quantity('mm', 'Middle of those holes from both edges; 4 when left out', { minimum: 1, maximum: 100 }),
    ),
  },
  { additionalProperties: false, description: 'A circuit board on the inside of the panel' },
)

export const Fitting = share(
  'Fitting',
  Type.Object(
    {
      id: Type.String({ description: 'Name', minLength: 1, maxLength: 60, examples: ['power switch'] }),
      panel: Type.Optional(oneOf(['front', 'back'], 'Panel it goes through or on; back when left out')),
      holeDiameterMm: Type.Optional(
        quantity('mm', 'Round hole it goes through', { minimum: 1, maximum: 300, examples: [12] }),
      ),
      cutout: Type.Optional(Cutout),
      board: Type.Optional(Board),
      depthMm: Type.Optional(
        quantity('mm', 'How far it reaches into the box from the inside of the panel; 0 when left out', {
          minimum: 0,
          maximum: 500,
          examples: [20],
        }),
      ),
      xMm: Type.Optional(
        quantity('mm', 'Middle from the left edge of the panel, seen from outside', {
          minimum: 0,
          maximum: 5000,
        }),
      ),
      yMm: Type.Optional(
        quantity('mm', 'Middle from its lower edge; give both or none', { minimum: 0, maximum: 5000 }),
      ),
    },
    {
      additionalProperties: false,
      description:
        'A switch, a socket, terminals or the amplifier board: give a round hole, a rectangular one, or a board',
    },
  ),
)
export type Fitting = Static<typeof Fitting>

export const PlacedHole = share(
  'PlacedHole',
  Type.Object(
    {
      for: Type.String({
        description:
          'Name of the hole in the cut list: a driver, port, control or indicator on the front, a radiator or the cable in the back',
        minLength: 1,
        maxLength: 60,
        examples: ['main 1'],
      }),
      xMm: quantity('mm', 'Middle from the left edge of its panel, seen from outside', {
        minimum: 0,
        maximum: 5000,
      }),
      yMm: quantity('mm', 'Middle from its lower edge', { minimum: 0, maximum: 5000 }),
    },
    { additionalProperties: false, description: 'A hole where the maker wants it' },
  ),
)
export type PlacedHole = Static<typeof PlacedHole>
