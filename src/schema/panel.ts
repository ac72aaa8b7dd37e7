import { type Static, Type } from 'typebox'
import { oneOf } from './one-of.ts'
import { maybeOf, outputOf } from './quantity.ts'
import { ref, share } from './shared.ts'

const Hole = share(
  'Hole',
  Type.Object(
    {
      id: Type.String({ description: 'Name of the hole' }),
      kind: oneOf(
        [
          'driver',
          'bolt',
          'port',
          'slot',
          'control',
          'indicator',
          'cable',
          'radiator',
          'fitting',
          'mounting',
          'window',
        ],
        'What goes through it',
      ),
      xMm: outputOf(
        'mm',
        'Centre along the length of the panel, from the lower left corner seen from outside',
      ),
      yMm: outputOf('mm', 'Centre along the width of the panel, from the same corner'),
      diameterMm: maybeOf('mm', 'Finished diameter; null for a slot'),
      slotWidthMm: maybeOf('mm', 'Width of a slot along x; null for a round hole'),
      slotHeightMm: maybeOf('mm', 'Height of a slot along y; null for a round hole'),
      drillMm: maybeOf('mm', 'Hole saw or bit to use; null when none on hand serves'),
      toolNote: Type.String({ description: 'How to make it' }),
      through: Type.Boolean({ description: 'true when it goes right through the panel' }),
      depthMm: outputOf('mm', 'Depth from the outer face'),
      recess: Type.Optional(
        Type.Object(
          { diameterMm: outputOf('mm', 'Diameter'), depthMm: outputOf('mm', 'Depth from the inner face') },
          {
            additionalProperties: false,
            description: 'Blind pocket around the hole, from the inner face; only where it needs one',
          },
        ),
      ),
    },
    { additionalProperties: false, description: 'A hole in a panel' },
  ),
)
export type Hole = Static<typeof Hole>

const resonance = Type.Object(
  {
    supportedHz: outputOf('Hz', 'With edges that are held but may turn'),
    clampedHz: outputOf('Hz', 'With edges held stiff; a glued panel lies between the two'),
  },
  { additionalProperties: false, description: 'First bending resonance' },
)

const stands = Type.Object(
  {
    lies: oneOf(
      ['level', 'upright', 'behind-front'],
      'level: like a shelf; upright: like a wall between left and right; behind-front: parallel to the front',
    ),
    atMm: outputOf(
      'mm',
      'Middle of the board from the inner floor, the inner left wall or the inside of the front, as it lies',
    ),
  },
  { additionalProperties: false, description: 'Where a brace goes' },
)

export const Panel = share(
  'Panel',
  Type.Object(
    {
      id: Type.String({ description: 'Name of the panel or part' }),
      count: Type.Integer({ description: 'How many in the whole set', minimum: 0 }),
      lengthMm: outputOf('mm', 'Finished length'),
      widthMm: outputOf('mm', 'Finished width'),
      thicknessMm: maybeOf('mm', 'Thickness; null for a plain part that names none'),
      sawLengthMm: outputOf('mm', 'Length to saw: mitres at their long side, less the thickness of bands'),
      sawWidthMm: outputOf('mm', 'Width to saw, likewise'),
      grain: oneOf(['any', 'length', 'width'], 'Side that runs with the grain of the board'),
      holes: Type.Array(ref(Hole), { description: 'Holes, seen from outside' }),
      bandedEdges: Type.Array(oneOf(['left', 'right', 'bottom', 'top'], 'An edge, seen from outside'), {
        description: 'Edges that get a band',
      }),
      resonance: Type.Unsafe<Static<typeof resonance> | null>({
        anyOf: [resonance, { type: 'null' }],
        description:
          'First bending resonance of the free part between the walls; null for solid wood, braces and plain parts',
      }),
      stands: Type.Unsafe<Static<typeof stands> | null>({
        anyOf: [stands, { type: 'null' }],
        description: 'Where a brace goes; null for every other panel',
      }),
      massKg: maybeOf(
        'kg',
        'Mass of one as finished: bevels of mitres, rebates and holes taken off, bands counted as board; null without a thickness',
      ),
    },
    { additionalProperties: false, description: 'Equal panels' },
  ),
)
export type Panel = Static<typeof Panel>
