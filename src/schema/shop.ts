import { type Static, Type } from 'typebox'
import { oneOf } from './one-of.ts'
import { quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

export const Stock = share(
  'Stock',
  Type.Object(
    {
      id: Type.Optional(
        Type.String({
          description: 'Name of the board; "board 1" and so on when left out',
          minLength: 1,
          maxLength: 60,
          examples: ['ply offcut'],
        }),
      ),
      lengthMm: quantity('mm', 'Length', { minimum: 1, maximum: 20_000, examples: [1220] }),
      widthMm: quantity('mm', 'Width', { minimum: 1, maximum: 20_000, examples: [400] }),
      thicknessMm: Type.Optional(
        quantity('mm', 'Thickness; fits any part when left out', {
          minimum: 0.5,
          maximum: 200,
          examples: [12],
        }),
      ),
      count: Type.Optional(
        Type.Integer({
          description: 'Boards of this size on hand; 1 when left out',
          minimum: 1,
          maximum: 1000,
          examples: [1],
        }),
      ),
      grain: Type.Optional(
        oneOf(['none', 'length', 'width'], 'Which way the grain runs; none when left out'),
      ),
      trimMm: Type.Optional(
        quantity('mm', 'Taken off each edge first; 0 when left out', {
          minimum: 0,
          maximum: 500,
          examples: [5],
        }),
      ),
      material: Type.Optional(
        oneOf(
          ['plywood', 'mdf', 'particleboard', 'hdf', 'softwood', 'hardwood'],
          'What the board is; plywood when left out',
        ),
      ),
      laminated: Type.Optional(
        Type.Boolean({ description: 'true when its faces are printed or coated; false when left out' }),
      ),
      cost: Type.Optional(
        Type.Number({ description: 'Cost of one board in any currency', minimum: 0, maximum: 1e6 }),
      ),
    },
    { additionalProperties: false, description: 'A kind of board on hand' },
  ),
)
export type Stock = Static<typeof Stock>

export const Part = share(
  'Part',
  Type.Object(
    {
      id: Type.Optional(
        Type.String({
          description: 'Name of the part; "part 1" and so on when left out',
          minLength: 1,
          maxLength: 60,
          examples: ['shelf'],
        }),
      ),
      lengthMm: quantity('mm', 'Length', { minimum: 0.5, maximum: 20_000, examples: [300] }),
      widthMm: quantity('mm', 'Width', { minimum: 0.5, maximum: 20_000, examples: [200] }),
      thicknessMm: Type.Optional(
        quantity('mm', 'Thickness; fits any board when left out', {
          minimum: 0.5,
          maximum: 200,
          examples: [12],
        }),
      ),
      count: Type.Optional(
        Type.Integer({ description: 'How many; 1 when left out', minimum: 1, maximum: 1000, examples: [2] }),
      ),
      grain: Type.Optional(
        oneOf(
          ['any', 'length', 'width'],
          'Which side of the part must run with the grain; any when left out',
        ),
      ),
    },
    { additionalProperties: false, description: 'A plain part for any other project' },
  ),
)
export type Part = Static<typeof Part>

const Screw = share(
  'Screw',
  Type.Object(
    {
      diameterMm: quantity('mm', 'Outer diameter of the thread', {
        minimum: 0.5,
        maximum: 20,
        examples: [3],
      }),
      lengthMm: quantity('mm', 'Length', { minimum: 2, maximum: 300, examples: [30] }),
      countersunk: Type.Optional(Type.Boolean({ description: 'true for a countersunk head' })),
    },
    { additionalProperties: false, description: 'A screw' },
  ),
)

const Edging = share(
  'Edging',
  Type.Object(
    {
      widthMm: quantity('mm', 'Width of the strip as bought', { minimum: 3, maximum: 500, examples: [22] }),
      slitsInto: Type.Optional(
        Type.Integer({ description: 'Strips it is slit into; 1 when left out', minimum: 1, maximum: 20 }),
      ),
      thicknessMm: Type.Optional(
        quantity('mm', 'Thickness of the band, taken off the saw size; 0 when left out', {
          minimum: 0,
          maximum: 10,
          examples: [0.5],
        }),
      ),
      rollLengthM: Type.Optional(
        quantity('m', 'Length of a roll as sold', { minimum: 0.1, maximum: 500, examples: [5] }),
      ),
      overhangMm: Type.Optional(
        quantity('mm', 'Left over at each end before trimming; 10 when left out', {
          minimum: 0,
          maximum: 200,
        }),
      ),
      edges: Type.Optional(
        oneOf(['front', 'front-back', 'all', 'none'], 'Which visible edges are banded; front when left out'),
      ),
    },
    { additionalProperties: false, description: 'Edge banding' },
  ),
)

export const Workshop = share(
  'Workshop',
  Type.Object(
    {
      kerfMm: Type.Optional(
        quantity('mm', 'Width of the saw cut; 2.4 when left out', {
          minimum: 0,
          maximum: 20,
          examples: [2.4],
        }),
      ),
      holeSawsMm: Type.Optional(
        Type.Array(quantity('mm', 'Diameter of one', { minimum: 2, maximum: 500 }), {
          description: 'Diameters of the hole saws on hand, mm',
          maxItems: 100,
          examples: [[22, 32, 64]],
        }),
      ),
      screws: Type.Optional(
        Type.Object(
          { panel: Type.Optional(ref(Screw)), driver: Type.Optional(ref(Screw)) },
          { additionalProperties: false, description: 'Screws on hand' },
        ),
      ),
      edging: Type.Optional(ref(Edging)),
      leadHoleMm: Type.Optional(
        quantity('mm', 'Hole for the lead in the back; 8 when left out', {
          minimum: 2,
          maximum: 30,
          examples: [8],
        }),
      ),
      leastWebMm: Type.Optional(
        quantity('mm', 'Least wood between holes; 8 or the board, whichever is more, when left out', {
          minimum: 0,
          maximum: 100,
        }),
      ),
    },
    { additionalProperties: false, description: 'Tools and hardware on hand' },
  ),
)
export type Workshop = Static<typeof Workshop>
